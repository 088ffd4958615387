import { createHash } from "node:crypto";
import { readFile } from "node:fs/promises";
import {
  type Fact,
  type FactBody,
  factText,
  NO_FACT,
  ROUTES,
  statusSchema,
  TOKEN_HEADER,
} from "@pinwright/contract";
import type { Page } from "playwright-core";
import { describe, expect, it } from "vitest";
import { accessFaults, sidewaysPx } from "./testing/accessible.ts";
import { openBook, PATIENCE_MS } from "./testing/browser.ts";
import { lead, standAt, wholeStream } from "./testing/floor-hand.ts";
import { withApp } from "./testing/with-app.ts";

const app = withApp();
const BOOK = "first-light";
const BENCH = `/b/${BOOK}/bench`;

/** A tablet on the floor that writes a stream and sends it. */
class Tablet {
  readonly #stream: string;
  #seq = 0;
  #hash = NO_FACT;

  constructor(stream: string) {
    this.#stream = stream;
  }

  async tell(...bodies: readonly FactBody[]): Promise<readonly Fact[]> {
    const facts = bodies.map((body): Fact => {
      this.#seq += 1;
      const at = new Date().toISOString();
      const text = { stream: this.#stream, seq: this.#seq, before: this.#hash, at, person: "local", body };
      this.#hash = createHash("sha256").update(factText(text)).digest("hex");
      return { ...text, hash: this.#hash };
    });
    const status = await fetch(new URL(ROUTES.status.path, app.address()));
    const { token } = statusSchema.parse(await status.json());
    const response = await fetch(new URL(ROUTES.sendFacts.path, app.address()), {
      method: "POST",
      headers: { "content-type": "application/json", [TOKEN_HEADER]: token ?? "" },
      body: JSON.stringify({ facts }),
    });
    if (!response.ok) throw new Error(await response.text());
    return facts;
  }
}

const button = (page: Page, name: string | RegExp) => page.getByRole("button", { name });
const section = (page: Page, name: string | RegExp) => page.getByRole("region", { name });
const tab = (page: Page, name: string) =>
  page
    .getByRole("navigation", { name: /^(Bench|工作台)$/u })
    .getByRole("link", { name })
    .click();

async function checked(page: Page): Promise<void> {
  expect(await accessFaults(page)).toEqual([]);
  expect(await sidewaysPx(page)).toBe(0);
}

/** Numbers that the bench gives out through its form. */
async function giveOut(page: Page, kind: string, type: string, count: number): Promise<void> {
  await page.getByRole("combobox", { name: "For" }).selectOption({ label: kind });
  await page.getByRole("form").getByRole("combobox", { name: "Type" }).selectOption({ label: type });
  await page.getByRole("textbox", { name: "How many" }).fill(String(count));
  await button(page, /^Give out \d+ number/u).click();
}

describe("bench", { timeout: PATIENCE_MS }, () => {
  it("gives out numbers, shows what holds a unit as it is recorded, lifts it by name, and releases it", async () => {
    const { page, context, complaints } = await app.look();
    await openBook(page, BENCH);
    await page.getByText("No unit has a serial number yet.", { exact: false }).waitFor();
    await button(page, "Give out serial numbers").click();
    await giveOut(page, "Board", "Switch and lamp board", 3);
    await page.getByText("Given out: b-000001 to b-000003.").waitFor();
    await giveOut(page, "Machine", "First Light", 1);
    await page.getByText("Given out: m-000001.").waitFor();
    await page.getByText("4 units", { exact: true }).waitFor();
    await button(page, "Close").click();
    await checked(page);

    await page.getByRole("textbox", { name: "Serial number" }).fill("b-00000");
    await page.getByText("3 of 4 units").waitFor();
    const tablet = new Tablet("t-hold");
    await tablet.tell(
      { kind: "lot-used", unit: "b-000001", part: "p.res-10k", lot: "L7" },
      { kind: "lot-used", unit: "b-000002", part: "p.res-10k", lot: "L7" },
      { kind: "fitted", unit: "b-000001", into: "m-000001", place: "bd.io" },
      { kind: "reading", unit: "b-000003", test: "t.io-5v", value: 7, good: false, instrument: "meter-1" },
      { kind: "reading", unit: "b-000003", test: "t.io-5v", value: 5.01, good: true, instrument: "meter-1" },
      {
        kind: "defect",
        unit: "b-000003",
        defect: "d-1",
        what: "scratch",
        says: "by the hole",
        where: { item: "R1" },
      },
      { kind: "noted", unit: "b-000003", says: "Look at this agian" },
    );
    // Nobody loads anything again: the page hears of it.
    await page.getByRole("row", { name: /b-000003.*On hold.*1 open defect/u }).waitFor();
    await page.getByRole("link", { name: "b-000003" }).click();

    const gate = section(page, "Hold and release");
    await gate.getByText("1 thing holds it.").waitFor();
    const readings = section(page, "Readings");
    await readings
      .getByRole("row", { name: /5 V on the switch.*4.75 to 5.25 V.*7 V.*not good.*5.01 V.*good/u })
      .waitFor();
    await section(page, "Defects").getByText("by the hole").waitFor();
    await checked(page);
    await button(page, "Lift … Scratch").click();
    await page.getByRole("textbox", { name: "Why may it ship without?" }).fill("Hidden by the frame");
    await button(page, "Lift it").click();
    await gate.getByText("Nothing holds it. It can be released.").waitFor();

    const record = section(page, "The whole record");
    await button(page, "Correct … Note Look at this agian").click();
    await page.getByRole("textbox", { name: "What was wrong?" }).fill("Mistyped");
    await page.getByRole("textbox", { name: "Text" }).fill("Look at this again");
    await button(page, "Correct it").click();
    await record.getByText(/^Corrected .* by at this computer: Mistyped$/u).waitFor();
    await section(page, "Notes").getByText("Look at this again").waitFor();
    await checked(page);

    await gate.getByRole("button", { name: "Release" }).click();
    await gate.getByText("Nothing holds it, and it is released: it may ship.").waitFor();
    await page.getByRole("link", { name: "All units" }).click();
    await page.getByRole("row", { name: /b-000003.*Released/u }).waitFor();
    expect(complaints).toEqual([]);
    await context.close();
  });

  it("finds every unit of a lot, calls them back, and ends the recall", async () => {
    const { page, context, complaints } = await app.look({ screen: "tablet" });
    const office = await lead(app.address());
    const [one = "", two = ""] = await office.units({ book: BOOK, what: "board", type: "io", count: 2 });
    await new Tablet("t-lots").tell(
      { kind: "lot-used", unit: one, part: "p.res-10k", lot: "L9" },
      { kind: "lot-used", unit: two, part: "p.res-10k", lot: "L9" },
    );
    await openBook(page, `${BENCH}/trace`);
    await page.getByText("Fill in one or more, and find the units.").waitFor();
    await page.getByRole("textbox", { name: "Lot" }).fill("L9");
    await button(page, "Find units").click();
    await page.getByText("2 units are concerned: 2 directly, 0 as what they are or were in.").waitFor();
    const [download] = await Promise.all([page.waitForEvent("download"), button(page, "CSV").click()]);
    const csv = await readFile(await download.path(), "utf8");
    expect(
      csv
        .split("\r\n")
        .slice(1, 3)
        .map((line) => line.split(",")[0]),
    ).toEqual([`"${one}"`, `"${two}"`]);

    await button(page, "Call these back …").click();
    await page.getByRole("textbox", { name: "Why are they called back?" }).fill("Out of tolerance");
    await page.getByRole("form", { name: "Call back" }).getByRole("button", { name: "Call back" }).click();
    const recall = section(page, "Recalls").getByRole("row", {
      name: /lot L9.*Out of tolerance.*2 0 2 open/u,
    });
    await recall.waitFor();
    await page.getByRole("row", { name: new RegExp(`${one}.*On hold.*called back`, "u") }).waitFor();
    await checked(page);

    await page.goto(`${BENCH}/units/${one}`);
    const gate = section(page, "Hold and release");
    await gate.getByRole("link", { name: "lot L9 (Out of tolerance)" }).waitFor();
    await gate.getByRole("link", { name: "lot L9 (Out of tolerance)" }).click();
    await button(page, /^End … rc-/u).click();
    await page.getByRole("textbox", { name: "Why does it end?" }).fill("All changed");
    await button(page, "End the recall").click();
    await section(page, "Recalls")
      .getByText(/^ended .* by at this computer: All changed$/u)
      .waitFor();
    expect(complaints).toEqual([]);
    await context.close();
  });

  it("writes into the one stream of its browser, beside the floor's page, and the chain is whole", async () => {
    const { page, context, complaints } = await app.look({ screen: "tablet" });
    const office = await lead(app.address());
    const [unit = ""] = await office.units({ book: BOOK, what: "board", type: "io", count: 1 });
    const before = (await office.facts()).length;
    await new Tablet("t-note").tell({ kind: "noted", unit, says: "From another tablet" });
    await openBook(page, `${BENCH}/units/${unit}`);
    const floor = await context.newPage();
    await standAt(floor, BOOK);
    await floor.goto(`/floor/u/${unit}/note`);
    const correct = async (why: string): Promise<void> => {
      await button(page, /^Correct … Note/u)
        .first()
        .click();
      await page.getByRole("textbox", { name: "What was wrong?" }).fill(why);
      await button(page, "Correct it").click();
      await page.getByText(`: ${why}`).first().waitFor();
    };
    await floor.getByRole("button", { name: "Tool is worn" }).click();
    await page.getByText("Tool is worn").first().waitFor();
    await correct("First");
    await floor.goto(`/floor/u/${unit}/note`);
    await floor.getByRole("button", { name: "Waits for a part" }).click();
    await page.getByText("Waits for a part").first().waitFor();
    await correct("Second");
    const sent = async () =>
      (await office.facts()).slice(before).filter(({ fact }) => fact.stream !== "t-note");
    await expect.poll(async () => (await sent()).length).toBe(6);
    const facts = await sent();
    expect(new Set(facts.map(({ fact }) => fact.stream)).size).toBe(1);
    expect(wholeStream(facts)).toEqual({
      kinds: ["noted", "correction", "noted", "noted", "correction", "noted"],
      faults: [],
    });
    expect(complaints).toEqual([]);
    await context.close();
  });

  it("checks the records, shows what is kept aside, and takes measured minutes over, in Chinese and dark", async () => {
    const { page, context, complaints } = await app.look({ language: "zh", scheme: "dark" });
    const office = await lead(app.address());
    const [unit = ""] = await office.units({ book: BOOK, what: "machine", type: BOOK, count: 1 });
    const done = { kind: "step-done", unit, step: "st.boards" } as const;
    await new Tablet("t-min").tell(
      { ...done, minutes: 41 },
      { ...done, minutes: 43 },
      { ...done, minutes: 42 },
    );
    // The same device tells another history.
    await new Tablet("t-min").tell({ kind: "noted", unit, says: "Zweite Geschichte" });
    await openBook(page, `${BENCH}/records`);
    await page.getByRole("row", { name: /Zweite Geschichte.*该位置已有另一条记录/u }).waitFor();
    await button(page, "检查全部记录").click();
    await page.getByText(/^\d+ 台设备的 \d+ 条记录与写入时一致。$/u).waitFor();
    await checked(page);

    await tab(page, "工时");
    const row = page.getByRole("row", { name: /安装电路板.*42 分钟.*3.*41 至 43 分钟/u });
    await row.waitFor();
    await checked(page);
    await row.getByRole("button", { name: "采用：“安装电路板”的工时设为 42 分钟" }).click();
    await page.getByText("各步骤用时与计划大致相符。").waitFor();
    await page.getByRole("checkbox", { name: "也显示与计划相符的步骤" }).check();
    await page.getByRole("row", { name: /安装电路板\s*已由人设定.*42 分钟\s*42 分钟/u }).waitFor();
    expect(complaints).toEqual([]);
    await context.close();
  });
});
