import type { Browser } from "playwright-core";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { look, openBrowser, PATIENCE_MS } from "./testing/browser.ts";
import { lead, standAt } from "./testing/floor-hand.ts";
import { labelVideo } from "./testing/label-video.ts";
import { type RunningApp, startApp } from "./testing/start-app.ts";

const BOOK = "first-light";

let app: RunningApp;
let browser: Browser;
let unit = "";
let removeVideo = async (): Promise<void> => undefined;
beforeAll(async () => {
  app = await startApp();
  [unit = ""] = await (await lead(app.address)).units({ book: BOOK, what: "board", type: "io", count: 1 });
  const { path, remove } = await labelVideo(app.address, BOOK, unit);
  removeVideo = remove;
  browser = await openBrowser([
    "--use-fake-ui-for-media-stream",
    "--use-fake-device-for-media-stream",
    `--use-file-for-fake-video-capture=${path}`,
  ]);
}, PATIENCE_MS);
afterAll(async () => {
  await browser?.close();
  await app?.stop();
  await removeVideo();
}, PATIENCE_MS);

describe("the camera of a tablet", { timeout: PATIENCE_MS }, () => {
  it("reads the label of a unit as the server prints it, and brings the unit onto the screen", async () => {
    const { page, context, complaints } = await look(browser, app.address, { screen: "tablet" });
    await standAt(page, BOOK);
    await page.goto("/floor");
    await page.getByRole("button", { name: "Use the camera" }).tap();
    await page.waitForURL(`**/floor/u/${unit}`);
    await page.getByRole("heading", { name: /^Lay out the kit/u }).waitFor();
    expect(complaints).toEqual([]);
    await context.close();
  });
});
