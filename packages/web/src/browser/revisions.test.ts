import { releasedSheetSchema } from "@pinwright/contract";
import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { accessFaults, sidewaysPx } from "./testing/accessible.ts";
import { openBook, PATIENCE_MS } from "./testing/browser.ts";
import { scan, standAt } from "./testing/floor-hand.ts";
import { someoneElse } from "./testing/someone-else.ts";
import { withApp } from "./testing/with-app.ts";

const app = withApp();

/** Releases the example under the name that is proposed. */
async function release(page: Page, note: string, name: string): Promise<void> {
  await openBook(page, "/b/first-light/revisions");
  await page.getByRole("button", { name: "Release …" }).click();
  const dialog = page.getByRole("dialog");
  await dialog.getByLabel("What is new in it, and why").fill(note);
  expect(await dialog.getByLabel("Name of the revision").inputValue()).toBe(name);
  await dialog.getByRole("button", { name: "Release", exact: true }).click();
  await dialog.getByText(`Released as ${name}.`).waitFor();
  await dialog.getByRole("button", { name: "Close" }).last().click();
  await page.getByRole("heading", { name, exact: true }).waitFor();
}

/** What the code of a released sheet says, and the page that it leads to. */
async function printOf(
  revision: string,
  sheetId: string,
): Promise<{ readonly page: string; readonly code: string }> {
  const answer = await fetch(new URL(`/api/books/first-light/releases/${revision}/sheets`, app.address()));
  const all: unknown = await answer.json();
  const sheets = (Array.isArray(all) ? all : []).map((one) => releasedSheetSchema.parse(one));
  const sheet = sheets.find(({ id }) => id === sheetId);
  if (sheet === undefined) throw new Error(`Release ${revision} has no sheet ${sheetId}.`);
  const parts = ["first-light", revision, sheetId, sheet.bodyHash.slice(0, 12)];
  return { page: `/print#${parts.join("/")}`, code: `pinwright:${parts.join(":")}` };
}

describe("revisions", { timeout: 3 * PATIENCE_MS }, () => {
  it("are released, compared with the draft and laid over each other; a print goes from current to superseded", async () => {
    const { page, complaints } = await app.look();
    await release(page, "The first one that goes to the floor.", "A");
    expect(await accessFaults(page)).toEqual([]);
    await page.getByRole("banner").getByText("as released: A").waitFor();
    const print = await printOf("A", "hs.field.from-to.en");

    const paper = await app.look({ screen: "phone" });
    await paper.page.goto(print.page);
    await paper.page.getByText("Current", { exact: true }).waitFor();
    expect(await sidewaysPx(paper.page)).toBe(0);

    const other = await someoneElse(app.address());
    await other.put("first-light", "devices", "sw.top", "x_mm", "236");
    await openBook(page, "/b/first-light/revisions/compare?from=A&to=draft");
    await page.getByRole("banner").getByText("draft after A").waitFor();
    await page.getByRole("link", { name: /Top lane switch/u }).waitFor();
    await page.getByRole("listitem").filter({ hasText: "moved by 36 mm" }).waitFor();
    await page.getByRole("button", { name: "Find out which sheets change" }).click();
    const roll = page.getByRole("button", {
      name: /Lay old and new.*H4 Field harness: Pinboard, one sheet/u,
    });
    await roll.click();
    await page.locator(".overlay-fresh line, .overlay-fresh text").first().waitFor({ state: "attached" });
    await page.getByText(/only in A, dashed \(\d+ marks\)/u).waitFor();
    await page.getByText("Old", { exact: true }).click();
    await expect.poll(() => page.locator(".overlay-fresh").isVisible()).toBe(false);
    expect(await accessFaults(page)).toEqual([]);
    await page.getByRole("button", { name: "Retrofit kit and instruction" }).click();
    await page.getByRole("link", { name: "Open Retrofit kit and instruction" }).waitFor();

    await release(page, "The switch caught the ball.", "B");
    await paper.page.goto("/");
    await paper.page.goto(print.page);
    await paper.page.getByText("Superseded", { exact: true }).waitFor();
    await paper.page.getByText(/wire 4-7 is 10 mm longer/u).waitFor();
    await paper.page.getByText("The switch caught the ball.").waitFor();
    expect(await sidewaysPx(paper.page)).toBe(0);
    expect(await accessFaults(paper.page)).toEqual([]);
    expect([...complaints, ...paper.complaints]).toEqual([]);

    const bench = await app.look({ screen: "tablet" });
    await standAt(bench.page, "first-light");
    await bench.page.goto("/floor");
    await bench.page.getByRole("heading", { name: /^Which unit/u }).waitFor();
    await scan(bench.page, print.code);
    await bench.page.getByText("Superseded", { exact: true }).waitFor();
    await bench.page.getByText(/wire 4-7 is 10 mm longer/u).waitFor();
    expect(await accessFaults(bench.page)).toEqual([]);
    expect(bench.complaints).toEqual([]);

    const chinese = await app.look({ language: "zh", scheme: "dark", screen: "phone" });
    await openBook(chinese.page, "/b/first-light/revisions/compare?from=A&to=B");
    await chinese.page.getByRole("listitem").filter({ hasText: "移动 36 mm" }).waitFor();
    expect(await accessFaults(chinese.page)).toEqual([]);
    expect(await sidewaysPx(chinese.page)).toBe(0);
    expect(chinese.complaints).toEqual([]);
  });
});
