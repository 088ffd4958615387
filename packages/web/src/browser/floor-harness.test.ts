import { describe, expect, it } from "vitest";
import { PATIENCE_MS } from "./testing/browser.ts";
import { lead, wholeStream } from "./testing/floor-hand.ts";
import { begins, like, stand, type Walk, walk } from "./testing/floor-walk.ts";
import { withApp } from "./testing/with-app.ts";

const app = withApp();
const BOOK = "tidewatch";
/** The lot on the label of a reel. */
const LOT = "R-2211";

/** Goes through groups of wires, all that are on the screen by one tap. */
async function through({ page, says, words, tap, on, button }: Walk, next: string): Promise<void> {
  for (let at = 1; ; at++) {
    const [more, last] = [button(next), button(says.work.doneNext)];
    const title = page.getByRole("heading", { level: 1 });
    await title.getByText(like(words.floorBench.groups.title(at, Number.NaN))).waitFor();
    await more.or(last).waitFor();
    if (await last.isVisible()) {
      await on(() => tap(says.work.doneNext));
      return;
    }
    await tap(next);
  }
}

/** Tugs at the contacts of every housing; all of them hold. */
async function tugAll({ page, says, see, tap, tapOn, on }: Walk): Promise<void> {
  await see(says.steps.tug);
  const housings = page.locator(".floor-tug-all");
  await housings.first().waitFor();
  for (const one of await housings.all()) await tapOn(one);
  await on(() => tap(like(says.tug.all(Number.NaN))));
}

/** Mends the only defect there is, and goes back to what is to do. */
async function mend({ page, says, tap, tapOn, on, see }: Walk, what: string): Promise<void> {
  await see(says.mend.title);
  await tapOn(page.locator(".floor-tiles").getByRole("button", { name: begins(what) }));
  await tap(says.mend.causes.work);
  await page.getByText(says.mend.none).waitFor();
  await on(() => tap(says.back));
}

/** Everything is done: the harness is handed to those who need it next. */
async function handOver(at: Walk): Promise<void> {
  const { page, says, words, see, tapOn } = at;
  await see(says.hand.title);
  await page.getByText(words.floorBench.hand.complete).waitFor();
  await tapOn(page.locator(".floor-next").getByRole("button").first());
  await see(says.hand.handed(""));
  await at.sent();
}

/** What the server has of the tablet that built a unit: each once and in its order. */
async function kindsOf(unit: string): Promise<readonly string[]> {
  const facts = await (await lead(app.address())).facts();
  const stream = facts.find(({ fact: { body } }) => "unit" in body && body.unit === unit)?.fact.stream;
  const { kinds, faults } = wholeStream(facts.filter(({ fact }) => fact.stream === stream));
  expect(faults).toEqual([]);
  return kinds;
}

/** A place of a harness as the floor names it: its housing or device, and the cavity or terminal. */
type Spot = readonly [landing: string, cavity: string];

/** Enters two places that read otherwise than they should. */
async function oddPair(
  { page, says, tap, tapOn }: Walk,
  kind: "open" | "short",
  spots: readonly Spot[],
): Promise<void> {
  await tap(begins(says.continuity[kind]));
  for (const [landing, cavity] of spots) {
    const tile = page.locator(".floor-tiles").getByRole("button");
    await tapOn(tile.filter({ has: page.getByText(landing, { exact: true }) }));
    await tapOn(tile.filter({ hasText: new RegExp(`^${cavity}(?![0-9])`, "u") }));
  }
}

describe("a harness", { timeout: PATIENCE_MS }, () => {
  it("goes from its cut list to continuity; a swapped pair is named, in Chinese", async () => {
    const office = await lead(app.address());
    const [unit = ""] = await office.units({ book: BOOK, what: "harness", type: "hs.coin-door", count: 1 });
    const at = await walk(app.look, "zh");
    const { page, says, words, see, tap, tapOn, on, button } = at;
    await stand(at, "守潮人", says.place.all);
    await at.scan(unit);

    // Reel by reel, then run by run; the lot of a reel is scanned.
    await see(says.steps.cut);
    await tapOn(button(begins(words.floorBench.lots.lot)).first());
    await page.getByText(words.floorBench.lots.how).waitFor();
    await at.scan(LOT);
    await button(like(LOT)).first().waitFor();
    await through(at, words.floorBench.groups.all);
    await see(says.steps["lay-up"]);
    await through(at, words.floorBench.groups.laid);

    // One contact came out: it is mended, and all are tugged once more.
    await see(says.steps.tug);
    await page.locator(".floor-tug-all").first().waitFor();
    await tapOn(page.locator(".floor-tugs .floor-wrong").first());
    await tapOn(page.locator(".cavity[data-state=wired]").first());
    await page.getByText(says.tug.results["came-out"]).waitFor();
    await tap(words.floorMeasure.tug.back);
    const housings = page.locator(".floor-tug-all");
    await housings.first().waitFor();
    for (const one of (await housings.all()).slice(1)) await tapOn(one);
    await on(() => tap(says.tug.bad(1)));
    await mend(at, says.defect.whats["contact-out"]);
    await tugAll(at);

    // The tester's lamps are read off: two wires are in each other's cavity.
    await see(says.steps.continuity);
    await tap(says.continuity.bad);
    const [a, b, first, second] = [
      ["il.coin-door:b", "7"],
      ["il.coin-door:b", "8"],
      ["sw.coin-1", "no"],
      ["sw.coin-2", "no"],
    ] as const satisfies readonly Spot[];
    await oddPair(at, "open", [a, first]);
    await oddPair(at, "open", [b, second]);
    await oddPair(at, "short", [a, second]);
    await oddPair(at, "short", [b, first]);
    await tap(says.continuity.diagnose);
    await page
      .getByText(like(says.continuity.faults.swapped("NaN", "NaN")))
      .first()
      .waitFor();
    await on(() => tap(words.floorMeasure.ways.record(1)));
    await mend(at, says.defect.whats.swapped);
    // Contacts were pulled out for it and put back: they are tugged before the tester, which does not notice.
    await tugAll(at);
    await see(says.steps.continuity);
    await on(() => tap(says.continuity.good));
    await handOver(at);

    const kinds = await kindsOf(unit);
    expect(kinds.filter((kind) => kind !== "lot-used")).toEqual([
      ...["step-done", "step-done", "defect", "mended", "step-done"],
      ...["reading", "defect", "mended", "step-done", "reading", "handed"],
    ]);
    expect(kinds).toContain("lot-used");
    expect(at.complaints).toEqual([]);
    await at.context.close();
  });

  it("is tried with two probes, pair by pair; a wire that is not there is named, in English", async () => {
    const office = await lead(app.address());
    const [unit = ""] = await office.units({ book: BOOK, what: "harness", type: "hs.beam-left", count: 1 });
    const at = await walk(app.look, "en");
    const { page, says, words, see, tap, tapOn, on, button } = at;
    await stand(at, "Tidewatch", says.place.all);
    await at.scan(unit);
    await see(says.steps.cut);
    await through(at, words.floorBench.groups.all);
    await see(says.steps["lay-up"]);
    await through(at, words.floorBench.groups.laid);
    await tugAll(at);

    // The harness in the builder's hands: of its four wires the one to the emitter's cathode is missing.
    const board = "bd.opto-left:j3";
    const wires = [`${board} 1-sn.wreck-tx a`, `${board} 4-sn.wreck-rx c`, `${board} 5-sn.wreck-rx e`];
    const probed = async (laid: readonly string[]): Promise<void> => {
      await tap(begins(words.floorMeasure.ways.probes));
      const [yes, end] = [button(words.floorMeasure.probes.yes), button(words.floorMeasure.probes.done)];
      for (;;) {
        await yes.or(end).waitFor();
        if (await end.isVisible()) return;
        const spots = page.locator(".floor-pair > div");
        const pair = await Promise.all(
          (await spots.all()).map(async (spot) => {
            const landing = await spot.locator("small").first().textContent();
            return `${landing ?? ""} ${(await spot.locator(".floor-cavity").textContent()) ?? ""}`;
          }),
        );
        const rings = laid.includes(pair.join("-")) || laid.includes([...pair].reverse().join("-"));
        const told = await page.getByRole("status").first().textContent();
        await tap(rings ? words.floorMeasure.probes.yes : words.floorMeasure.probes.no);
        await page
          .getByRole("status")
          .first()
          .filter({ hasNotText: told ?? "" })
          .or(end)
          .first()
          .waitFor();
      }
    };
    await see(says.steps.continuity);
    await probed(wires);
    await tap(words.floorMeasure.probes.done);
    // Probes can not tell an end that is open from a wire that is not there: the builder looks, and says which.
    const named = page.locator(".floor-fault");
    const missing = like(says.continuity.faults["missing-wire"]("NaN"));
    await tapOn(named.getByText(begins(says.continuity.other)));
    await tapOn(named.getByRole("listitem").filter({ hasText: missing }).getByRole("button").first());
    await named.locator("p", { hasText: missing }).waitFor();
    await on(() => tap(words.floorMeasure.ways.record(1)));
    await mend(at, says.defect.whats["missing-wire"]);
    await tugAll(at);
    await see(says.steps.continuity);
    await probed([...wires, `${board} 3-sn.wreck-tx k`]);
    await tap(words.floorMeasure.probes.done);
    await see(words.floorMeasure.ways.good(8));
    await on(() => tap(says.work.doneNext));
    await handOver(at);
    const kinds = await kindsOf(unit);
    expect(kinds.slice(3)).toEqual([...["reading", "defect", "mended", "step-done", "reading", "handed"]]);
    expect(at.complaints).toEqual([]);
    await at.context.close();
  });
});
