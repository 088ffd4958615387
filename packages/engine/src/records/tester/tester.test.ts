import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { numberedGroups } from "../continuity/bench.ts";
import { BenchModel, diagnoseHarness, type HarnessFault, type TestBench } from "../continuity/index.ts";
import {
  formatAdapter,
  formatScanFile,
  formatTesterAnswer,
  formatTesterCommand,
  groupsOfProbes,
  groupsOfScan,
  LONGEST_TESTER_LINE,
  lineCheck,
  parseAdapter,
  parseScanFile,
  parseTesterAnswer,
  parseTesterCommand,
  probeWalk,
  scanOfTries,
  TESTER_ERRORS,
  type TesterAnswer,
  type TesterScan,
  tugWalk,
} from "./index.ts";
import { checkedLine } from "./words-of-line.ts";

/** Scans whose points fall into groups at random. */
const scans: fc.Arbitrary<TesterScan> = fc
  .array(fc.integer({ min: 0, max: 40 }), { minLength: 1, maxLength: 512 })
  .map((groupOf) => {
    const members = new Map<number, number[]>();
    groupOf.forEach((group, i) => {
      members.set(group, [...(members.get(group) ?? []), i + 1]);
    });
    return { points: groupOf.length, groups: [...members.values()].filter((group) => group.length > 1) };
  });

/** What `try` answers of a point of a scan. */
const triesOf = (scan: TesterScan): Map<number, readonly number[]> =>
  new Map(
    Array.from({ length: scan.points }, (_, i): [number, readonly number[]] => {
      const group = scan.groups.find((one) => one.includes(i + 1)) ?? [];
      return [i + 1, group.filter((point) => point !== i + 1)];
    }),
  );

/** Fault of an answer, as `kind found`. */
function faultOf(line: string, points?: number): string {
  const parsed = parseTesterAnswer(line, points);
  return parsed.ok ? "none" : `${parsed.fault.kind} ${parsed.fault.found}`;
}

describe("lines", () => {
  test("the check of a line is that of the catalogue of CRC algorithms", () => {
    expect(lineCheck("123456789")).toBe("29B1");
    expect(lineCheck("")).toBe("FFFF");
  });

  test("every command and every answer is read as it was written", () => {
    for (const command of [
      { kind: "who" },
      { kind: "points" },
      { kind: "try", point: 512 },
      { kind: "try-all" },
    ] as const)
      expect(parseTesterCommand(formatTesterCommand(command))).toEqual({ ok: true, value: command });
    const answers: TesterAnswer[] = [
      { kind: "who", name: "bench-2.a" },
      { kind: "points", points: 128 },
      { kind: "try", point: 3, joined: [] },
      { kind: "try", point: 3, joined: [1, 12] },
      { kind: "all", groups: [] },
      ...TESTER_ERRORS.map((error) => ({ kind: "error", error }) as const),
    ];
    for (const answer of answers)
      expect(parseTesterAnswer(formatTesterAnswer(answer))).toEqual({ ok: true, value: answer });
  });

  test("any scan is read as it was written, and fits a line", () => {
    fc.assert(
      fc.property(scans, ({ points, groups }) => {
        const line = formatTesterAnswer({ kind: "all", groups });
        expect(line.length).toBeLessThanOrEqual(LONGEST_TESTER_LINE);
        expect(parseTesterAnswer(line, points)).toEqual({ ok: true, value: { kind: "all", groups } });
      }),
    );
  });

  test("no single changed character passes", () => {
    fc.assert(
      fc.property(scans, fc.nat(), fc.integer({ min: 32, max: 126 }), ({ groups }, at, code) => {
        const line = formatTesterAnswer({ kind: "all", groups });
        const i = at % line.length;
        const changed = line.slice(0, i) + String.fromCharCode(code) + line.slice(i + 1);
        // The digits of the check are read in either case.
        fc.pre(changed.toUpperCase() !== line.toUpperCase());
        expect(parseTesterAnswer(changed).ok).toBe(false);
      }),
    );
  });

  test("whatever stands in a line, it is read or named, never thrown", () => {
    fc.assert(
      fc.property(fc.string({ maxLength: 60 }), (text) => {
        parseTesterAnswer(text);
        parseTesterAnswer(checkedLine(text));
        parseTesterCommand(checkedLine(text));
        parseScanFile(text);
      }),
    );
  });

  test.each([
    ["", "empty "],
    ["x".repeat(4097), "too-long 4097"],
    ["who 1 ü #0000", "not-plain U+00FC"],
    ["who 1 a\t#0000", "not-plain U+0009"],
    ["points 4", "no-check ints 4"],
    ["points 4 #12", "no-check  4 #12"],
    ["points 4 #0000", "wrong-check 0000"],
    [checkedLine("hello"), "unknown-word hello"],
    [checkedLine("points"), "too-few-words 1"],
    [checkedLine("points 4 5"), "too-many-words 3"],
    [checkedLine("points  4"), "not-a-number "],
    [checkedLine("points four"), "not-a-number four"],
    [checkedLine("points 04"), "not-a-number 04"],
    [checkedLine("points 0"), "out-of-range 0"],
    [checkedLine("points 513"), "out-of-range 513"],
    [checkedLine("who 2 a"), "out-of-range 2"],
    [checkedLine("who 1 a/b"), "bad-name a/b"],
    [checkedLine("try 9 1"), "out-of-range 9"],
    [checkedLine("try 3"), "too-few-words 2"],
    [checkedLine("try 3 4 4"), "not-ascending 4"],
    [checkedLine("try 3 2 3"), "point-twice 3"],
    [checkedLine("try 3 none 4"), "too-many-words 4"],
    [checkedLine("all"), "too-few-words 1"],
    [checkedLine("all 1"), "too-few-words 1"],
    [checkedLine("all 1-9"), "out-of-range 9"],
    [checkedLine("all 2-1"), "not-ascending 1"],
    [checkedLine("all 1-3 2-3"), "point-twice 3"],
    [checkedLine("all 3-4 1-2"), "not-ascending 1"],
    [checkedLine("error tired"), "unknown-word tired"],
  ])("line %j: %s", (line, fault) => {
    expect(faultOf(line, 8)).toBe(fault);
  });
});

describe("scans", () => {
  test("the tries of every point make the scan", () => {
    fc.assert(
      fc.property(scans, (scan) => {
        expect(scanOfTries(scan.points, triesOf(scan))).toEqual({ scan, untried: [], oneSided: [] });
      }),
    );
  });

  test("a joint that only one point sees is told, and so is a point that was not tried", () => {
    const tries = new Map([
      [1, [2]],
      [2, []],
    ]);
    expect(scanOfTries(3, tries)).toEqual({
      scan: { points: 3, groups: [[1, 2]] },
      untried: [3],
      oneSided: [[1, 2]],
    });
  });

  test("a file is read as it was written, from one line or from every point", () => {
    fc.assert(
      fc.property(scans, (scan) => {
        const file = { tester: "bench-1", unit: "h-000012", scan };
        const text = formatScanFile(file);
        expect(parseScanFile(text)).toEqual({ file: { ...file, oneSided: [] }, faults: [] });
        const [who = "", points = "", unit = ""] = text.split("\n");
        const tries = [...triesOf(scan)].map(([point, joined]) =>
          formatTesterAnswer({ kind: "try", point, joined }),
        );
        const long = ["; tried by hand", who, points, unit, "", ...tries].join("\r\n");
        expect(parseScanFile(long)).toEqual({ file: { ...file, oneSided: [] }, faults: [] });
      }),
      { seed: 29, numRuns: 40 },
    );
  });

  test("a file says which line is wrong and what it lacks", () => {
    const faults = (...lines: string[]) =>
      parseScanFile(lines.join("\n")).faults.map(
        ({ line, fault }) => `${line} ${fault.kind} ${fault.found || fault.expected}`,
      );
    const [who, points] = [checkedLine("who 1 a"), checkedLine("points 2")];
    expect(faults("")).toEqual(["0 missing-line who", "0 missing-line points"]);
    expect(faults(who, points)).toEqual(["0 missing-line all"]);
    expect(faults(who, points, checkedLine("try 1 2"))).toEqual(["0 missing-line try 2"]);
    expect(faults(who, checkedLine("all 1-2"), points)).toEqual(["2 missing-line all"]);
    expect(faults(who, points, checkedLine("all 1-3"))).toEqual(["3 out-of-range 3"]);
    expect(faults(who, who, points, checkedLine("all none"))).toEqual(["2 line-twice who"]);
    expect(faults(who, points, checkedLine("unit a b"), checkedLine("all none"))).toEqual([
      "3 too-many-words 3",
    ]);
    expect(faults(who, points, checkedLine("error broken"))).toEqual(["3 unknown-word error"]);
    expect(faults(who, points, "all none")).toEqual(["3 no-check l none"]);
  });
});

/** Two housings of a row of cavities each, wired straight, with the last cavity empty at either end. */
function straight(wires: number): TestBench {
  const places = ["a", "b"].flatMap((landingId) =>
    Array.from({ length: wires + 1 }, (_, i) => {
      const id = `${landingId}.${i + 1}`;
      return {
        ...{ id, pointId: id, landingId, loose: false, column: i, row: 0 },
        wires: i < wires ? [i + 1] : [],
      };
    }),
  );
  return {
    harnessId: "h",
    places: places.sort((p, q) => (p.id < q.id ? -1 : 1)),
    wires: Array.from({ length: wires }, (_, i) => ({
      ...{ id: `w${i + 1}`, number: i + 1, netId: `n${i + 1}`, a: `a.${i + 1}`, b: `b.${i + 1}` },
    })),
    splices: [],
  };
}

/** The list of a straight harness: every wire, then every pair of neighbours at the first housing. */
const straightProbes = (wires: number) => [
  ...Array.from({ length: wires }, (_, i) => ({
    ...{ expect: "closed" as const, a: `a.${i + 1}`, b: `b.${i + 1}` },
  })),
  ...Array.from({ length: wires - 1 }, (_, i) => ({
    ...{ expect: "open" as const, a: `a.${i + 1}`, b: `a.${i + 2}` },
  })),
];

const FAULTS: readonly HarnessFault[] = [
  { kind: "open", wireId: "w2", at: "b.2" },
  { kind: "short", a: "a.1", b: "a.2" },
  { kind: "swapped", a: "b.1", b: "b.2" },
  { kind: "wrong-cavity", contact: "a.4", cavity: "a.5" },
];

describe("adapters", () => {
  const bench = straight(4);

  test("a scan through any wiring of the adapter names the fault", () => {
    const shuffled = fc.shuffledSubarray(
      Array.from({ length: 32 }, (_, i) => i + 1),
      { minLength: bench.places.length, maxLength: bench.places.length },
    );
    fc.assert(
      fc.property(shuffled, fc.constantFrom(...FAULTS), (points, fault) => {
        const list = ["point,place", ...bench.places.map(({ id }, i) => `${points[i]},${id}`)].join("\n");
        const { adapter, faults } = parseAdapter(list, bench, 32);
        expect(faults).toEqual([]);
        const groups = new BenchModel(bench).groups([fault]);
        const members = new Map<number, number[]>();
        bench.places.forEach(({ id }, i) => {
          const group = groups[i] ?? -1;
          members.set(group, [...(members.get(group) ?? []), adapter.pointOf.get(id) ?? 0]);
        });
        const joined = [...members.values()].filter((group) => group.length > 1);
        const read = groupsOfScan(bench, adapter, { points: 32, groups: joined });
        expect(read.strays).toEqual([]);
        expect(numberedGroups(read.groups)).toEqual(groups);
        expect(diagnoseHarness(bench, read.groups).explanations[0]?.ways[0]?.[0]?.kind).toBe(fault.kind);
      }),
    );
  });

  test("the list that an adapter is built to is read without a fault", () => {
    expect(parseAdapter(formatAdapter(bench), bench, 10).faults).toEqual([]);
    expect(parseAdapter(formatAdapter(bench), bench, 9).faults.map(({ kind }) => kind)).toEqual([
      "not-a-point",
      "place-missing",
    ]);
  });

  test("every fault of a list is named with its line", () => {
    const list = ["points", "1,a.1", "1,a.2", "x,a.3", "2,zz", "3,a.1", "4", "5,a.2,", ""].join("\r\n");
    const { faults } = parseAdapter(list, straight(1), 10);
    expect(faults.map(({ kind, line, of }) => `${line} ${kind} ${of}`)).toEqual([
      "1 heading points",
      "3 point-twice 1",
      "4 not-a-point x",
      "5 unknown-place zz",
      "6 place-twice a.1",
      "7 cells 4",
      "8 cells 5,a.2,",
      "0 place-missing a.2",
      "0 place-missing b.1",
      "0 place-missing b.2",
    ]);
  });

  test("a point beside the adapter that is joined is told; a place without a point is refused", () => {
    const { adapter } = parseAdapter(formatAdapter(bench), bench, 12);
    expect(groupsOfScan(bench, adapter, { points: 12, groups: [[1, 12]] }).strays).toEqual([12]);
    const none = { pointOf: new Map<string, number>() };
    expect(() => groupsOfScan(bench, none, { points: 12, groups: [] })).toThrow(RangeError);
  });
});

describe("two probes", () => {
  const bench = straight(4);
  const probes = straightProbes(4);

  /** Walks to the end on a harness with these faults. */
  function walked(faults: readonly HarnessFault[]) {
    const groups = new BenchModel(bench).groups(faults);
    const at = (id: string) => groups[bench.places.findIndex((place) => place.id === id)];
    const answers: { a: string; b: string; joined: boolean }[] = [];
    for (;;) {
      const walk = probeWalk(bench, probes, answers);
      if (walk.next === null) return { walk, answers };
      const { a, b } = walk.next;
      answers.push({ a, b, joined: at(a) === at(b) });
      expect(answers.length).toBeLessThan(60);
    }
  }

  test("a good harness is walked in the order of the list", () => {
    const { walk, answers } = walked([]);
    expect(answers.map(({ a, b }) => `${a} ${b}`)).toEqual(probes.map(({ a, b }) => `${a} ${b}`));
    expect(walk).toMatchObject({ left: 0, besides: 0, open: [], joined: [] });
    expect(diagnoseHarness(bench, groupsOfProbes(bench, answers)).good).toBe(true);
  });

  test.each(FAULTS)("$kind is named", (fault) => {
    const { walk, answers } = walked([fault]);
    const [first] = diagnoseHarness(bench, groupsOfProbes(bench, answers)).explanations;
    expect(first?.ways[0]).toHaveLength(1);
    expect(first?.ways[0]?.[0]?.kind).toBe(fault.kind);
    expect(walk.open.length + walk.joined.length).toBeGreaterThan(0);
  });

  test("an open pair asks at once for the spots beside both ends", () => {
    const { next, besides, open } = probeWalk(bench, probes, [{ a: "a.1", b: "b.1", joined: false }]);
    expect(open).toEqual([{ expect: "closed", a: "a.1", b: "b.1" }]);
    expect(besides).toBe(2);
    expect(next).toEqual({ expect: "open", a: "a.1", b: "b.2" });
  });
});

test("tugs go along the housings, pass over empty cavities and keep what failed", () => {
  const bench = straight(2);
  expect(tugWalk(bench, new Map())).toMatchObject({ next: { id: "a.1" }, done: 0, total: 4, failed: [] });
  const told = new Map([
    ["a.1", "held"],
    ["a.2", "came-out"],
    ["a.3", "nothing-there"],
  ] as const);
  expect(tugWalk(bench, told)).toMatchObject({
    ...{ next: { id: "b.1" }, done: 2, total: 4 },
    failed: [{ placeId: "a.2", tug: "came-out" }],
  });
});
