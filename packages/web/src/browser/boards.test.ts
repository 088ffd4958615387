import type { Locator } from "playwright-core";
import { describe, expect, it } from "vitest";
import { openBook, PATIENCE_MS } from "./testing/browser.ts";
import { withApp } from "./testing/with-app.ts";

const app = withApp();

const BOARDS = "/b/tidewatch/boards";

const textOf = async (place: Locator): Promise<string> => (await place.textContent()) ?? "";
const numberIn = (text: string): number => Number.parseFloat(/[\d.]+/u.exec(text)?.[0] ?? "");

describe("boards", { timeout: PATIENCE_MS }, () => {
  it("are registered with their places, and each kind has a page that leads to the drawing", async () => {
    const { page, context, complaints } = await app.look();
    await openBook(page, BOARDS);
    const table = page.getByRole("table", { name: "Register of boards" });
    const row = table.getByRole("row", { name: /Lamp board, 16 outputs/u });
    await row.getByRole("button", { name: /^and \d+ more$/u }).click();
    expect(await row.locator(".board-places li").count()).toBe(9);
    await row.getByRole("link", { name: "Lamp board, 16 outputs" }).click();
    await page.waitForURL(/\/boards\/bt\.lamp16$/u);
    await page.getByRole("heading", { name: /Lamp board, 16 outputs/u, level: 2 }).waitFor();
    await page.getByRole("link", { name: "Lamp board, front left" }).click();
    await page.waitForURL(/\/layout\/playfield\/under\?id=/u);

    await openBook(page, `${BOARDS}?id=bt.coil8`);
    await page.waitForURL(/\/boards\/bt\.coil8$/u);
    expect(complaints).toEqual([]);
    await context.close();
  });

  it("are stuffed stage by stage: a picture with the parts of the stage, and their list", async () => {
    const { page, context, complaints } = await app.look();
    await openBook(page, `${BOARDS}/bt.lamp16`);
    const stages = page.locator(".stage-button");
    await stages.first().waitFor();
    const seen = new Set<string>();
    for (let i = 0; i < (await stages.count()); i++) {
      await stages.nth(i).click();
      await page.getByRole("img", { name: new RegExp(`stage ${i + 1}: \\d+ part`, "u") }).waitFor();
      const dark = await page.locator(".board-drawing .part.now[data-ref]").count();
      const listed = await page.locator(".stage-parts li b").allTextContents();
      expect(listed.length).toBe(dark);
      for (const reference of listed) seen.add(reference);
    }
    const parts = numberIn(
      await textOf(page.locator(".plan-figures div", { hasText: "Parts" }).locator("b")),
    );
    expect(seen.size).toBe(parts);

    // Played from the last stage it begins again and stops at the end; a part is found by its place in the list.
    const last = page.url();
    const played: string[] = [];
    page.on("framenavigated", (frame) => played.push(frame.url()));
    await page.getByRole("button", { name: "Play" }).click();
    await expect.poll(() => played.at(-1), { timeout: PATIENCE_MS }).toBe(last);
    expect(played.map((url) => new URL(url).searchParams.get("stage"))).toEqual(
      Array.from({ length: await stages.count() }, (_, i) => (i === 0 ? null : String(i + 1))),
    );
    await page.getByRole("button", { name: "Play" }).waitFor();
    await page.locator(".stage-parts button").first().click();
    await page.waitForURL(/ref=/u);
    await page.locator(".board-drawing .part.picked").waitFor();
    expect(complaints).toEqual([]);
    await context.close();
  });

  it("have a kit for a batch with losses on top, and tests with limits", async () => {
    const { page, context, complaints } = await app.look();
    await openBook(page, `${BOARDS}/bt.lamp16?boards=50`);
    const kit = page.getByRole("table", { name: "Kit for 50 boards" });
    await kit.waitFor();
    const header = await kit.getByRole("columnheader").allTextContents();
    const [needed, extra, total] = ["Needed", "For losses", "To lay out"].map((name) => header.indexOf(name));
    for (const row of (await kit.getByRole("row").all()).slice(1)) {
      const cells = await row.getByRole("cell").allTextContents();
      const at = (i: number | undefined): number => Number(cells[i ?? -1]);
      expect(at(needed) % 50).toBe(0);
      expect(at(total)).toBe(at(needed) + at(extra));
    }
    await openBook(page, `${BOARDS}/tests?kind=bt.lamp16`);
    await page.getByText("30 to 70 mA").waitFor();
    expect(await page.locator(".test-table").count()).toBe(1);
    expect(complaints).toEqual([]);
    await context.close();
  });

  it("are soldered by hand or in the bath, and the answer moves with what is tried", async () => {
    const { page, context, complaints } = await app.look();
    await openBook(page, `${BOARDS}/solder?machines=25`);
    const figures = page.locator(".plan-figures dd b");
    await page.getByText("The bath takes less work").waitFor();
    const crossing = numberIn(await textOf(figures.nth(2)));
    expect(crossing).toBeLessThanOrEqual(25);
    await page.getByRole("img", { name: /^Minutes of work by hand and in the bath/u }).waitFor();

    const bath = page.getByRole("textbox", { name: "Lighting and cleaning the bath, each person" });
    await bath.fill("900");
    await page.getByText("1 time is other than the shop's").waitFor();
    await expect
      .poll(async () => numberIn(await textOf(figures.nth(2))), { timeout: PATIENCE_MS })
      .toBeGreaterThan(crossing);
    await page.getByRole("button", { name: "As the shop has them" }).click();
    await expect
      .poll(async () => numberIn(await textOf(figures.nth(2))), { timeout: PATIENCE_MS })
      .toBe(crossing);

    // A kind that is left out is in the address.
    const before = await textOf(figures.first());
    await page.getByRole("checkbox", { name: "Lamp board, 16 outputs" }).press(" ");
    await page.waitForURL(/counts=bt\.lamp16/u);
    await expect.poll(async () => textOf(figures.first()), { timeout: PATIENCE_MS }).not.toBe(before);
    expect(complaints).toEqual([]);
    await context.close();
  });

  it("say so when there is no such kind", async () => {
    const { page, context, complaints } = await app.look();
    await openBook(page, `${BOARDS}/bt.nothing`);
    await page.getByText("There is no kind of board “bt.nothing”.").waitFor();
    expect(complaints).toEqual([]);
    await context.close();
  });
});
