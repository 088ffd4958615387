import { readFile } from "node:fs/promises";
import { join } from "node:path";
import { readBook } from "@pinwright/book/io";
import {
  BenchModel,
  diagnoseHarness,
  formatAdapter,
  groupsOfScan,
  type HarnessFault,
  Line,
  MOST_TESTER_POINTS,
  parseAdapter,
  parseScanFile,
  type TestBench,
  testBench,
} from "@pinwright/engine";
import fc from "fast-check";
import { afterAll, beforeAll, expect, test } from "vitest";
import { programRoot } from "../root.ts";
import { Conversation } from "./conversation.ts";
import { ContinuityTester } from "./index.ts";
import { SimulatedTester } from "./testing/simulated-tester.ts";

let benches: readonly TestBench[] = [];
const simulated = new SimulatedTester(MOST_TESTER_POINTS);
let tester: ContinuityTester;

beforeAll(async () => {
  const { book, shop } = await readBook(join(programRoot(), "examples", "tidewatch"));
  if (shop === null) throw new Error("Tidewatch has a shop");
  const line = new Line().run(book, shop);
  benches = [...line.harnesses.values()]
    .map((harness) => testBench(line.machine, harness))
    .filter(({ places }) => places.length <= MOST_TESTER_POINTS);
  const port = await simulated.server.start();
  tester = new ContinuityTester({ address: { kind: "tcp", host: "127.0.0.1", port }, timeoutMs: 5000 });
}, 120_000);

afterAll(async () => {
  await tester.close();
  await simulated.server.stop();
});

/** A fault of a harness, picked by a number. */
function faultOf(bench: TestBench, pick: number): HarnessFault {
  const wire = bench.wires[pick % bench.wires.length];
  const [a, b] = [wire?.a ?? "", wire?.b ?? ""];
  const other = bench.places.find(({ id, wires }) => wires.length > 0 && id !== a && id !== b)?.id ?? a;
  const faults: readonly HarnessFault[] = [
    { kind: "open", wireId: wire?.id ?? "", at: a },
    { kind: "short", a: bench.places.some(({ id }) => id === a) ? a : b, b: other },
    { kind: "missing-wire", wireId: wire?.id ?? "" },
  ];
  return faults[pick % 3] ?? { kind: "open", wireId: wire?.id ?? "", at: b };
}

test("a good harness of Tidewatch is good, and one with a fault has it named, through the tester", async () => {
  expect(benches.length).toBeGreaterThan(30);
  await fc.assert(
    fc.asyncProperty(fc.nat(), fc.nat(), async (which, pick) => {
      const bench = benches[which % benches.length];
      if (bench === undefined) return;
      const { adapter, faults } = parseAdapter(formatAdapter(bench), bench, await tester.points());
      expect(faults).toEqual([]);
      simulated.plug(bench, adapter, []);
      const good = groupsOfScan(bench, adapter, await tester.scan());
      expect(diagnoseHarness(bench, good.groups).good).toBe(true);
      const fault = faultOf(bench, pick);
      const model = new BenchModel(bench);
      fc.pre(model.groups([fault]).join() !== model.groups([]).join());
      simulated.plug(bench, adapter, [fault]);
      const read = groupsOfScan(bench, adapter, await tester.scan());
      expect(read.strays).toEqual([]);
      const ways = diagnoseHarness(bench, read.groups).explanations.flatMap((one) => one.ways);
      const named = ways.map((way) => way.map(({ kind }) => kind).join(" and "));
      expect(named, `${bench.harnessId} ${JSON.stringify(fault)}`).toContain(fault.kind);
    }),
    { numRuns: 40, seed: 7 },
  );
});

test("the session in the paper on the protocol is what the tester says", async () => {
  const paper = await readFile(join(programRoot(), "docs", "tester-protocol.md"), "utf8");
  const one = new SimulatedTester(8, "bench-1");
  one.plug(
    {
      ...{ harnessId: "h", splices: [] },
      places: [1, 2, 3, 4, 5, 6, 7, 8].map((n) => ({
        ...{ id: `p${n}`, pointId: `p${n}`, landingId: "j", loose: false, column: n, row: 0, wires: [n] },
      })),
      wires: [
        ...[{ id: "a", number: 1, netId: "a", a: "p1", b: "p5" }],
        ...[{ id: "b", number: 2, netId: "b", a: "p2", b: "p6" }],
        ...[{ id: "c", number: 3, netId: "c", a: "p3", b: "p7" }],
      ],
    },
    { pointOf: new Map([1, 2, 3, 4, 5, 6, 7, 8].map((n) => [`p${n}`, n])) },
    [{ kind: "swapped", a: "p6", b: "p7" }],
  );
  const port = await one.server.start();
  const talk = new Conversation({ address: { kind: "tcp", host: "127.0.0.1", port }, timeoutMs: 2000 });
  const said = [...paper.matchAll(/^> (.*)\n< (.*)$/gm)];
  expect(said.length).toBeGreaterThan(5);
  for (const [, asked = "", answered] of said) expect(await talk.ask(asked)).toBe(answered);
  await talk.close();
  await one.server.stop();
  const files = [...paper.matchAll(/```scan\n([^`]*)```/g)].map(([, text = ""]) => parseScanFile(text));
  expect(files.map(({ faults }) => faults)).toEqual([[], []]);
  expect(files.map(({ file }) => file?.scan.groups)).toEqual([
    [
      [1, 5],
      [2, 7],
      [3, 6],
    ],
    [
      [1, 5],
      [2, 7],
      [3, 6],
    ],
  ]);
});
