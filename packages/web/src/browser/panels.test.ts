import { describe, expect, it } from "vitest";
import { openBook, PATIENCE_MS } from "./testing/browser.ts";
import { someoneElse } from "./testing/someone-else.ts";
import { withApp } from "./testing/with-app.ts";

const app = withApp();

const PANELS = "/b/tidewatch/panels";
const SHOP = "shop";

const numberIn = (text: string | null): number => Number.parseFloat(/[\d.]+/u.exec(text ?? "")?.[0] ?? "");

describe("panels", { timeout: PATIENCE_MS }, () => {
  it("show what they are cut to, from a measured sheet, and lead to drawing and tables", async () => {
    const { page, context, complaints } = await app.look();
    await openBook(page, PANELS);
    const table = page.getByRole("table", { name: "Sizes of the panels" });
    const row = table.getByRole("row", { name: /Cabinet left side/u });
    await row.getByText("measured, nominally 18 mm").waitFor();
    await row.getByText(/^follows the thickness of Cabinet front/u).waitFor();
    await row.getByText("y: cabinet-side").waitFor();
    await row.getByRole("link", { name: "Cabinet left side" }).click();
    await page.waitForURL(/\/layout\/cab\.left\/top/u);

    await openBook(page, `${PANELS}/sizes?id=cab.left`);
    expect(await table.getByRole("row").count()).toBe(2);
    await page.getByRole("button", { name: "Show all panels" }).click();
    await table.getByRole("row", { name: /Playfield/u }).waitFor();
    expect(complaints).toEqual([]);
    await context.close();
  });

  it("are cut in patterns whose cuts are gone through by keyboard; the address keeps what is looked at", async () => {
    const { page, context, complaints } = await app.look();
    await openBook(page, `${PANELS}/cutting?machines=25&sheet=sheet.ply-18`);
    const section = page.getByRole("region", { name: "Birch plywood 18 mm" });
    const sheets = section.locator(".plan-figures dd").first();
    await sheets.getByText(/no plan needs fewer than \d+/u).waitFor();
    const words = (await sheets.textContent()) ?? "";
    const least = numberIn(/fewer than (\d+)/u.exec(words)?.[1] ?? "");
    const forMates = (await section.locator(".mates-note").count()) > 0;
    expect(numberIn(words)).toBeLessThanOrEqual(forMates ? least * 1.05 : least);

    await section.getByRole("button", { name: /^2 \(/u }).click();
    const cut = section.getByRole("button", { name: /^Cut 3\b/u });
    await cut.click();
    await page.waitForURL(/pattern=2.*cut=3|cut=3.*pattern=2/u);
    await section.locator(".this-cut").getByText("3", { exact: true }).waitFor();
    await page.keyboard.press("ArrowDown");
    await section.locator(".this-cut").getByText("4", { exact: true }).waitFor();
    expect(await section.getByRole("button", { name: /^Cut 4\b/u }).getAttribute("aria-pressed")).toBe(
      "true",
    );

    // A setting of the fence shows all its cuts in the pattern.
    await section.locator(".setup-list button", { hasText: "backbox-depth" }).first().click();
    await page.waitForURL(/setup=\d+/u);
    const address = page.url();
    await openBook(page, address.slice(address.indexOf("/b/")));
    await section.locator(".this-cut").first().waitFor();
    expect(complaints).toEqual([]);
    await context.close();
  });

  it("leave offcuts, which are put into stock with one edit and taken out with one undo", async () => {
    const else_ = await someoneElse(app.address());
    const stock = async (): Promise<number> =>
      Object.keys((await else_.rows(SHOP)).tables.stock_sheets ?? {}).length;
    const before = await stock();
    const { page, context, complaints } = await app.look();
    await openBook(page, `${PANELS}/cutting?machines=3`);
    const keep = page.getByRole("region", { name: "When these sheets have been cut" });
    await keep.getByRole("button", { name: /^Put \d+ offcuts into stock$/u }).click();
    await page.getByText(/in stock now/u).waitFor();
    await expect.poll(stock, { timeout: PATIENCE_MS }).toBeGreaterThan(before);
    const made = Object.values((await else_.rows(SHOP)).tables.stock_sheets ?? {}).filter(
      (cells) => cells.offcut === "yes" && cells.id?.startsWith("off."),
    );
    expect(made.length).toBeGreaterThan(0);
    for (const cells of made) {
      expect(cells.part).toMatch(/^sheet\.ply-/u);
      expect(Number(cells.count)).toBeGreaterThan(0);
      expect(Number(cells.measured_mm)).toBeGreaterThan(0);
    }
    await page.getByRole("button", { name: "Undo" }).click();
    await expect.poll(stock, { timeout: PATIENCE_MS }).toBe(before);
    expect(complaints).toEqual([]);
    await context.close();
  });

  it("add up to fits, with the worst case and the likely spread against the limits", async () => {
    const { page, context, complaints } = await app.look();
    await openBook(page, `${PANELS}/fits`);
    await page.getByRole("link", { name: /Play of the playfield glass/u }).click();
    await page.waitForURL(/fits\?id=/u);
    const chart = page.getByRole("img", { name: /worst case .* likely .* asked for/u });
    const says = (await chart.getAttribute("aria-label")) ?? "";
    const [, worstMin, worstMax, rssMin, rssMax] =
      /worst case ([\d.-]+) to ([\d.-]+) mm, likely ([\d.-]+) to ([\d.-]+) mm/u.exec(says) ?? [];
    expect(Number(worstMin)).toBeLessThan(Number(rssMin));
    expect(Number(worstMax)).toBeGreaterThan(Number(rssMax));
    const terms = page.getByRole("table", { name: "What adds up to it" });
    await terms.getByRole("link", { name: "Cabinet front" }).click();
    await page.waitForURL(/sizes\?id=cab\.front/u);
    expect(complaints).toEqual([]);
    await context.close();
  });

  it("are painted rack by rack, and never more than a rack full in a batch", async () => {
    const { page, context, complaints } = await app.look({ screen: "phone" });
    await openBook(page, `${PANELS}/paint?machines=25`);
    const chart = page.getByRole("img", { name: /^\d+ batches until day/u });
    await chart.waitFor();
    const rows = await page.locator('th[scope="rowgroup"]').allTextContents();
    const cabinets = rows.map((text) => numberIn(text.slice(text.indexOf(":"))));
    expect(cabinets.reduce((sum, count) => sum + count, 0)).toBe(25);
    expect(Math.max(...cabinets)).toBeLessThanOrEqual(9);
    expect(complaints).toEqual([]);
    await context.close();
  });

  it("say what belongs there when there are none", async () => {
    const { page, context, complaints } = await app.look();
    await openBook(page, "/b/first-light/panels/fits");
    await page.getByText(/^No fit is asked for yet/u).waitFor();
    await page.getByRole("link", { name: "Terms of fits" }).waitFor();
    expect(complaints).toEqual([]);
    await context.close();
  });
});
