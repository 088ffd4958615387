import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { ViewEntry } from "../../worker/protocol.ts";
import {
  freestOf,
  isUsual,
  type Load,
  onUsualDay,
  type Plan,
  stepsOfPlace,
  USUAL,
  withMoved,
  wrongWayRound,
} from "./plan-rows.ts";

type Step = ViewEntry<"stepLines">;

const step = (id: string, number: number, seconds: number): Step => ({
  id,
  number,
  kind: "mount",
  label: id,
  labelZh: "",
  panelId: null,
  side: "under",
  times: 1,
  seconds,
  secondsFrom: "motions",
  motions: [],
  skill: "",
  tools: [],
  stationId: null,
  chosen: { station: false, time: false },
  itemIds: [],
  fastenerIds: [],
  recheckIds: [],
  types: [],
  harnessId: null,
  mechanismTypeId: null,
  after: [],
});

const load = (placeId: string, stepIds: readonly string[], seconds: number): Load => ({
  placeId,
  stationId: placeId.split(":")[0] ?? null,
  labels: { en: placeId, zh: placeId },
  stepIds,
  seconds,
  beside: false,
});

const STEPS = new Map([step("s1", 1, 60), step("s2", 2, 30), step("s3", 3, 90)].map((one) => [one.id, one]));
const PLAN: Plan = {
  question: USUAL,
  loads: [load("a:1", ["s1"], 60), load("b:1", ["s3"], 90), load("b:2", ["s2"], 30)],
  taktS: 90,
  lowerBound: 60,
  isProven: false,
  unplaced: [],
  waysBack: [],
};
const of = (id: string): Step => STEPS.get(id) ?? step(id, 0, 0);

describe("a plan with a step in the hand", () => {
  it("has the step's time at the other place, and the longest load as its takt", () => {
    const moved = withMoved(PLAN, of("s2"), "a:1");
    expect(moved.loads.map(({ seconds }) => seconds)).toEqual([90, 90, 0]);
    expect(moved.taktS).toBe(90);
    expect(withMoved(PLAN, of("s3"), "a:1").taktS).toBe(150);
  });

  it("counts a bad day's time", () => {
    const longer = { ...PLAN, question: { ...USUAL, longerPct: 30 } };
    expect(withMoved(longer, of("s2"), "a:1").loads[0]?.seconds).toBeCloseTo(99);
  });

  it("stays as it is when nothing is moved, and loses no work however things are moved", () => {
    expect(withMoved(PLAN, of("s1"), "a:1")).toBe(PLAN);
    expect(withMoved(PLAN, of("none"), "a:1")).toBe(PLAN);
    const move = fc.tuple(fc.constantFrom("s1", "s2", "s3"), fc.constantFrom("a:1", "b:1", "b:2"));
    fc.assert(
      fc.property(fc.array(move, { maxLength: 12 }), (moves) => {
        const plan = moves.reduce((so, [id, place]) => withMoved(so, of(id), place), PLAN);
        expect(plan.loads.flatMap(({ stepIds }) => stepIds).toSorted()).toEqual(["s1", "s2", "s3"]);
        expect(plan.loads.reduce((sum, { seconds }) => sum + seconds, 0)).toBeCloseTo(180);
        expect(plan.taktS).toBe(Math.max(...plan.loads.map(({ seconds }) => seconds)));
      }),
      { seed: 7, numRuns: 60 },
    );
  });
});

describe("a line of places", () => {
  const after = (id: string, ...before: readonly string[]): Step => ({
    ...of(id),
    after: before.map((one) => ({ id: one, number: 0, label: "", labelZh: "", reasons: [] })),
  });
  // At a:1 s1, at b:1 s3, at b:2 s2; s3 comes after s1, and s2 after s3.
  const line = new Map([of("s1"), after("s2", "s3"), after("s3", "s1")].map((one) => [one.id, one]));
  const wrong = (id: string, place: string): readonly string[] =>
    wrongWayRound(PLAN, line, line.get(id) ?? of(id), place).map((one) => one.id);

  it("tells which steps a move would put the wrong way round", () => {
    expect(wrong("s3", "b:1")).toEqual([]);
    expect(wrong("s3", "b:2")).toEqual([]);
    expect(wrong("s2", "a:1")).toEqual(["s3"]);
    expect(wrong("s1", "b:2")).toEqual(["s3"]);
    expect(wrong("s1", "none")).toEqual([]);
  });
});

describe("places", () => {
  it("are found by place and by station, in the order of the steps", () => {
    expect(stepsOfPlace(PLAN, STEPS, "b").map(({ id }) => id)).toEqual(["s2", "s3"]);
    expect(stepsOfPlace(PLAN, STEPS, "b:1").map(({ id }) => id)).toEqual(["s3"]);
    expect(freestOf(PLAN, "b")?.placeId).toBe("b:2");
    expect(freestOf(PLAN, "none")).toBeUndefined();
  });
});

it("a usual day is told from others", () => {
  expect(isUsual(USUAL)).toBe(true);
  expect(isUsual({ ...USUAL, longerPct: 30 })).toBe(false);
  const bad = { ...USUAL, ask: { kind: "least-takt", places: 3 }, absent: ["a:1"], skills: true } as const;
  expect(onUsualDay(bad)).toEqual({ ...USUAL, ask: bad.ask });
});
