import {
  BenchModel,
  diagnoseHarness,
  formatAdapter,
  formatScanFile,
  type HarnessFault,
  type TestBench,
} from "@pinwright/engine";
import { describe, expect, it } from "vitest";
import { readScan } from "./scan.ts";

/** Three wires from one housing to another, and a cavity that stays empty. */
const BENCH: TestBench = {
  harnessId: "h",
  places: ["a.1", "a.2", "a.3", "a.4", "b.1", "b.2", "b.3"].map((id, i) => ({
    ...{ id, pointId: id, landingId: id.slice(0, 1), loose: false, row: 0 },
    ...{ column: i % 4, wires: id === "a.4" ? [] : [Number(id.slice(2))] },
  })),
  wires: [1, 2, 3].map((number) => ({
    ...{ id: `w${number}`, number, netId: `n${number}`, a: `a.${number}`, b: `b.${number}` },
  })),
  splices: [],
};

/** What a tester writes of the harness with these faults, on an adapter in the usual order turned by some points. */
function fileOf(faults: readonly HarnessFault[], unit = "", points = 8, turned = 0): string {
  const groups = new BenchModel(BENCH).groups(faults);
  const members = new Map<number, number[]>();
  groups.forEach((group, i) => {
    members.set(
      group,
      [...(members.get(group) ?? []), ((i + turned) % points) + 1].sort((a, b) => a - b),
    );
  });
  const joined = [...members.values()].filter(({ length }) => length > 1).sort(([a = 0], [b = 0]) => a - b);
  return formatScanFile({ tester: "bench-1", unit, scan: { points, groups: joined } });
}

describe("a scan of the harness on the bench", () => {
  it("of a good one is good, and a swapped pair in it is named", () => {
    const good = readScan(fileOf([]), BENCH, null, "h-000001");
    expect(good).toMatchObject({ kind: "read", tester: "bench-1", strays: [], oneSided: [] });
    if (good.kind === "read") expect(diagnoseHarness(BENCH, good.groups).good).toBe(true);
    const swapped = readScan(
      fileOf([{ kind: "swapped", a: "b.1", b: "b.2" }], "h-000001"),
      BENCH,
      null,
      "h-000001",
    );
    const named = swapped.kind === "read" ? diagnoseHarness(BENCH, swapped.groups) : null;
    expect(named?.explanations.flatMap(({ ways }) => ways[0] ?? [])).toEqual([
      { kind: "swapped", a: "a.1", b: "a.2" },
    ]);
  });

  it("is read through the list of another adapter", () => {
    const list = formatAdapter(BENCH).replace(/^\d+/gm, (point) => String(Number(point) + 1));
    const read = readScan(fileOf([], "", 8, 1), BENCH, list, "h-000001");
    expect(read.kind === "read" && diagnoseHarness(BENCH, read.groups).good).toBe(true);
    expect(readScan(fileOf([]), BENCH, list.replace("8,b.3", "9,b.3"), "")).toMatchObject({
      ...{ kind: "adapter", faults: [{ kind: "not-a-point" }, { kind: "place-missing", of: "b.3" }] },
    });
  });

  it("of another harness, of too few points or with a fault is not used", () => {
    expect(readScan(fileOf([], "h-000002"), BENCH, null, "h-000001")).toEqual({
      ...{ kind: "other-unit", unit: "h-000002" },
    });
    expect(
      readScan(fileOf([], "", 7).replace(/points 7 #\w+/u, "points 6 #C029"), BENCH, null, ""),
    ).toMatchObject({
      kind: "faulty",
    });
    const few = formatScanFile({ tester: "t", unit: "", scan: { points: 6, groups: [] } });
    expect(readScan(few, BENCH, null, "")).toEqual({ kind: "too-few", points: 6, places: 7 });
    expect(readScan("nothing", BENCH, null, "")).toMatchObject({ kind: "faulty" });
  });

  it("tells points beside the harness that read joined", () => {
    const text = formatScanFile({
      tester: "t",
      unit: "",
      scan: {
        points: 9,
        groups: [
          [1, 5],
          [2, 6],
          [3, 7],
          [8, 9],
        ],
      },
    });
    expect(readScan(text, BENCH, null, "")).toMatchObject({ kind: "read", strays: [8, 9] });
  });
});
