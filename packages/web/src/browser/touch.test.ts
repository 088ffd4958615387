import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { openBook, PATIENCE_MS, type Screen, still } from "./testing/browser.ts";
import { chosenSpot, selectedIds } from "./testing/drawing.ts";
import { fingersOn } from "./testing/fingers.ts";
import { someoneElse } from "./testing/someone-else.ts";
import { withApp } from "./testing/with-app.ts";

const app = withApp();

const SCREENS: readonly Screen[] = ["phone", "tablet upright", "tablet"];
const PLACE = "/b/first-light/layout/pf/under";
const scaleBar = (page: Page): Promise<string | null> => page.locator(".scale-bar").getAttribute("style");
const view = (page: Page): Promise<string | null> => page.locator(".ground").getAttribute("style");

describe("Layout under fingers", { timeout: 2 * PATIENCE_MS }, () => {
  it.each(SCREENS)("selects, pans, drags, enlarges and draws a box: %s", async (screen) => {
    const other = await someoneElse(app.address());
    const xOf = async (): Promise<string | undefined> => {
      const { tables } = await other.rows("first-light");
      return Object.values(tables.devices ?? {}).find((row) => row.id === "sw.left")?.x_mm;
    };
    const { page, context, complaints } = await app.look({ screen });
    const fingers = await fingersOn(page);
    await openBook(page, `${PLACE}?id=sw.left`);
    await still(page);
    const spot = await chosenSpot(page);
    const before = await xOf();

    // The tools leave most of the screen to the drawing, and each is at hand.
    const drawing = await page.locator(".drawing").boundingBox();
    const share = ((drawing?.width ?? 0) * (drawing?.height ?? 0)) / (page.viewportSize()?.width ?? 1);
    expect(share / (page.viewportSize()?.height ?? 1)).toBeGreaterThan(0.4);
    for (const tool of await page.locator(".bar-tools button").all())
      expect((await tool.boundingBox())?.width).toBeGreaterThanOrEqual(44);

    // A finger that looks about moves nothing.
    await page.getByRole("button", { name: "Select nothing (Esc)" }).click();
    const seen = await view(page);
    await fingers.drag(spot, { x: spot.x + 40, y: spot.y + 30 });
    await expect.poll(() => view(page)).not.toBe(seen);
    expect(selectedIds(page)).toEqual([]);
    await fingers.drag({ x: spot.x + 40, y: spot.y + 30 }, spot);

    await page.touchscreen.tap(spot.x, spot.y);
    await expect.poll(() => selectedIds(page)).toEqual(["sw.left"]);
    // What is selected goes along; the second finger that comes down meanwhile does not make it jump.
    const held = await chosenSpot(page);
    const goal = { x: held.x + 24, y: held.y + 16 };
    await fingers.down(held);
    await fingers.move({ x: held.x + 12, y: held.y + 8 });
    await fingers.move(goal);
    await fingers.down(goal, { x: goal.x - 90, y: goal.y - 60 });
    await fingers.move(goal, { x: goal.x - 120, y: goal.y - 90 });
    await fingers.up();
    await expect.poll(xOf, { timeout: PATIENCE_MS }).not.toBe(before);
    const moved = await chosenSpot(page);
    expect(Math.abs(moved.x - goal.x)).toBeLessThan(14);
    await page.getByRole("banner").getByRole("button", { name: "Undo" }).click();
    await expect.poll(xOf, { timeout: PATIENCE_MS }).toBe(before);

    const scale = await scaleBar(page);
    await fingers.down({ x: spot.x - 20, y: spot.y }, { x: spot.x + 20, y: spot.y });
    for (let by = 22; by <= 34; by += 4)
      await fingers.move({ x: spot.x - by, y: spot.y }, { x: spot.x + by, y: spot.y });
    await fingers.up();
    await expect.poll(() => scaleBar(page)).not.toBe(scale);
    await page.getByRole("button", { name: "Show the whole panel (0)" }).click();

    // A finger that rests draws a box over everything.
    const sheet = await page.locator(".drawing").boundingBox();
    if (sheet === null) throw new Error("There is no drawing.");
    const corner = { x: sheet.x + sheet.width - 4, y: sheet.y + 4 };
    await fingers.down(corner);
    await page.waitForTimeout(700);
    await fingers.move({ x: sheet.x + sheet.width / 2, y: sheet.y + sheet.height / 2 });
    await fingers.move({ x: sheet.x + 4, y: sheet.y + sheet.height - 4 });
    await fingers.up();
    await page.getByRole("heading", { name: /^\d+ things are selected$/u }).waitFor();
    expect(selectedIds(page).length).toBeGreaterThan(5);
    expect(complaints).toEqual([]);
    await context.close();
  });

  it("draws up what is selected from below on a phone", async () => {
    const { page } = await app.look({ screen: "phone" });
    await openBook(page, `${PLACE}?id=sw.left`);
    await page.getByRole("button", { name: "Show everything about it" }).click();
    await page.getByLabel("x", { exact: true }).fill("101");
    await page.getByRole("button", { name: "Move it there" }).click();
    await page.getByRole("button", { name: "Show only its name" }).click();
    await page.getByRole("banner").getByRole("button", { name: "Undo" }).click();
    await page.getByRole("status").getByText("Move sw.left").waitFor();
  });
});
