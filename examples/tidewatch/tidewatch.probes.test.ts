import { readBook } from "@pinwright/book/io";
import {
  BenchModel,
  continuityList,
  diagnoseHarness,
  groupsOfProbes,
  type HarnessFault,
  Line,
  type Probe,
  type ProbeAnswer,
  probeWalk,
  type TestBench,
  testBench,
} from "@pinwright/engine";
import { beforeAll, expect, test } from "vitest";

interface OnBench {
  readonly bench: TestBench;
  readonly probes: readonly Probe[];
}

let harnesses: readonly OnBench[] = [];

beforeAll(async () => {
  const { book, shop } = await readBook(import.meta.dirname);
  if (shop === null) throw new Error("Tidewatch has a shop");
  const line = new Line().run(book, shop);
  harnesses = [...line.harnesses.values()].map((harness) => ({
    bench: testBench(line.machine, harness),
    probes: continuityList(line.machine, harness).probes,
  }));
}, 120_000);

/** Walks with two probes to the end; what was asked, and what is open or joined. */
function walk({ bench, probes }: OnBench, faults: readonly HarnessFault[]) {
  const model = new BenchModel(bench);
  const groups = model.groups(faults);
  const answers: ProbeAnswer[] = [];
  for (;;) {
    const { next, open, joined } = probeWalk(bench, probes, answers);
    if (next === null)
      return { answers, open, joined, diagnosis: diagnoseHarness(bench, groupsOfProbes(bench, answers)) };
    const { a, b } = next;
    const isJoined = groups[model.placeIndex(a)] === groups[model.placeIndex(b)];
    answers.push({ a, b, joined: isJoined });
  }
}

test("every spot of the list is a place of the bench, and a good harness is walked in the order of the list", () => {
  for (const harness of harnesses.filter(({ probes }) => probes.length < 200)) {
    const { answers, open, joined, diagnosis } = walk(harness, []);
    const name = harness.bench.harnessId;
    expect(
      answers.map(({ a, b }) => `${a} ${b}`),
      name,
    ).toEqual(harness.probes.map(({ a, b }) => `${a} ${b}`));
    expect([open, joined, diagnosis.good], name).toEqual([[], [], true]);
  }
});

test("an open wire, two neighbours swapped and a short on each harness are found with two probes, and named", () => {
  const done = { open: 0, swapped: 0, short: 0 };
  const wrong: unknown[] = [];
  for (const harness of harnesses.filter(({ probes }) => probes.length < 120)) {
    const { bench, probes } = harness;
    const expected = new BenchModel(bench).groups([]).join();
    const wire = bench.wires.at(-1);
    const first = bench.places.find(({ wires, loose }) => wires.length === 1 && !loose);
    const beside = bench.places.find(
      (b) =>
        b !== first &&
        b.wires.length === 1 &&
        b.landingId === first?.landingId &&
        Math.abs(b.column - first.column) + Math.abs(b.row - first.row) === 1,
    );
    const short = probes.find(({ expect }) => expect === "open");
    const faults: HarnessFault[] = [];
    if (wire !== undefined) faults.push({ kind: "open", wireId: wire.id, at: wire.a });
    if (first !== undefined && beside !== undefined)
      faults.push({ kind: "swapped", a: first.id, b: beside.id });
    if (short !== undefined) faults.push({ kind: "short", a: short.a, b: short.b });
    for (const fault of faults) {
      if (new BenchModel(bench).groups([fault]).join() === expected) continue;
      const { open, joined, diagnosis } = walk(harness, [fault]);
      const ways = diagnosis.explanations.flatMap((one) => one.ways);
      const isNamed = ways.some((way) => way.length === 1 && way[0]?.kind === fault.kind);
      if (open.length + joined.length === 0 || !isNamed)
        wrong.push({ fault, open, joined, ways: ways.slice(0, 3) });
      if (fault.kind === "open" || fault.kind === "swapped" || fault.kind === "short") done[fault.kind]++;
    }
  }
  expect(wrong).toEqual([]);
  expect(Math.min(done.open, done.swapped, done.short)).toBeGreaterThan(10);
});
