import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { openBook, PATIENCE_MS, still } from "./testing/browser.ts";
import { panelView, selectedIds } from "./testing/drawing.ts";
import { type SomeoneElse, someoneElse } from "./testing/someone-else.ts";
import { withApp } from "./testing/with-app.ts";

const app = withApp();
const BOOK = "first-light";
const DECK = { widthMm: 400, heightMm: 300 };
const under = (...ids: readonly string[]): string =>
  `/b/${BOOK}/layout/pf/under?${ids.map((id) => `id=${id}`).join("&")}`;

/** Cells of rows as the server has them, waited for. */
function server(other: SomeoneElse) {
  const cells = async (table: string, id: string, columns: readonly string[]): Promise<string> => {
    const { tables } = await other.rows(BOOK);
    const row = Object.values(tables[table] ?? {}).find((one) => one.id === id);
    return row === undefined ? "none" : columns.map((column) => row[column] ?? "").join(",");
  };
  const count = async (table: string): Promise<number> =>
    Object.keys((await other.rows(BOOK)).tables[table] ?? {}).length;
  const has = (table: string, id: string, columns: readonly string[], text: string): Promise<void> =>
    expect.poll(() => cells(table, id, columns), { timeout: PATIENCE_MS }).toBe(text);
  return { has, count, cells };
}
const undo = (page: Page): Promise<void> =>
  page.getByRole("banner").getByRole("button", { name: "Undo" }).click();

describe("Layout", { timeout: 2 * PATIENCE_MS }, () => {
  it("puts a thing exactly where it is typed, on the other side as well, and turns it by key", async () => {
    const { has } = server(await someoneElse(app.address()));
    const { page, complaints, context } = await app.look();
    await openBook(page, under("sw.top"));
    const place = ["x_mm", "y_mm", "rotation_deg", "side"];
    await page.getByLabel("x", { exact: true }).fill("201,5");
    await page.getByLabel("y", { exact: true }).fill("260.25");
    await page.getByLabel("Turn", { exact: true }).fill("-45");
    await page.getByRole("button", { name: "Move it there" }).click();
    await has("devices", "sw.top", place, "201.5,260.25,-45,under");
    await undo(page);
    await has("devices", "sw.top", place, "200,275,,under");

    const form = page.locator(".place-form");
    await expect.poll(() => form.getByLabel("x", { exact: true }).inputValue()).toBe("200");
    await form.getByLabel("Side", { exact: true }).selectOption("top");
    await page.getByRole("button", { name: "Move it there" }).click();
    await has("devices", "sw.top", place, "200,275,,top");
    await page.waitForURL(/\/pf\/top\?id=sw\.top$/u);
    await undo(page);
    await has("devices", "sw.top", place, "200,275,,under");

    await openBook(page, under("sw.top"));
    await page.locator(".drawing .chosen").waitFor({ state: "attached" });
    await page.locator(".drawing").focus();
    await page.keyboard.press("r");
    await has("devices", "sw.top", place, "200,275,90,under");
    await page.keyboard.press("Control+z");
    await has("devices", "sw.top", place, "200,275,,under");
    expect(complaints).toEqual([]);
    await context.close();
  });

  it("lines up several things, and copies them", async () => {
    const { has, count } = server(await someoneElse(app.address()));
    const { page, complaints, context } = await app.look();
    await openBook(page, under("lp.a", "lp.b", "sw.left"));
    await page.getByRole("heading", { name: "3 things are selected" }).waitFor();
    await page.getByRole("button", { name: "Middles, side by side" }).click();
    const y = ["y_mm"];
    await has("devices", "lp.a", y, "192.5");
    await has("devices", "sw.left", y, "192.5");
    await undo(page);
    await has("devices", "sw.left", y, "225");
    await page.getByRole("button", { name: "Equal distances from left to right" }).click();
    await has("devices", "lp.a", ["x_mm"], "137.5");
    await undo(page);
    await has("devices", "lp.a", ["x_mm"], "140");

    const before = await count("devices");
    await page.locator(".drawing").focus();
    await page.keyboard.press("Control+c");
    await page.getByText("3 things copied.").waitFor();
    await page.keyboard.press("Control+v");
    const dialog = page.getByRole("dialog");
    await dialog.getByLabel("lp.a").fill("lp.copied");
    await dialog.getByRole("button", { name: "Paste" }).click();
    await has("devices", "lp.copied", ["x_mm", "y_mm", "side"], "130,150,under");
    expect(await count("devices")).toBe(before + 3);
    await undo(page);
    await has("devices", "lp.copied", y, "none");
    expect(await count("devices")).toBe(before);
    expect(complaints).toEqual([]);
    await context.close();
  });

  it("measures, draws waypoints and lanes, and sets what a lane takes", async () => {
    const { has, count } = server(await someoneElse(app.address()));
    const { page, complaints, context } = await app.look();
    await openBook(page, under("ln.power-boards"));
    await page.getByLabel("Largest bundle, mm").fill("18.5");
    await page.locator(".lane-form .mantine-MultiSelect-input").click();
    await page.getByRole("option", { name: "coil", exact: true }).click();
    await page.keyboard.press("Escape");
    await page.getByRole("button", { name: "Save", exact: true }).click();
    await has("lanes", "ln.power-boards", ["max_diameter_mm", "classes"], "18.5,coil");
    await undo(page);
    await has("lanes", "ln.power-boards", ["max_diameter_mm", "classes"], "16,");

    await still(page);
    const at = await panelView(page, "under", DECK);
    const tap = async (xMm: number, yMm: number): Promise<void> => {
      const { x, y } = at(xMm, yMm);
      await page.mouse.click(x, y);
    };
    await page.getByRole("button", { name: "Measure (M)" }).click();
    await tap(50, 95);
    await tap(130, 95);
    await page.locator(".overlay").getByText("80 mm").waitFor();
    await page.keyboard.press("Escape");
    await page.locator(".overlay .measure").first().waitFor({ state: "detached" });

    const [waypoints, lanes] = [await count("waypoints"), await count("lanes")];
    await page.getByRole("button", { name: "Add waypoints (W)" }).click();
    await tap(320, 40);
    await has("waypoints", "wp.pf-under-1", ["panel", "side"], "pf,under");
    await page.getByRole("button", { name: "Draw lanes (L)" }).click();
    await tap(300, 95);
    await tap(320, 40);
    await has("lanes", "ln.pf-under-1", ["from", "to", "max_diameter_mm"], "wp.driver,wp.pf-under-1,16");
    // From there on to a place without a waypoint: one is made.
    await tap(360, 60);
    await has("lanes", "ln.pf-under-2", ["from", "to"], "wp.pf-under-1,wp.pf-under-2");
    for (let i = 0; i < 3; i++) {
      await undo(page);
      await still(page);
    }
    expect([await count("waypoints"), await count("lanes")]).toEqual([waypoints, lanes]);
    expect(complaints).toEqual([]);
    await context.close();
  });

  it("draws a crossing from one side to the other, changes it and deletes it", async () => {
    const { has } = server(await someoneElse(app.address()));
    const { page, complaints, context } = await app.look();
    await openBook(page, `/b/${BOOK}/layout/pf/top`);
    await still(page);
    const top = await panelView(page, "top", DECK);
    const above = top(300, 90);
    await page.getByRole("button", { name: "Add waypoints (W)" }).click();
    await page.mouse.click(above.x, above.y);
    await has("waypoints", "wp.pf-top-1", ["side"], "top");
    await page.getByRole("button", { name: "Draw a crossing to another panel or side (X)" }).click();
    await page.mouse.click(above.x, above.y);
    await page.getByText("From wp.pf-top-1 on Deck, Top side.").waitFor();
    await page.locator(".bar-where").getByText("Underside").click();
    await page.waitForURL(/\/under/u);
    await still(page);
    const below = (await panelView(page, "under", DECK))(300, 95);
    await page.mouse.click(below.x, below.y);
    const dialog = page.getByRole("dialog", { name: "New crossing" });
    await dialog.getByText("From wp.pf-top-1 to wp.driver.").waitFor();
    await dialog.getByLabel("Length between the ties").fill("22");
    await dialog.getByRole("button", { name: "Add the crossing" }).click();
    const columns = ["from", "to", "kind", "length_mm", "max_diameter_mm"];
    await has("crossings", "cx.drawn-1", columns, "wp.pf-top-1,wp.driver,hole,22,20");
    expect(selectedIds(page)).toEqual(["cx.drawn-1"]);

    const form = page.getByRole("form", { name: "cx.drawn-1" });
    await form.getByLabel("Largest bundle, mm").fill("9");
    await form.getByRole("button", { name: "Save" }).click();
    await has("crossings", "cx.drawn-1", columns, "wp.pf-top-1,wp.driver,hole,22,9");
    await page.getByRole("button", { name: "See the other end" }).click();
    await page.waitForURL(/id=wp\.(driver|pf-top-1)$/u);
    await page.getByRole("button", { name: "Delete cx.drawn-1" }).click();
    await has("crossings", "cx.drawn-1", columns, "none");
    await undo(page);
    await has("crossings", "cx.drawn-1", columns, "wp.pf-top-1,wp.driver,hole,22,9");
    // By keyboard alone: a waypoint of the list is the beginning, another one the end.
    await page.goto(`/b/${BOOK}/layout/pf/top?id=wp.pf-top-1`);
    await page.getByRole("button", { name: "Draw a crossing from here" }).press("Enter");
    await page.locator(".drawing").focus();
    await page.keyboard.press("t");
    await page.getByLabel("Find on this side").fill("wp.joint");
    await page.keyboard.press("Enter");
    await page.getByRole("button", { name: "End the crossing from wp.pf-top-1 here" }).press("Enter");
    await dialog.getByText("From wp.pf-top-1 to wp.joint.").waitFor();
    await page.keyboard.press("Escape");
    await dialog.waitFor({ state: "detached" });
    expect(complaints).toEqual([]);
    await context.close();
  });
});
