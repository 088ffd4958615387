import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { accessFaults, sidewaysPx } from "./testing/accessible.ts";
import { PATIENCE_MS } from "./testing/browser.ts";
import { keptFor, lead, scan, standAt, wholeStream } from "./testing/floor-hand.ts";
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

/** A photo as a camera makes it, larger than what is kept. */
async function photo(page: Page, width: number, height: number): Promise<Buffer> {
  const address: unknown = await page.evaluate(
    `(() => {
      const canvas = Object.assign(document.createElement("canvas"), { width: ${width}, height: ${height} });
      canvas.getContext("2d").fillRect(40, 40, 400, 300);
      return canvas.toDataURL("image/png");
    })()`,
  );
  return Buffer.from(String(address).split(",")[1] ?? "", "base64");
}

/** Goes through a list one by one until what ends it can be tapped. */
async function through(page: Page, next: string, end: string | RegExp = "完成，下一项"): Promise<void> {
  const last = page.getByRole("button", { name: end, exact: typeof end === "string" });
  const more = page.getByRole("button", { name: next, exact: true });
  for (;;) {
    await last.or(more).first().waitFor();
    if (await last.isVisible()) break;
    await more.tap();
  }
  await last.tap();
}

/** Tells of every housing that is left that all its contacts held. */
async function tugAll(page: Page): Promise<void> {
  const left = page.locator('.floor-tug-all[aria-pressed="false"]');
  while ((await left.count()) > 0) await left.first().tap();
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
    await page.getByText("不是图片，请重拍").waitFor();
    await page.getByLabel("不是图片，请重拍").setInputFiles({
      name: "board.png",
      mimeType: "image/png",
      buffer: await photo(page, 3200, 2400),
    });
    await page.getByText("重拍", { exact: true }).waitFor();
    await page.getByAltText("缺陷照片").waitFor();
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
    // The photo is at the server, made small, under the hash that the record names.
    const hash = defect?.kind === "defect" ? defect.picture : "";
    const size = await page.evaluate(
      `fetch("/api/pictures/${hash}").then((answer) => answer.blob()).then(createImageBitmap)
        .then(({ width, height }) => width + " × " + height)`,
    );
    expect(size).toBe("1600 × 1200");
    expect(complaints).toEqual([]);
    await context.close();
  });

  it("takes a harness from cut list to continuity, and names what the tester found", async () => {
    const office = await lead(app.address());
    const [unit = ""] = await office.units({ book: BOOK, what: "harness", type: "hs.lamps", count: 1 });
    const { page, context, complaints } = await app.look({ screen: "tablet", language: "zh" });
    await standAt(page, BOOK);
    await page.goto("/floor");
    await page.getByRole("heading", { name: /^做哪一件/u }).waitFor();
    await scan(page, unit);
    await page.getByRole("heading", { name: /^裁线/u }).waitFor();
    await checked(page);
    await keptFor(page, [`/api/books/${BOOK}/rows`, "/api/books/shop/rows", `/api/units/${unit}`]);
    await context.setOffline(true);
    await through(page, "全部裁好，下一盘");
    await page.getByRole("heading", { name: /^在钉板上布线/u }).waitFor();
    await checked(page);
    await through(page, "全部布好，下一路");

    // A contact that comes out is mended, and all are tugged once more.
    await page.getByRole("heading", { name: /^逐个拉拔触点/u }).waitFor();
    await checked(page);
    await page
      .getByRole("button", { name: /有触点不牢$/u })
      .first()
      .tap();
    await page.locator(".cavity[data-state=wired]").first().tap();
    await page.getByText("被拉出").waitFor();
    await checked(page);
    await tap(page, "回到各插壳");
    await tugAll(page);
    await tap(page, "1 个触点不牢");
    await tap(page, /^触点未锁住/u);
    await tap(page, "操作");
    await tap(page, "返回");
    await page.getByRole("heading", { name: /^逐个拉拔触点/u }).waitFor();
    await tugAll(page);
    await tap(page, /^\d+ 个触点全部牢固$/u);
    await context.setOffline(false);

    // Two joined places of one wire that are not joined: the wire is named.
    await page.getByRole("heading", { name: /^逐点对其余各点导通检查/u }).waitFor();
    await checked(page);
    await tap(page, "发现问题");
    await tap(page, /^不通/u);
    await page.getByRole("heading", { name: /^点选第一处/u }).waitFor();
    for (const [housing, place] of [
      ["bd.io:j3", "bd.io:j3.1"],
      ["lp.a", "lp.a:out"],
    ]) {
      await page.locator(`[data-housing="${housing}"]`).tap();
      await page.locator(`[data-place^="${place}"]`).first().tap();
    }
    await page.locator(".floor-pairs li").waitFor();
    await checked(page);
    await tap(page, "哪里有问题？");
    await page.locator(".floor-fault").first().waitFor();
    expect(await page.locator(".floor-fault").count()).toBe(1);
    await checked(page);
    await tap(page, "记录 1 个缺陷");
    await page.locator(".floor-tiles button").first().tap();
    await tap(page, "零件");
    await tap(page, "返回");
    // Contacts were pulled and put back: all are tugged once more.
    await page.getByRole("heading", { name: /^逐个拉拔触点/u }).waitFor();
    await tugAll(page);
    await tap(page, /^\d+ 个触点全部牢固$/u);
    await tap(page, "测试仪显示合格");
    await page.getByRole("heading", { name: /^移交给/u }).waitFor();
    await page.getByText("已全部发送").waitFor();

    const own = (await office.facts()).filter(({ fact }) => "unit" in fact.body && fact.body.unit === unit);
    const { kinds, faults } = wholeStream(own);
    expect(faults).toEqual([]);
    expect(kinds).toEqual([
      "step-done",
      "step-done",
      "defect",
      "mended",
      "step-done",
      "reading",
      "defect",
      "mended",
      "step-done",
      "reading",
    ]);
    expect(complaints).toEqual([]);
    await context.close();
  });

  it("takes a machine from its first step to the crate, with one defect on the way", async () => {
    const office = await lead(app.address());
    const give = async (what: "machine" | "board" | "harness", type: string): Promise<string> =>
      (await office.units({ book: BOOK, what, type, count: 1 }))[0] ?? "";
    const machine = await give("machine", BOOK);
    const parts = [
      ...(await Promise.all(["power", "io", "driver"].map((type) => give("board", type)))),
      ...(await Promise.all(["power", "lamps", "deck", "field"].map((id) => give("harness", `hs.${id}`)))),
    ];
    const { page, context, complaints } = await app.look({ screen: "tablet", language: "zh" });
    await standAt(page, BOOK);
    await page.goto("/floor");
    await page.getByRole("heading", { name: /^做哪一件/u }).waitFor();
    await scan(page, machine);
    const step = page.locator(".bench-text h1");
    await step.waitFor();
    await keptFor(page, [
      `/api/books/${BOOK}/rows`,
      "/api/books/shop/rows",
      "/api/units",
      `/api/units/${machine}`,
    ]);
    const done = page.locator(".floor-head a", { hasText: "已完成" });
    const count = async (): Promise<number> =>
      Number(/已完成 (\d+)/u.exec((await done.textContent()) ?? "")?.[1] ?? "-1");
    await tap(page, "完成，下一项");
    await expect.poll(count, { timeout: PATIENCE_MS }).toBe(1);
    await context.setOffline(true);
    await page.locator(".screw-map").waitFor();
    await checked(page);

    await tap(page, "有问题");
    await checked(page);
    await tap(page, "螺钉滑牙");
    await page.locator(".floor-panel svg").tap();
    await page.locator(".floor-spot").waitFor();
    await checked(page);
    await tap(page, "记录缺陷");
    await tap(page, /^螺钉滑牙/u);
    await tap(page, "工具或夹具");
    await tap(page, "返回");

    const left = new Set(parts);
    for (;;) {
      const ready = page.getByRole("button", { name: "完成，下一项" });
      const test = page.getByRole("heading", { name: /^(24 V 极性|开始之前)/u });
      await ready.or(test).waitFor();
      if (await test.isVisible()) break;
      const before = page.url();
      if (await page.locator(".floor-fit").isVisible()) {
        // What was not tested is said, and fitted all the same; what belongs elsewhere is not.
        for (const unit of [...left]) {
          await scan(page, unit);
          const fitted = page.locator(".floor-fit", { hasText: unit });
          const asked = page.getByRole("alertdialog");
          await fitted.or(asked).waitFor();
          const isElsewhere = (await asked.getByText(/此位置应装/u).count()) > 0;
          if (isElsewhere) await tap(page, "不装");
          else if (await asked.isVisible()) await tap(page, "仍然装上");
          if (isElsewhere) continue;
          await fitted.waitFor();
          left.delete(unit);
        }
        await page.locator(".floor-fit", { hasText: /已装 (\d+) \/ \1/u }).waitFor();
      }
      await ready.tap();
      await expect.poll(() => page.url(), { timeout: PATIENCE_MS }).not.toBe(before);
    }
    await context.setOffline(false);
    const understood = page.getByRole("button", { name: "明白" });
    if (await understood.isVisible()) await understood.tap();
    await page.getByText("此测试任何人不得放行。").waitFor();
    await checked(page);
    for (const digit of ["2", "4"]) await tap(page, digit);
    await tap(page, "记录");
    await page.getByRole("heading", { name: "各开关闭合" }).waitFor();
    await checked(page);
    await tap(page, /^\d+ 个全部正常$/u);
    await page.getByRole("heading", { name: /^移交给/u }).waitFor();
    expect(await page.getByText("项未做").count()).toBe(0);
    await tap(page, "包装");
    await page.getByRole("heading", { name: /^已移交给/u }).waitFor();
    await page.getByText("已全部发送").waitFor();

    const facts = await office.facts();
    const stream = facts.at(-1)?.fact.stream;
    const { kinds, faults } = wholeStream(facts.filter(({ fact }) => fact.stream === stream));
    expect(faults).toEqual([]);
    expect(kinds.filter((kind) => kind === "fitted")).toHaveLength(parts.length);
    expect(kinds.filter((kind) => kind === "defect" || kind === "mended")).toEqual(["defect", "mended"]);
    expect(kinds.slice(-3)).toEqual(["reading", "reading", "handed"]);
    expect(complaints).toEqual([]);
    await context.close();
  });

  it("can be read on a phone and at night", async () => {
    const office = await lead(app.address());
    const [board = ""] = await office.units({ book: BOOK, what: "board", type: "io", count: 1 });
    const [harness = ""] = await office.units({ book: BOOK, what: "harness", type: "hs.deck", count: 1 });
    const [machine = ""] = await office.units({ book: BOOK, what: "machine", type: BOOK, count: 1 });
    const { page, context, complaints } = await app.look({ screen: "phone", scheme: "dark" });
    await standAt(page, BOOK);
    const places: readonly (readonly [string, string | RegExp])[] = [
      ["/floor", /^Which unit\?/u],
      ["/floor/place", "Where are you?"],
      [`/floor/u/${board}/t/1`, /^Lay out the kit/u],
      [`/floor/u/${board}/t/2`, /^Stuff stage 1/u],
      [`/floor/u/${board}/list`, "All that is to do"],
      [`/floor/u/${board}/defect`, /^What is wrong\?/u],
      [`/floor/u/${harness}/t/1`, /^Cut the wires/u],
      [`/floor/u/${harness}/t/3`, /^Tug every contact/u],
      [`/floor/u/${harness}/t/4`, /^Every point against all others/u],
      [`/floor/u/${machine}/hand`, /^Hand over to/u],
      [`/floor/u/${machine}/note`, "Note"],
      ["/floor/records", "What this device recorded"],
    ];
    for (const [path, title] of places) {
      await page.goto(path);
      await page.getByRole("heading", { name: title }).first().waitFor();
      await checked(page);
    }
    expect(complaints).toEqual([]);
    await context.close();
  });
});
