import { describe, expect, it } from "vitest";
import { PATIENCE_MS } from "./testing/browser.ts";
import { lead, wholeStream } from "./testing/floor-hand.ts";
import { begins, stand, type Walk, walk } from "./testing/floor-walk.ts";
import { withApp } from "./testing/with-app.ts";

const app = withApp();
const BOOK = { id: "tidewatch", en: "Tidewatch", zh: "守潮人" } as const;
const TYPE = "bt.lamp4";
const BOARDS = 3;
/** Lots on the labels of two bags. */
const LOTS = ["L-4410", "L-4411"] as const;
/** The current that a lamp board takes without load, and one that it must not, mA. */
const [GOOD_MA, BAD_MA] = [51.5, 86];

describe("a batch of boards", { timeout: PATIENCE_MS }, () => {
  for (const language of ["zh", "en"] as const)
    it(`goes from kit to tested, in ${language}`, async () => {
      const office = await lead(app.address());
      const units = await office.units({ book: BOOK.id, what: "board", type: TYPE, count: BOARDS });
      const [, odd = ""] = units;
      const at = await walk(app.look, language);
      const { page, says, words, see, tap, tapOn, on } = at;
      await stand(at, BOOK[language], says.place.all);

      await page.getByRole("checkbox", { name: says.pick.several }).tap();
      for (const unit of units) await at.scan(unit);
      await on(() => tap(says.pick.start(BOARDS)));

      // The kit is laid out box by box.
      await see(says.steps.kit);
      const lines = page.getByRole("listitem").locator("button[aria-pressed]");
      await lines.first().waitFor();
      // Two bags have a label with their lot: whoever scans it has laid the part out.
      for (const lot of LOTS) {
        await tapOn(page.locator(".floor-lot-chip[data-empty]").first());
        await page.getByText(words.floorBench.lots.how).waitFor();
        await at.scan(lot);
        await page.locator(".floor-lot-chip", { hasText: lot }).waitFor();
      }
      for (const line of (await lines.all()).slice(LOTS.length)) await tapOn(line);
      await page.getByText(says.work.doneOf(await lines.count(), await lines.count())).waitFor();
      await on(() => tap(says.kit.done));

      // Each stage has its picture, and its parts in the order in which they go in.
      for (let stage = 1; ; stage++) {
        const test = page.getByText(says.test.of(units[0] ?? ""));
        await page
          .getByRole("heading", { name: says.steps.stage(stage) })
          .or(test)
          .first()
          .waitFor();
        if (await test.isVisible()) break;
        await page.locator(".floor-picture svg").waitFor();
        for (const line of await lines.all()) await tapOn(line);
        await on(() => tap(says.work.doneNext));
      }

      for (const unit of units) {
        await page.getByText(says.test.of(unit)).waitFor();
        await on(() => tap(says.test.good));
        if (unit === odd) {
          await measuredBad(at, odd);
          // What was passed before it was mended says nothing of the board as it is now.
          await on(() => tap(says.test.good));
        }
        await on(() => at.measure(GOOD_MA));
        // The jig's sequence, one step a screen.
        const step = words.floorMeasure.sequence.step;
        await page.getByText(step(1, 2)).waitFor();
        await tap(says.test.good);
        await page.getByText(step(2, 2)).waitFor();
        await on(() => tap(says.test.good));
      }
      await see(says.hand.title);
      const { done, of } = await at.done();
      expect(done).toBe(of);
      await page.getByText(words.floorBench.hand.complete).waitFor();
      await tapOn(page.locator(".floor-next").getByRole("button").first());
      await see(says.hand.handed(""));
      await at.sent();

      const facts = (await office.facts()).filter(
        ({ fact: { body } }) => "unit" in body && units.includes(body.unit),
      );
      const { kinds, faults } = wholeStream(facts);
      expect(faults).toEqual([]);
      const count = (kind: string): number => kinds.filter((one) => one === kind).length;
      expect(kinds.filter((kind) => kind === "defect" || kind === "mended")).toEqual(["defect", "mended"]);
      expect(count("lot-used")).toBe(LOTS.length * BOARDS);
      expect(count("handed")).toBe(BOARDS);
      // Three tests of each board and two steps of the last; on the odd one the look and the current once more.
      expect(count("reading")).toBe(5 * BOARDS + 2);
      expect(facts.find(({ fact }) => fact.body.kind === "defect")?.fact.body).toMatchObject({
        ...{ unit: odd, what: "test-failed", where: { item: "Q2" } },
      });

      expect(at.complaints).toEqual([]);
      await at.context.close();
    });
});

/** A reading outside its limits, the part that is wrong, and its mending. */
async function measuredBad({ page, says, see, tap, tapOn, on, measure }: Walk, unit: string): Promise<void> {
  await measure(BAD_MA);
  await see(says.test.out);
  await on(() => tap(says.test.recordBad));
  await see(says.defect.whats["test-failed"]);
  await tapOn(page.getByRole("img").locator("[data-ref=Q2]"));
  await page.getByText(says.defect.at("Q2")).waitFor();
  await on(() => tap(says.defect.record));
  await see(says.mend.title);
  await tapOn(
    page.getByRole("button", { name: begins(says.defect.whats["test-failed"]) }).filter({ hasText: unit }),
  );
  await tap(says.mend.causes.part);
  await page.getByText(says.mend.none).waitFor();
  await on(() => tap(says.back));
  await page.getByText(says.test.of(unit)).waitFor();
}
