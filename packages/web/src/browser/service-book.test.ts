import { readFile } from "node:fs/promises";
import { describe, expect, it } from "vitest";
import { accessFaults, sidewaysPx } from "./testing/accessible.ts";
import { openBook, PATIENCE_MS } from "./testing/browser.ts";
import { withApp } from "./testing/with-app.ts";

const app = withApp();
const TAB = "/b/first-light/service/book";

describe("the service book", { timeout: PATIENCE_MS }, () => {
  it("is made of the draft, read by contents, links, search and page, and fetched as PDF", async () => {
    const { page, context, complaints } = await app.look();
    await openBook(page, TAB);
    await page.getByRole("button", { name: "Make the book" }).click();
    const book = page.getByRole("region", { name: /Service book$/u });
    await book.waitFor();
    await page.getByText(/^draft after change/u).waitFor();
    await page.locator(".book-page[data-page='1'] svg").waitFor();
    const all = Number(/of (\d+)$/u.exec((await page.getByText(/^Page 1 of/u).textContent()) ?? "")?.[1]);
    expect(all).toBeGreaterThan(10);

    await page.getByRole("button", { name: "Next page" }).click();
    await page.locator(".book-page[data-page='2'] svg").waitFor();
    await page.getByRole("button", { name: "Previous page" }).click();
    await page.locator(".book-page[data-page='1'] svg").waitFor();

    // By the contents at the side, and by the contents of the book itself.
    const contents = page.getByRole("navigation", { name: "Contents" });
    const fuses = contents.getByRole("button", { name: /fuse/iu }).first();
    const fusePage = /(\d+)$/u.exec((await fuses.textContent()) ?? "")?.[1];
    await fuses.click();
    await page.locator(`.book-page[data-page='${fusePage}'] svg`).waitFor();
    await page.getByRole("textbox", { name: "Page" }).fill("1");
    await page.getByRole("textbox", { name: "Page" }).press("Enter");
    await page.locator(".book-page[data-page='1'] svg").waitFor();
    let withLinks = 1;
    while ((await page.locator(".book-link").count()) === 0 && withLinks < 6) {
      withLinks++;
      await page.getByRole("button", { name: "Next page" }).click();
      await page.locator(`.book-page[data-page='${withLinks}'] svg`).waitFor();
    }
    const link = page.locator(".book-link").last();
    const to = /to page (\d+)$/u.exec((await link.getAttribute("title")) ?? "")?.[1];
    await link.click();
    await page.locator(`.book-page[data-page='${to}'] svg`).waitFor();

    await page.getByRole("searchbox", { name: "Search in the book" }).fill("fuse");
    await page.getByText(/^\d+ places$/u).waitFor();
    const hit = page.locator(".book-hits button").first();
    const hitPage = /(\d+)$/u.exec((await hit.textContent()) ?? "")?.[1];
    await hit.click();
    await page.locator(`.book-page[data-page='${hitPage}'] .book-spot`).waitFor();
    expect(await accessFaults(page)).toEqual([]);

    const pdf = page.getByRole("link", { name: /^PDF/u });
    const [download] = await Promise.all([page.waitForEvent("download"), pdf.click()]);
    expect((await readFile(await download.path())).subarray(0, 5).toString()).toBe("%PDF-");
    expect(complaints).toEqual([]);
    await context.close();
  });

  it("is read in Chinese on a phone", async () => {
    const { page, context, complaints } = await app.look({ language: "zh", screen: "phone" });
    await openBook(page, `${TAB}?revision=draft&language=zh&page=3`);
    await page.locator(".book-page[data-page='3'] svg").waitFor();
    await page.getByText(/^第 3 页，共/u).waitFor();
    expect(await sidewaysPx(page)).toBe(0);
    expect(await accessFaults(page)).toEqual([]);
    await page.getByRole("button", { name: "放大" }).click();
    expect(await sidewaysPx(page)).toBe(0);
    expect(complaints).toEqual([]);
    await context.close();
  });
});
