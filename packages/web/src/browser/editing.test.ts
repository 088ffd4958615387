import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { writeCells } from "@pinwright/book/io";
import type { BookRows } from "@pinwright/contract";
import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { openBook, PATIENCE_MS } from "./testing/browser.ts";
import { someoneElse } from "./testing/someone-else.ts";
import { withApp } from "./testing/with-app.ts";

const app = withApp();

/** The row of an id, as the server has it. */
const rowOf = (rows: BookRows, table: string, id: string): Readonly<Record<string, string>> | undefined =>
  Object.values(rows.tables[table] ?? {}).find((row) => row.id === id);

const saved = (page: Page): Promise<void> => page.getByRole("banner").getByText("Saved").waitFor();
const undo = (page: Page): Promise<void> =>
  page.getByRole("banner").getByRole("button", { name: "Undo" }).click();

describe("editing", { timeout: 2 * PATIENCE_MS }, () => {
  it("drags a switch; its wires follow while it is dragged, and undo puts it back", async () => {
    const other = await someoneElse(app.address());
    const { page, complaints } = await app.look();
    await openBook(page, "/b/first-light/layout/pf/under?id=sw.left");
    const chosen = page.locator(".drawing .chosen").first();
    const box = await chosen.boundingBox();
    if (box === null) throw new Error("The switch is not on the drawing.");
    const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
    await page.mouse.move(x, y);
    await page.mouse.down();
    for (let i = 1; i <= 10; i++) await page.mouse.move(x + 6 * i, y + 4 * i);
    // Not let go yet, and the new lengths stand beside the drawing.
    const follows = page.getByRole("region", { name: "What follows" });
    await follows
      .getByText(/^[+\u2212-]\d+ mm$/u)
      .first()
      .waitFor();
    expect(rowOf(await other.rows("first-light"), "devices", "sw.left")?.x_mm).toBe("95");
    await page.mouse.up();
    const moved = async (): Promise<string> =>
      rowOf(await other.rows("first-light"), "devices", "sw.left")?.x_mm ?? "";
    await expect.poll(moved, { timeout: PATIENCE_MS }).not.toBe("95");
    await undo(page);
    await expect.poll(moved, { timeout: PATIENCE_MS }).toBe("95");
    expect(complaints).toEqual([]);
  });

  it("shows each of two people what the other does, and both texts when both changed one cell", async () => {
    const other = await someoneElse(app.address());
    const [one, two] = [await app.look(), await app.look()];
    for (const { page } of [one, two])
      await openBook(page, "/b/first-light/tables/devices?id=sw.far-left&column=label");
    const cell = (page: Page, text: string) => page.getByRole("gridcell", { name: text, exact: true });
    const type = async (page: Page, from: string, to: string): Promise<void> => {
      await cell(page, from).dblclick();
      await page.keyboard.press("Control+a");
      await page.keyboard.type(to);
      await page.keyboard.press("Enter");
    };
    await type(one.page, "Far left switch", "Outermost switch");
    await cell(two.page, "Outermost switch").waitFor();

    // The second is out of reach for a while, and changes the same cell meanwhile.
    await two.context.setOffline(true);
    await type(two.page, "Outermost switch", "Edge switch");
    await type(one.page, "Outermost switch", "Leftmost switch");
    await saved(one.page);
    await two.context.setOffline(false);
    const refused = two.page.getByRole("dialog");
    await refused.getByText("A change was not made").waitFor();
    await refused.getByText("Edge switch").waitFor();
    await refused.getByText("Leftmost switch").waitFor();
    expect(rowOf(await other.rows("first-light"), "devices", "sw.far-left")?.label).toBe("Leftmost switch");
    await refused.getByRole("button", { name: "Put mine in place of it" }).click();
    await cell(one.page, "Edge switch").waitFor();
  });

  it("brings in a workbook with faults, and mends them in their cells", async () => {
    const other = await someoneElse(app.address());
    const { page, complaints } = await app.look();
    const { tables } = await other.rows("first-light");
    const faulty = new Map(
      Object.entries(tables).map(([table, rows]) => [
        table,
        new Map(
          Object.entries(rows).map(([row, cells]) => {
            const wrong = table === "devices" && cells.id === "sw.top" ? { x_mm: "two hundred" } : {};
            return [row, new Map(Object.entries({ ...cells, ...wrong }))];
          }),
        ),
      ]),
    );
    const folder = await mkdtemp(join(tmpdir(), "pinwright-workbook-"));
    const file = join(folder, "from-the-office.xlsx");
    await writeFile(file, await writeCells(faulty, null, "xlsx"));
    try {
      await page.goto("/");
      await page.locator('input[type="file"]').setInputFiles(file);
      await page.getByText(/It becomes the book “first-light-2”/u).waitFor();
      await page.getByText("two hundred").waitFor();
      await page.getByRole("button", { name: "Bring it in with its faults" }).click();
    } finally {
      await rm(folder, { recursive: true });
    }
    const faults = page.locator('[data-rule="faults"]');
    await faults.getByText("two hundred").waitFor();
    await faults.getByRole("link", { name: "Open the cell" }).first().click();
    const cell = page.getByRole("gridcell", { name: "two hundred" });
    await cell.waitFor();
    // The cell is chosen already: typing is enough.
    await page.getByRole("grid").locator("[data-active]").filter({ hasText: "two hundred" }).click();
    await page.keyboard.type("200");
    await page.keyboard.press("Enter");
    await page.getByRole("navigation").getByText("Findings").click();
    await faults.waitFor({ state: "detached" });
    const { book } = await other.rows("first-light-2");
    expect(book.label).toBe("First Light");
    expect(complaints).toEqual([]);
  });
});
