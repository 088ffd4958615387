import { readFile } from "node:fs/promises";
import type { Browser, Locator, Page } from "playwright-core";
import { afterAll, beforeAll, beforeEach, describe, expect, it } from "vitest";
import { accessFaults } from "./testing/accessible.ts";
import { look, openBook, openBrowser, PATIENCE_MS } from "./testing/browser.ts";
import { type RunningApp, startApp } from "./testing/start-app.ts";

let app: RunningApp;
let browser: Browser;
let page: Page;
let complaints: readonly string[];

beforeAll(async () => {
  app = await startApp();
  browser = await openBrowser();
}, PATIENCE_MS);
afterAll(async () => {
  await browser?.close();
  await app?.stop();
});
beforeEach(async () => {
  await page?.context().close();
  ({ page, complaints } = await look(browser, app.address));
}, PATIENCE_MS);

/** A cell by its row on the screen, from 0, and its heading. */
async function cell(row: number, title: string): Promise<Locator> {
  const heading = page.getByRole("columnheader", { name: title }).first();
  const col = Number(await heading.getAttribute("aria-colindex")) - 2;
  return page.locator(`[role=row][aria-rowindex="${row + 2}"] [aria-colindex="${col + 2}"]`);
}

const click = async (row: number, title: string): Promise<void> => (await cell(row, title)).click();

const says = async (row: number, title: string, text: string): Promise<void> =>
  (await cell(row, title)).filter({ hasText: new RegExp(`^${text}$`, "u") }).waitFor();

const rowCount = async (): Promise<number> =>
  Number(await page.getByRole("grid").getAttribute("aria-rowcount")) - 2;

const rowsAre = (count: number): Promise<void> =>
  page.locator(`[role=grid][aria-rowcount="${count + 2}"]`).waitFor();

/** Puts a text on the clipboard of the active cell, as a spreadsheet does. */
const paste = (text: string): Promise<unknown> =>
  page.evaluate(`{
    const data = new DataTransfer();
    data.setData("text/plain", ${JSON.stringify(text)});
    document.activeElement.dispatchEvent(
      new ClipboardEvent("paste", { clipboardData: data, bubbles: true, cancelable: true }),
    );
  }`);

const open = (table: string): Promise<void> => openBook(page, `/b/first-light/tables/${table}`);

/** The keyboard goes to the blank row at the end. */
async function toBlankRow(): Promise<void> {
  await click(0, "Id");
  await page.keyboard.press("Control+End");
  await page.keyboard.press("Home");
  await page.keyboard.press("ArrowDown");
}

describe("a table", { timeout: PATIENCE_MS }, () => {
  it("takes what is typed and composed from the first character on", async () => {
    await open("nets");
    await click(1, "Name (Chinese)");
    const keys = await page.context().newCDPSession(page);
    await keys.send("Input.imeSetComposition", { text: "zhong", selectionStart: 5, selectionEnd: 5 });
    await keys.send("Input.insertText", { text: "中" });
    await page.keyboard.type("x");
    await page.keyboard.press("Enter");
    await says(1, "Name (Chinese)", "中x");
    await page.keyboard.type("two");
    await page.keyboard.press("Escape");
    await page.keyboard.press("ArrowUp");
    await page.keyboard.press("Control+z");
    await page.getByText(/^Undone/u).waitFor();
    await expect.poll(async () => (await cell(1, "Name (Chinese)")).textContent()).not.toBe("中x");
    expect(complaints).toEqual([]);
  });

  it("takes 200 rows of a spreadsheet at once, and gives them back by one undo", async () => {
    await open("nets");
    const before = await rowCount();
    await toBlankRow();
    const rows = Array.from({ length: 200 }, (_, i) => `net.p${i}\t"line ${i}\nbreak"\t中${i}\tlamp\n`);
    await paste(rows.join(""));
    await rowsAre(before + 200);
    await page.locator(".bar", { hasText: "Saved" }).waitFor();
    await page.keyboard.press("Control+z");
    await rowsAre(before);
    await page.keyboard.press("Control+y");
    await rowsAre(before + 200);
    await page.reload();
    await rowsAre(before + 200);
    await click(0, "Id");
    await page.keyboard.press("Control+z");
    await rowsAre(before);
  });

  it("adds rows as they are typed, with values looked up", async () => {
    await open("devices");
    const before = await rowCount();
    await toBlankRow();
    await page.keyboard.type("sw.typed-1");
    await page.keyboard.press("Tab");
    await page.keyboard.type("First");
    await page.keyboard.press("Enter");
    await page.keyboard.type("sw.typed-2");
    await page.keyboard.press("Enter");
    await rowsAre(before + 2);
    await click(before, "Type");
    await page.keyboard.type("micro");
    await page.getByRole("option", { name: /micro-switch/u }).waitFor();
    await page.keyboard.press("Enter");
    await says(before, "Type", "micro-switch");
    await click(before, "Side");
    await page.keyboard.type("topp");
    await page.keyboard.press("Enter");
    await page.keyboard.press("ArrowUp");
    await page.getByRole("button", { name: "Use “top”" }).click();
    await says(before, "Side", "top");
    // Fill down by the keyboard: the fault of the second row goes with it.
    await page.keyboard.press("Shift+ArrowDown");
    await page.keyboard.press("Control+d");
    await says(before + 1, "Side", "top");
    expect(await accessFaults(page)).toEqual([]);
    await click(before, "Id");
    await page.keyboard.press("Shift+Space");
    await page.keyboard.press("Shift+ArrowDown");
    await page.keyboard.press("Control+-");
    await rowsAre(before);
    expect(complaints).toEqual([]);
  });

  it("renames everywhere in one step, and leads to a row by its address", async () => {
    await openBook(page, "/b/first-light/tables/devices?id=sw.far-left");
    await page.locator("[data-active]", { hasText: /^sw\.far-left$/u }).waitFor();
    await page.keyboard.type("sw.outer");
    await page.keyboard.press("Enter");
    await page.getByRole("dialog").getByText("is named in 2 other cells").waitFor();
    await page.keyboard.press("Enter");
    await page.locator("[role=gridcell]", { hasText: /^sw\.outer$/u }).waitFor();
    await page.goto("/b/first-light/tables/ends");
    await page.getByRole("textbox", { name: "Show rows with" }).fill("sw.outer:");
    await page.locator(".table-figures", { hasText: /^2 of/u }).waitFor();
  });

  it("is sorted and filtered without being changed, and keeps an order when asked to", async () => {
    await open("device_types");
    const first = await (await cell(0, "Id")).textContent();
    await click(0, "Id");
    await page.getByRole("button", { name: "Sort by this column, Z to A" }).click();
    const last = await (await cell(0, "Id")).textContent();
    expect(last).not.toBe(first);
    await page.getByRole("button", { name: "Show all rows" }).click();
    await says(0, "Id", first ?? "");
    await page.getByRole("button", { name: "Sort by this column, Z to A" }).click();
    await page.getByRole("button", { name: "Keep this order" }).click();
    await says(0, "Id", last ?? "");
    await page.reload();
    await says(0, "Id", last ?? "");
  });
});

describe("a file", { timeout: PATIENCE_MS }, () => {
  it("with headings of its own is matched, mended and taken in as one step, and matched so again", async () => {
    const csv = "Name;Board;Face;X (in);Y (in)\nwp.n1;pf;Under;1;2\nwp.n2;pf;undre;1,5;2\nWP N3;pf;top;3;4\n";
    const file = { name: "places.csv", mimeType: "text/csv", buffer: Buffer.from(csv) };
    await open("waypoints");
    const before = await rowCount();
    await page.getByRole("link", { name: "Bring in and export" }).click();
    await page.setInputFiles("input[type=file]", file);
    await page.getByLabel("Column of the table: Name").selectOption("id");
    await page.getByText("3 cells do not fit").waitFor();
    expect(await accessFaults(page)).toEqual([]);
    for (const nearest of ["under", "wp-n3"]) {
      const use = page.getByRole("button", { name: `Use “${nearest}”` });
      // The offer comes a moment after the fault is reached: whoever goes on too soon passes it.
      const isOffered = () =>
        use.waitFor({ timeout: 4000 }).then(
          () => true,
          () => false,
        );
      do await page.getByRole("button", { name: "Next fault" }).click();
      while (!(await isOffered()));
      await use.click();
      await page
        .locator("[role=gridcell]", { hasText: new RegExp(`^${nearest}$`, "u") })
        .first()
        .waitFor();
    }
    await page.getByText("1 cell does not fit").waitFor();
    await click(1, "X");
    await page.keyboard.type("38.1");
    await page.keyboard.press("Enter");
    await page.getByText("Every cell fits.").waitFor();
    await page.getByRole("button", { name: "Take in 3 rows" }).click();
    await rowsAre(before + 3);
    await says(before, "X", "25.4");
    await page.getByRole("button", { name: "Undo" }).click();
    await rowsAre(before);
    await page.getByRole("link", { name: "Bring in and export" }).click();
    await page.setInputFiles("input[type=file]", file);
    await page.getByText("as before").first().waitFor();
    expect(await page.getByLabel("Column of the table: Name").inputValue()).toBe("id");
    expect(complaints).toEqual([]);
  });

  it("that Pinwright wrote says what would change, and is taken in", async () => {
    await open("import");
    const download = page.waitForEvent("download");
    await page.getByRole("link", { name: "As a workbook" }).click();
    const workbook = await readFile(await (await download).path());
    await page.getByRole("link", { name: "Waypoints" }).click();
    await click(0, "X");
    const text = (await (await cell(0, "X")).textContent()) ?? "";
    await page.keyboard.type("77");
    await page.keyboard.press("Enter");
    await says(0, "X", "77");
    await page.locator(".bar", { hasText: "Saved" }).waitFor();
    await page.getByRole("link", { name: "Bring in and export" }).click();
    const mimeType = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";
    await page.setInputFiles("input[type=file]", { name: "book.xlsx", mimeType, buffer: workbook });
    await page.getByText("1 cell is changed").waitFor();
    await page.getByRole("button", { name: "Take it in" }).click();
    await page.getByText("The book is now what the file says.").waitFor();
    await page.getByRole("link", { name: "Waypoints" }).click();
    await says(0, "X", text);
  });
});
