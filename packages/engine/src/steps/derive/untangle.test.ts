import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Precedence } from "../../model/index.ts";
import type { SomeTables } from "../../testing/book.ts";
import { TYPES } from "../testing/arbitrary.ts";
import { solveSteps } from "../testing/solve.ts";
import { type Draft, emptyDraft } from "./draft.ts";
import { stepsOf } from "./edges.ts";
import { knotsOf } from "./knots.ts";
import { untangle } from "./untangle.ts";

const lamp = (id: string, x_mm: number) => ({
  id,
  type: "dt.lamp",
  panel: "field",
  side: "under" as const,
  x_mm,
  y_mm: 50,
});
const TABLES: SomeTables = {
  ...TYPES,
  devices: [lamp("lp.a", 50), lamp("lp.b", 100), lamp("lp.c", 150)],
  mechanisms: [{ id: "mech.gate", type: "mt.gate", panel: "field", side: "under", x_mm: 300, y_mm: 500 }],
  fasteners: [{ ...lamp("fx.c", 150), type: "ft.a", holds: "lp.c" }],
};
const lamps = (tables: SomeTables) =>
  Object.fromEntries(
    solveSteps(tables)
      .steps.steps.filter((step) => step.kind === "devices")
      .map(({ id, itemIds, fastenerIds }) => [id, [...itemIds, ...fastenerIds]]),
  );

describe("a group that waits for itself only because it is one", () => {
  const tables: SomeTables = {
    ...TABLES,
    step_rules: [
      { id: "r1", first_item: "lp.a", then_item: "mech.gate" },
      { id: "r2", first_item: "mech.gate", then_item: "lp.c" },
    ],
  };

  test("is divided into what comes before and what comes after", () => {
    expect(lamps(tables)).toEqual({
      "devices:field:under:lamp": ["lp.a", "lp.b"],
      "devices:field:under:lamp~2": ["lp.c", "fx.c"],
    });
    const { steps, findings } = solveSteps(tables);
    expect(steps.steps.map(({ id }) => id).slice(-3)).toEqual([
      "devices:field:under:lamp",
      "mount:mech.gate",
      "devices:field:under:lamp~2",
    ]);
    expect(findings).toEqual([]);
    expect(steps.steps.at(-1)?.labels).toEqual({
      en: "Lamps: lp.c",
      zh: "灯：lp.c",
    });
  });

  test("stays whole when it waits for nothing of its own", () => {
    expect(lamps(TABLES)).toEqual({ "devices:field:under:lamp": ["lp.c", "lp.a", "lp.b", "fx.c"] });
  });

  test("a loop that no division opens is a finding, and the cheapest rule is given up", () => {
    const steps = [{ id: "st.all", items: ["lp.a", "lp.b", "lp.c"] }];
    const { findings, steps: solved } = solveSteps({ ...tables, steps });
    expect(findings.map(({ rule }) => rule)).toEqual(["order-loop"]);
    expect(solved.steps).toHaveLength(3);
  });
});

describe("laws", () => {
  /** Precedence of things without a loop: from a lower number to a higher. */
  const edges = fc
    .array(fc.tuple(fc.nat(11), fc.nat(11)), { maxLength: 18 })
    .map((pairs) =>
      pairs.flatMap(([i, j]): Precedence[] =>
        i === j
          ? []
          : [{ beforeId: `i${Math.min(i, j)}`, afterId: `i${Math.max(i, j)}`, why: "covers", at: "" }],
      ),
    );

  test("groups of things without a loop never wait for themselves, and keep everything (seed 111)", () => {
    fc.assert(
      fc.property(edges, fc.array(fc.nat(3), { minLength: 12, maxLength: 12 }), (list, groupOf) => {
        const drafts = [0, 1, 2, 3].map((g): Draft => {
          const itemIds = groupOf.flatMap((own, i) => (own === g ? [`i${i}`] : [])).sort();
          return { ...emptyDraft("devices", `g${g}`, { en: "", zh: "" }), itemIds };
        });
        const parts = untangle(drafts, list, () => []);
        const stepOf = stepsOf(parts);
        const pairs = list.flatMap(({ beforeId, afterId }) => {
          const [before, after] = [stepOf.get(beforeId) ?? "", stepOf.get(afterId) ?? ""];
          return before === after ? [] : [[before, after] as const];
        });
        expect(knotsOf(pairs)).toEqual([]);
        for (const g of [0, 1, 2, 3]) {
          const own = parts.filter(({ id }) => id === `g${g}` || id.startsWith(`g${g}~`));
          expect(own.flatMap(({ itemIds }) => itemIds).sort()).toEqual(drafts[g]?.itemIds);
        }
      }),
      { seed: 111, numRuns: 300 },
    );
  });
});
