import { type FactBody, pathTo } from "@pinwright/contract";
import { describe, expect, it } from "vitest";
import { PATIENCE_MS } from "./testing/browser.ts";
import { keptFor, lead, wholeStream } from "./testing/floor-hand.ts";
import { like, stand, walk } from "./testing/floor-walk.ts";
import { bodiesOf, buildParts, giveParts } from "./testing/machine-parts.ts";
import { looseBond, moveTo, stepByTaps, testName, toTheEnd } from "./testing/machine-walk.ts";
import { gateOf, otherHands } from "./testing/other-hands.ts";
import { withApp } from "./testing/with-app.ts";

const app = withApp();
const BOOK = "tidewatch";
/** Steps that are done by taps at each of two stations. */
const STEPS = 5;
describe("a machine", { timeout: PATIENCE_MS }, () => {
  /**
   * Tidewatch takes some 260 tasks. By taps: the first steps of two stations, the second without the network, and
   * everything from the first test to the crate but 30 earth bonds. All else is recorded by others through the floor's own
   * outbox, from the same list of tasks as the page's.
   */
  it("goes from step 1 to the crate, with one defect on the way and the network away in the middle, in Chinese", async () => {
    const others = await otherHands(app.address(), BOOK);
    const office = await lead(app.address());
    const given = await giveParts(office, others, BOOK);
    const [unit = ""] = await office.units({ book: BOOK, what: "machine", type: BOOK, count: 1 });
    await buildParts(others, BOOK, given);
    const tasks = others.tasks("machine", BOOK, unit);
    const recorded = async (): Promise<readonly FactBody[]> =>
      (await office.facts()).map(({ fact }) => fact.body);
    const at = await walk(app.look, "zh");
    const { page, says, words, tap, on, context } = at;
    await stand(at, "守潮人", "机箱");
    await at.scan(unit);
    for (let i = 0; i < STEPS; i++) await stepByTaps(at, others, given);
    await keptFor(page, [
      `/api/books/${BOOK}/rows`,
      "/api/books/shop/rows",
      "/api/units",
      `/api/units/${unit}`,
    ]);
    await at.sent();
    const before = await recorded();

    // At the next station the network is away; what is done there waits on the tablet, in its order.
    await context.setOffline(true);
    await moveTo(at, "背箱", unit);
    for (let i = 0; i < STEPS; i++) await stepByTaps(at, others, given);
    await page
      .getByText(like(words.floorBench.net.offline("NaN")))
      .first()
      .waitFor();
    expect(await recorded()).toEqual(before);
    await context.setOffline(false);
    await at.sent();
    const done = await recorded();
    expect(done.slice(before.length).filter(({ kind }) => kind === "step-done")).toHaveLength(STEPS);

    // All else up to the tests is done by others, at their tablets.
    const isRecorded = (body: FactBody): boolean =>
      done.some(
        (one) =>
          (one.kind === "step-done" &&
            body.kind === "step-done" &&
            one.unit === unit &&
            one.step === body.step) ||
          (one.kind === "fitted" && body.kind === "fitted" && one.place === body.place),
      );
    const first = tasks.findIndex(({ kind }) => kind === "test");
    const rest = tasks.slice(0, first).flatMap((task) => bodiesOf(task, unit, given));
    await others.record(rest.filter((body) => !isRecorded(body)));

    // The first test that protects the builder fails; others do the other bonds while it is mended.
    await moveTo(at, "测试", unit);
    const loose = await testName(at);
    await looseBond(at);
    const bonds = tasks.filter(
      (task) => task.kind === "test" && task.test.purpose === "bond" && task.test.labelZh !== loose,
    );
    await others.record(bonds.flatMap((task) => bodiesOf(task, unit, given)));
    await expect.poll(async () => (await at.done()).done, { timeout: PATIENCE_MS }).toBe(bonds.length);
    await on(() => tap(says.back));

    // What was mended is tried again, then all other tests and steps in their order, up to the crate.
    const names = await toTheEnd(at, others, given, { book: BOOK, unit });
    expect(names[0]).toBe(loose);
    expect(names.length).toBe(tasks.length - first - bonds.length);
    await page.getByText(words.floorBench.hand.complete).waitFor();
    await at.sent();

    // Nothing is left: it may be released, and its crate packed.
    await on(() => tap(words.floorBench.hand.ship));
    await page.getByText(words.floorBench.gate.clear).waitFor();
    await tap(words.floorBench.gate.release);
    await page.getByText(like(words.floorBench.gate.released("NaN"))).waitFor();
    const { blocks, shippable } = await gateOf(app.address(), unit);
    expect({ blocks, shippable }).toEqual({ blocks: [], shippable: true });
    const crate = await context.request.get(pathTo("crateChecklist", { unit }, { language: "zh" }));
    expect((await crate.body()).subarray(0, 5).toString()).toBe("%PDF-");

    // The tablet's stream came whole: each once, in its order.
    const facts = await office.facts();
    const stream = facts.find(({ fact }) => fact.body.kind === "defect")?.fact.stream;
    const { kinds, faults } = wholeStream(facts.filter(({ fact }) => fact.stream === stream));
    expect(faults).toEqual([]);
    expect(kinds.filter((kind) => kind === "defect" || kind === "mended")).toEqual(["defect", "mended"]);
    expect(at.complaints).toEqual([]);
    await context.close();
  });
});
