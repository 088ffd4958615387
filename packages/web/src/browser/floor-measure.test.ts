import { RANK } from "@pinwright/book";
import type { FactBody } from "@pinwright/contract";
import { BenchModel, type HarnessFault, type TestBench } from "@pinwright/engine";
import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { accessFaults, sidewaysPx } from "./testing/accessible.ts";
import { BenchTester, benchOf, moveInstrument } from "./testing/bench-devices.ts";
import { PATIENCE_MS } from "./testing/browser.ts";
import { asking, lead, standAt } from "./testing/floor-hand.ts";
import { LineDevice } from "./testing/line-device.ts";
import { withApp } from "./testing/with-app.ts";

const app = withApp();
const BOOK = "first-light";

const tap = (page: Page, name: string | RegExp): Promise<void> =>
  page.getByRole("button", { name, exact: typeof name === "string" }).tap();

async function checked(page: Page): Promise<void> {
  expect(await accessFaults(page)).toEqual([]);
  expect(await sidewaysPx(page)).toBe(0);
}

/** What was recorded of a unit on the floor, in its order. */
async function recordsOf(unit: string): Promise<readonly FactBody[]> {
  const facts = await (await lead(app.address())).facts();
  return facts.flatMap(({ fact: { body } }) => ("unit" in body && body.unit === unit ? [body] : []));
}

/** Two contacts of one housing that belong to two wires. */
function swappable(bench: TestBench): HarnessFault {
  const groups = new BenchModel(bench).groups([]);
  for (const [i, a] of bench.places.entries())
    for (const [j, b] of bench.places.entries())
      if (
        i < j &&
        groups[i] !== groups[j] &&
        [a, b].every(({ loose, wires }) => !loose && wires.length === 1) &&
        a.landingId === b.landingId
      )
        return { kind: "swapped", a: a.id, b: b.id };
  throw new Error("No two contacts of one housing are of two wires.");
}

/** Gives the board of the book a test that is a sequence, as a designer does. */
async function addSequence(ask: (path: string, body?: unknown) => Promise<unknown>): Promise<void> {
  const rows = [
    [
      "tests",
      "seq",
      {
        id: "t.io-answer",
        scope: "board",
        board_type: "io",
        order: "90",
        kind: "sequence",
        purpose: "logic",
      },
    ],
    [
      "test_steps",
      "one",
      { test: "t.io-answer", no: "1", label: "Under load", unit: "V", nominal: "12", min: "11", max: "13" },
    ],
    ["test_steps", "two", { test: "t.io-answer", no: "2", label: "Every output answers" }],
  ] as const;
  const changes = rows.flatMap(([table, row, cells], i) =>
    Object.entries({ ...cells, [RANK]: `zz${i}` }).map(([column, to]) => ({
      table,
      row,
      column,
      from: "",
      to,
    })),
  );
  await ask(`/api/books/${BOOK}/changes`, { id: "with-a-sequence", changes });
}

/** Where one thing of a unit is done: `test …`, `continuity …`. */
const taskAddress = (unit: string, key: string): string => `/floor/u/${unit}/k/${encodeURIComponent(key)}`;

describe("measuring at the bench", { timeout: PATIENCE_MS }, () => {
  it("reads a value from an instrument, says what is wrong with it, and takes a typed one", async () => {
    const ask = await asking(app.address());
    const office = await lead(app.address());
    const [unit = ""] = await office.units({ book: BOOK, what: "board", type: "io", count: 1 });
    let says = "+5.02000000E+00";
    const meter = new LineDevice((line) =>
      line === "MEAS:VOLT:DC?" ? says : line === "SYST:ERR?" ? '0,"No error"' : null,
    );
    const port = String(await meter.start());
    await moveInstrument(ask, "meter-bench", {
      ...{ host: "127.0.0.1", port, wait_s: "2", calibrated_until: "2026-01-31" },
    });
    const { page, context, complaints } = await app.look({ screen: "tablet", language: "zh" });
    await standAt(page, BOOK);
    await page.goto(taskAddress(unit, `test ${unit} t.io-5v`));
    await tap(page, "读取台式万用表");
    await page.getByText("在限值内").waitFor();
    await page.getByText("5.02 V").waitFor();
    await page.getByText("台式万用表的校准已于 2026-01-31 到期。").waitFor();
    await checked(page);

    says = "+9.90000000E+37";
    await tap(page, "再读台式万用表");
    await page.getByText("超出台式万用表的量程。").waitFor();
    expect(await page.getByRole("button", { name: "记录", exact: true }).isDisabled()).toBe(true);
    await checked(page);
    says = "-5.01";
    await tap(page, "读取台式万用表");
    await page.getByText("超出限值").waitFor();
    await tap(page, "记录");
    await page.getByText("-5.01 V，允许 4.75 至 5.25 V").waitFor();
    await tap(page, "重测");
    await meter.stop();
    await tap(page, "读取台式万用表");
    await page.getByText("连不上台式万用表。").waitFor();
    await page.getByText("请再读一次，或输入数值。").waitFor();
    await tap(page, "5");
    await page.getByText("手工输入").waitFor();

    const again = new LineDevice(() => "4.98");
    await moveInstrument(ask, "meter-bench", { port: String(await again.start()), calibrated_until: "" });
    await tap(page, "读取台式万用表");
    await page.getByText("4.98 V").waitFor();
    await tap(page, "记录");
    await page.getByText("已全部发送").waitFor();
    await expect
      .poll(() => recordsOf(unit), { timeout: PATIENCE_MS })
      .toMatchObject([
        { kind: "reading", test: "t.io-5v", value: 4.98, good: true, instrument: "meter-bench" },
      ]);
    expect(meter.asked.every((line) => line === "MEAS:VOLT:DC?" || line === "SYST:ERR?")).toBe(true);
    await again.stop();
    expect(complaints).toEqual([]);
    await context.close();
  });

  it("scans a harness on the tester, names a planted swapped pair, and passes it once it is mended", async () => {
    const ask = await asking(app.address());
    const office = await lead(app.address());
    const [unit = ""] = await office.units({ book: BOOK, what: "harness", type: "hs.deck", count: 1 });
    const bench = await benchOf(ask, BOOK, "hs.deck");
    const tester = new BenchTester(bench, 128);
    const planted = swappable(bench);
    tester.faults = [planted];
    await moveInstrument(ask, "tester-harness", {
      ...{ host: "127.0.0.1", port: String(await tester.device.start()) },
    });
    const { page, context, complaints } = await app.look({ screen: "tablet" });
    await standAt(page, BOOK);
    await page.goto(taskAddress(unit, `continuity ${unit}`));
    await tap(page, "Scan with Continuity tester, 512 points");
    await page.locator(".floor-fault", { hasText: "are swapped" }).waitFor();
    expect(await page.locator(".floor-fault").count()).toBe(1);
    await page.locator(".floor-marks [data-marked]").first().waitFor();
    await checked(page);
    await tap(page, "Record 1 defect");
    await page.getByRole("heading", { name: /^Mend/u }).waitFor();
    await page.locator(".floor-tiles button", { hasText: "are swapped" }).tap();
    await tap(page, "Work");
    await page.getByText("No defect is open.").waitFor();
    tester.faults = [];
    await page.goto(taskAddress(unit, `continuity ${unit}`));
    await page.getByText("Last time: failed").waitFor();
    await tap(page, "Scan with Continuity tester, 512 points");
    await page.getByRole("heading", { name: /places tried, all as they should be$/u }).waitFor();
    await tap(page, "Done, next");
    await page.getByText("All sent").waitFor();
    const test = "continuity:hs.deck";
    const records = () => recordsOf(unit);
    await expect.poll(records, { timeout: PATIENCE_MS }).toMatchObject([
      { kind: "reading", test, good: false, instrument: "tester-harness" },
      { kind: "defect", what: "swapped" },
      { kind: "mended", cause: "work" },
      { kind: "reading", test, good: true, instrument: "tester-harness" },
    ]);
    const where = (await records()).flatMap((body) => (body.kind === "defect" ? [body.where.point] : []));
    const landings = new Set(bench.places.map(({ pointId }) => pointId));
    expect(where.every((point) => point !== undefined && landings.has(point))).toBe(true);
    await tester.device.stop();

    // The file of a tester of another harness is not taken, one that is spoilt is told line by line.
    await page.goto(taskAddress(unit, `continuity ${unit}`));
    await tap(page, /^File of a tester/u);
    await page.getByLabel("or paste its lines").fill("who 1 bench-1 #AC00\npoints 8 #C12F");
    await tap(page, "Read it");
    await page.getByText("Line 2: its check is C12F, by its text it must be C12E").waitFor();
    await checked(page);
    expect(complaints).toEqual([]);
    await context.close();
  });

  it("guides two probes from pair to pair, by finger and by key, and names a wire that is open", async () => {
    const ask = await asking(app.address());
    const office = await lead(app.address());
    const [unit = ""] = await office.units({ book: BOOK, what: "harness", type: "hs.lamps", count: 1 });
    const bench = await benchOf(ask, BOOK, "hs.lamps");
    const wire = bench.wires[0];
    const model = new BenchModel(bench);
    const groups = model.groups([{ kind: "open", wireId: wire?.id ?? "", at: wire?.a ?? "" }]);
    const { page, context, complaints } = await app.look({ screen: "tablet", language: "zh" });
    await standAt(page, BOOK);
    await page.goto(taskAddress(unit, `continuity ${unit}`));
    await tap(page, /^两支表笔，逐对引导/u);
    const spots = page.locator(".floor-pair [data-place]");
    const end = page.getByRole("button", { name: "哪里有问题？", exact: true });
    await spots.first().waitFor();
    await checked(page);
    const progress = page.locator(".floor-probes h1");
    for (let pair = 0; ; pair++) {
      await spots.first().or(end).first().waitFor();
      if (await end.isVisible()) break;
      const [a = "", b = ""] = await spots.evaluateAll((all) =>
        all.map((one) => one.getAttribute("data-place") ?? ""),
      );
      const isJoined = groups[model.placeIndex(a)] === groups[model.placeIndex(b)];
      const before = `${await progress.textContent()} ${a} ${b}`;
      if (pair % 2 === 0) await tap(page, isJoined ? "响了" : "没响");
      else await page.keyboard.press(isJoined ? "y" : "n");
      // A slip is taken back by a key and answered again.
      if (pair === 1) {
        await page.keyboard.press("Backspace");
        await expect.poll(async () => spots.first().getAttribute("data-place")).toBe(a);
        await page.keyboard.press(isJoined ? "y" : "n");
      }
      await expect
        .poll(async () => {
          if (await end.isVisible()) return "end";
          const now = await spots.evaluateAll((all) =>
            all.map((one) => one.getAttribute("data-place") ?? ""),
          );
          return `${await progress.textContent()} ${now.join(" ")}`;
        })
        .not.toBe(before);
    }
    await end.tap();
    await page.locator(".floor-fault").first().waitFor();
    const told = await page.locator(".floor-fault").allTextContents();
    expect(told).toHaveLength(1);
    expect(told[0]).toMatch(/不通|缺导线|不在位/u);
    await checked(page);
    await tap(page, "记录 1 个缺陷");
    await page.getByRole("heading", { name: /^修理/u }).waitFor();
    await page.getByText("已全部发送").waitFor();
    const kinds = async () => (await recordsOf(unit)).map(({ kind }) => kind);
    await expect.poll(kinds, { timeout: PATIENCE_MS }).toEqual(["reading", "defect"]);
    expect(complaints).toEqual([]);
    await context.close();
  });

  it("goes through a sequence step by step, each with its reading, and begins anew after one that fails", async () => {
    const ask = await asking(app.address());
    const office = await lead(app.address());
    await addSequence(ask);
    const [unit = ""] = await office.units({ book: BOOK, what: "board", type: "io", count: 1 });
    const { page, context, complaints } = await app.look({ screen: "tablet" });
    await standAt(page, BOOK);
    await page.goto(taskAddress(unit, `test ${unit} t.io-answer`));
    await page.getByText("Step 1 of 2").waitFor();
    await checked(page);
    for (const digit of ["1", "2"]) await tap(page, digit);
    await tap(page, "Take it");
    await page.getByText("Step 2 of 2").waitFor();
    await page.getByRole("heading", { name: "Every output answers" }).waitFor();
    await checked(page);
    await tap(page, "Not good");
    await page
      .getByRole("heading", { name: /^What is wrong/u })
      .or(page.getByText("Test failed"))
      .first()
      .waitFor();
    await page.goto(taskAddress(unit, `test ${unit} t.io-answer`));
    await page.getByText("Step 1 of 2").waitFor();
    for (const digit of ["1", "2"]) await tap(page, digit);
    await tap(page, "Take it");
    await page.getByText("Step 2 of 2").waitFor();
    await tap(page, "Good");
    await page.getByText("All sent").waitFor();
    const good = (test: string, is: boolean) => ({ kind: "reading", test, good: is });
    await expect
      .poll(() => recordsOf(unit), { timeout: PATIENCE_MS })
      .toMatchObject([
        { ...good("t.io-answer/1", true), value: 12 },
        good("t.io-answer/2", false),
        good("t.io-answer", false),
        { ...good("t.io-answer/1", true), value: 12 },
        good("t.io-answer/2", true),
        good("t.io-answer", true),
      ]);
    expect(complaints).toEqual([]);
    await context.close();
  });

  it("walks along the machine's switches and makes a defect of the one that does not answer", async () => {
    const office = await lead(app.address());
    const [unit = ""] = await office.units({ book: BOOK, what: "machine", type: BOOK, count: 1 });
    const { page, context, complaints } = await app.look({ screen: "tablet", language: "zh" });
    await standAt(page, BOOK);
    await page.goto(taskAddress(unit, `test ${unit} t.switches`));
    const list = page.locator(".floor-walk-list button");
    await list.first().waitFor();
    await page.locator(".floor-walk-mark").first().waitFor();
    expect(await page.locator(".floor-walk-mark").count()).toBe(await list.count());
    await checked(page);
    await list.nth(1).tap();
    await page.getByText("没有应答", { exact: true }).waitFor();
    await checked(page);
    const next = page.getByRole("button", { name: /下一段$|个全部正常$/u });
    const end = page.getByRole("button", { name: "记录 1 个缺陷", exact: true });
    while (!(await end.isVisible())) await next.tap();
    await end.tap();
    await page.getByRole("heading", { name: /^修理/u }).waitFor();
    await page.getByText("已全部发送").waitFor();
    await expect
      .poll(() => recordsOf(unit), { timeout: PATIENCE_MS })
      .toMatchObject([
        { kind: "reading", test: "t.switches", good: false },
        { kind: "defect", what: "test-failed", where: { item: expect.any(String), xMm: expect.any(Number) } },
      ]);
    expect(complaints).toEqual([]);
    await context.close();
  });
});
