import { describe, expect, test } from "vitest";
import type { StepsResult, WorkStep } from "../model/index.ts";
import type { SomeTables } from "../testing/book.ts";
import { GOLDEN } from "./testing/golden.ts";
import { solveSteps } from "./testing/solve.ts";

const stepOf = (steps: StepsResult, id: string): WorkStep => {
  const step = steps.steps.find((s) => s.id === id);
  if (step === undefined)
    throw new Error(`no step ${id}; there are ${steps.steps.map((s) => s.id).join(" ")}`);
  return step;
};
const found = (tables: SomeTables, rule: string) =>
  solveSteps(tables).findings.filter((finding) => finding.rule === rule);

describe("a small machine", () => {
  const { steps, findings } = solveSteps(GOLDEN);

  test("has its steps in their order", () => {
    expect(steps.steps.map(({ number, id }) => `${number} ${id}`)).toEqual([
      "1 bench:mt.kick",
      "2 fixings:field:top:wood-screw",
      // The kickers take the box that is open from the rail.
      "3 mount:mech.left",
      "4 mount:mech.right",
      "5 devices:field:under:lamp",
      "6 st.test",
      "7 recheck:field:under",
      "8 st.pack",
    ]);
    expect(findings).toEqual([]);
    expect([steps.turnOvers, steps.fewestTurnOvers]).toEqual([1, 1]);
  });

  test("builds all mechanisms of a type in one step, and each before it is mounted", () => {
    const bench = stepOf(steps, "bench:mt.kick");
    expect([bench.times, bench.skill, bench.tools]).toEqual([2, "mechanism", ["feeler", "cycle box"]]);
    // Twice: 6 s to put together and 20 s for the gauge with 12 % rest, 5 min of cycling as the designer says.
    expect(bench.seconds).toBeCloseTo(2 * ((6 + 20) * 1.12 + 300), 1);
    expect(stepOf(steps, "mount:mech.left").afterIds).toEqual(["bench:mt.kick"]);
    expect(steps.edges.find((edge) => edge.afterId === "mount:mech.left")).toMatchObject({ why: "built" });
  });

  test("takes the time of its motions: two lamps and two screws of one box, 100 mm apart", () => {
    const { motions, seconds, secondsFrom, panelId, side } = stepOf(steps, "devices:field:under:lamp");
    expect([panelId, side, secondsFrom]).toEqual(["field", "under", "motions"]);
    expect(motions.map(({ kind, count, seconds: s }) => `${kind} ${count} ${s}`)).toEqual([
      "place 2 12",
      "pick 2 4",
      "tighten 2 6",
      "walk 100 0.25",
    ]);
    expect(seconds).toBeCloseTo(22.25 * 1.12, 1);
  });

  test("starts what is aligned loosely, and goes over it again the last first", () => {
    const { motions, fastenerIds } = stepOf(steps, "mount:mech.left");
    expect(fastenerIds).toEqual(["mech.left/s1", "mech.left/s2"]);
    expect(motions.map(({ kind, count }) => `${kind} ${count}`)).toEqual([
      "turn-over 1",
      "place 3",
      "pick 2",
      "start 2",
      "align 1",
      "tighten 2",
      "walk 80",
    ]);
  });

  test("checks again after burn-in what asks for it, without mounting it there", () => {
    const recheck = stepOf(steps, "recheck:field:under");
    expect([...recheck.recheckIds].sort()).toEqual([
      "mech.left/s1",
      "mech.left/s2",
      "mech.right/s1",
      "mech.right/s2",
    ]);
    expect(recheck.fastenerIds).toEqual([]);
    expect(recheck.afterIds).toEqual(["st.test"]);
    expect(stepOf(steps, "st.pack").afterIds).toEqual(["recheck:field:under"]);
  });

  test("takes the designer's minutes as they are", () => {
    const step = stepOf(steps, "st.test");
    expect([step.seconds, step.secondsFrom, step.stationId]).toEqual([1800, "designer", "stn.test"]);
  });
});

describe("what a person decides", () => {
  const choose = (kind: "step" | "station" | "time", subject: string, value: string): SomeTables => ({
    ...GOLDEN,
    choices: [{ kind, subject, value, held: "pinned" }],
  });

  test("an item is moved to another step with what holds it", () => {
    const { steps, findings } = solveSteps(choose("step", "lp.2", "st.test"));
    expect(stepOf(steps, "st.test").itemIds).toEqual(["lp.2"]);
    expect(stepOf(steps, "st.test").fastenerIds).toEqual(["fx.2"]);
    expect(stepOf(steps, "devices:field:under:lamp").itemIds).toEqual(["lp.1"]);
    expect(findings).toEqual([]);
  });

  test("a step that nothing else is in is made for it", () => {
    const { steps } = solveSteps(choose("step", "lp.2", "devices:field:under:lamp:9"));
    expect(stepOf(steps, "devices:field:under:lamp:9")).toMatchObject({
      itemIds: ["lp.2"],
      labels: { en: "Lamps: lp.2", zh: "灯：lp.2" },
    });
  });

  test("a station and a time", () => {
    expect(
      stepOf(solveSteps(choose("station", "mount:mech.left", "stn.line")).steps, "mount:mech.left").stationId,
    ).toBe("stn.line");
    const timed = stepOf(solveSteps(choose("time", "mount:mech.left", "1.5")).steps, "mount:mech.left");
    expect([timed.seconds, timed.secondsFrom]).toEqual([90, "designer"]);
  });

  test.each([
    ["step", "lp.2", "st.gone"],
    ["step", "lp.gone", "st.test"],
    ["station", "mount:mech.left", "stn.gone"],
    ["station", "mount:gone", "stn.line"],
    ["time", "mount:mech.left", "soon"],
  ] as const)("choice-not-followed: %s of %s is %s", (kind, subject, value) => {
    expect(found(choose(kind, subject, value), "choice-not-followed")).toMatchObject([
      { severity: "error", subjects: [subject, value], numbers: { kind } },
    ]);
  });
});

describe("findings", () => {
  const steps = GOLDEN.steps ?? [];

  test("fastener-no-step: it holds what this machine does not have", () => {
    const fasteners = [
      ...(GOLDEN.fasteners ?? []),
      { id: "fx.lost", type: "ft.a", panel: "field", side: "top" as const, holds: "lp.gone" },
    ];
    const { steps: result, findings } = solveSteps({ ...GOLDEN, fasteners });
    expect(findings).toMatchObject([{ rule: "fastener-no-step", subjects: ["fx.lost", "lp.gone"] }]);
    expect(result.steps.some((step) => step.fastenerIds.includes("fx.lost"))).toBe(false);
  });

  test("fastener-two-steps: two steps claim one lamp", () => {
    const claims = [...steps, { id: "st.a", items: ["lp.1"] }, { id: "st.b", items: ["lp.1", "lp.2"] }];
    expect(found({ ...GOLDEN, steps: claims }, "fastener-two-steps")).toMatchObject([
      { subjects: ["lp.1", "st.a", "st.b"] },
    ]);
  });

  test("step-skill and step-station: nobody is able, or not those who stand there", () => {
    const rows = [
      ...steps,
      { id: "st.weld", skill: "welding", minutes: 1 },
      { id: "st.look", skill: "test", minutes: 1, station: "stn.line" },
    ];
    expect(found({ ...GOLDEN, steps: rows }, "step-skill")).toMatchObject([
      { subjects: ["st.weld"], numbers: { skill: "welding" } },
    ]);
    expect(found({ ...GOLDEN, steps: rows }, "step-station")).toMatchObject([
      { subjects: ["st.look", "stn.line"], numbers: { skill: "test" } },
    ]);
    expect(found({ ...GOLDEN, steps: rows, stations: [] }, "step-skill")).toEqual([]);
  });

  test("step-empty: neither items nor minutes", () => {
    const rows = [...steps, { id: "st.nothing", items: ["lp.gone"] }];
    expect(found({ ...GOLDEN, steps: rows }, "step-empty")).toMatchObject([{ subjects: ["st.nothing"] }]);
  });

  test("gauge-missing: neither a lower nor an upper limit", () => {
    const rows = (GOLDEN.mechanism_steps ?? []).map((row) =>
      row.kind === "adjust" ? { ...row, min: null, max: null } : row,
    );
    expect(found({ ...GOLDEN, mechanism_steps: rows }, "gauge-missing")).toMatchObject([
      { subjects: ["mt.kick"], numbers: { step: 2 } },
    ]);
  });
});
