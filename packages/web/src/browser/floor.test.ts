import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { accessFaults, sidewaysPx } from "./testing/accessible.ts";
import { PATIENCE_MS } from "./testing/browser.ts";
import { keptFor, lead, scan, wholeStream } from "./testing/floor-hand.ts";
import { withApp } from "./testing/with-app.ts";

const app = withApp();
const BOOK = "first-light";
const LEAST_PX = 56;

const tap = (page: Page, name: string | RegExp): Promise<void> =>
  page.getByRole("button", { name, exact: typeof name === "string" }).tap();

/** Targets that a gloved finger would miss: lower than 56 px. */
async function smallTargets(page: Page): Promise<readonly string[]> {
  const found: unknown = await page.evaluate(
    `[...document.querySelectorAll("button, a, select, summary")]
      .filter((one) => one.getClientRects().length > 0 && one.closest(".screw-map") === null)
      .filter((one) => one.getBoundingClientRect().height < ${LEAST_PX} - 0.5)
      .map((one) => one.textContent + " " + one.getBoundingClientRect().height)`,
  );
  return Array.isArray(found) ? found.map(String) : [];
}

async function checked(page: Page): Promise<void> {
  expect(await accessFaults(page)).toEqual([]);
  expect(await sidewaysPx(page)).toBe(0);
  expect(await smallTargets(page)).toEqual([]);
}

describe("floor", { timeout: PATIENCE_MS }, () => {
  it("takes a batch of boards from kit to tested, in Chinese, with the network away in the middle", async () => {
    const office = await lead(app.address());
    const [first = "", second = ""] = await office.units({ book: BOOK, what: "board", type: "io", count: 2 });
    const { page, context, complaints } = await app.look({ screen: "tablet", language: "zh" });
    await page.goto("/floor");

    // Where the tablet stands is asked once.
    await page.getByRole("heading", { name: "您在哪个工位？" }).waitFor();
    await page.locator(".floor-tiles button").first().tap();
    await tap(page, /^全部工位/u);
    await page.getByRole("button", { name: first }).waitFor();
    await checked(page);
    await page.getByRole("checkbox", { name: "多件一起做" }).check();
    await tap(page, first);
    await scan(page, second);
    await tap(page, "开始（2 件）");
    await page.getByRole("heading", { name: /^备料/u }).waitFor();
    await page.locator(".floor-ticks button").first().tap();
    await checked(page);
    await keptFor(page, [
      `/api/books/${BOOK}/rows`,
      "/api/books/shop/rows",
      "/api/units",
      `/api/units/${first}`,
    ]);
    await tap(page, "料已备齐");
    await page.getByRole("heading", { name: "插装第 1 阶段" }).waitFor();
    await page.getByText("已全部发送").waitFor();

    await context.setOffline(true);
    await page.locator(".floor-picture svg").waitFor();
    await checked(page);
    for (let stage = 2; ; stage++) {
      await tap(page, "完成，下一项");
      const next = page.getByRole("heading", { name: `插装第 ${stage} 阶段` });
      const test = page.getByRole("heading", { name: "开关灯板 5 V" });
      await next.or(test).waitFor();
      if (await test.isVisible()) break;
    }
    await page.getByText("无网络").waitFor();

    // The page opens without the network, and everything that was done is there.
    await page.reload();
    await page.getByRole("heading", { name: "开关灯板 5 V" }).waitFor();
    await page.getByText("条待发送").waitFor();
    await checked(page);
    for (const digit of ["6", "小数点", "1"]) await tap(page, digit);
    await tap(page, "记录");
    await page.getByRole("heading", { name: "超出限值" }).waitFor();
    await page.getByText("6.1 V，允许 4.75 至 5.25 V").waitFor();
    await checked(page);
    await tap(page, "记为不合格");
    await page.getByRole("heading", { name: /^测试不合格/u }).waitFor();
    await page.locator("[data-ref=U1], [data-ref]").first().tap();
    await page.locator(".floor-spot-name", { hasText: "在 " }).waitFor();
    await page.getByLabel("拍照").setInputFiles({
      name: "board.png",
      mimeType: "image/png",
      buffer: Buffer.from("not quite a picture"),
    });
    await page.getByText("重拍").waitFor();
    await checked(page);
    await tap(page, "记录缺陷");
    await page.getByRole("heading", { name: /^修理/u }).waitFor();
    await checked(page);
    await tap(page, /^测试不合格/u);
    await tap(page, "零件");
    await page.getByText("没有未修的缺陷。").waitFor();
    await tap(page, "返回");

    await context.setOffline(false);
    for (const unit of [first, second]) {
      await page.getByText(`被测件 ${unit}`).waitFor();
      await tap(page, "5");
      await tap(page, "记录");
    }
    await page.getByRole("heading", { name: /^移交给/u }).waitFor();
    await checked(page);
    await page.locator(".floor-tiles button").first().tap();
    await page.getByRole("heading", { name: /^已移交给/u }).waitFor();
    await page.getByText("已全部发送").waitFor();

    const { kinds, faults } = wholeStream(await office.facts());
    expect(faults).toEqual([]);
    const steps = kinds.indexOf("reading");
    expect(kinds.slice(0, steps).every((kind) => kind === "step-done")).toBe(true);
    expect(steps % 2).toBe(0);
    expect(kinds.slice(steps)).toEqual([
      "reading",
      "defect",
      "mended",
      "reading",
      "reading",
      "handed",
      "handed",
    ]);
    const defect = (await office.facts()).find(({ fact }) => fact.body.kind === "defect")?.fact.body;
    expect(defect).toMatchObject({
      unit: first,
      what: "test-failed",
      picture: expect.stringMatching(/^[0-9a-f]{64}$/u),
    });
    expect(complaints).toEqual([]);
    await context.close();
  });
});
