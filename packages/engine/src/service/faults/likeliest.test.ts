import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { SYMPTOMS, type Symptom } from "./fault.ts";
import type { FaultClass, FaultTable } from "./fault-table.ts";
import { likeliest } from "./likeliest.ts";
import { SEEN, type Seen, worse } from "./seen.ts";
import { SymptomOdds } from "./symptom-odds.ts";

const FUNCTIONS = 8;

const symptomsOf = fc
  .uniqueArray(fc.tuple(fc.nat(FUNCTIONS - 1), fc.constantFrom(...SYMPTOMS.slice(1))), {
    minLength: 1,
    selector: ([f]) => f,
  })
  .map((all): ReadonlyMap<number, Symptom> => new Map(all));
const tableOf = fc
  .array(fc.tuple(symptomsOf, fc.double({ min: 0.001, max: 1, noNaN: true })), { minLength: 2, maxLength: 6 })
  .map(
    (all): FaultTable => ({
      suspects: [],
      classes: all.map(([symptoms, odds], c): FaultClass => ({ suspects: [c], symptoms, odds })),
    }),
  );
const sightings = fc
  .array(fc.option(fc.constantFrom(...SEEN)), { minLength: FUNCTIONS, maxLength: FUNCTIONS })
  .map(
    (all) => new Map(all.flatMap((said, f): readonly [number, Seen][] => (said === null ? [] : [[f, said]]))),
  );

/** Two classes as one that does what both do. */
function together(a: FaultClass, b: FaultClass): FaultClass {
  const symptoms = new Map(a.symptoms);
  for (const [f, symptom] of b.symptoms) symptoms.set(f, worse(symptom, symptoms.get(f) ?? symptom));
  return { suspects: [], symptoms, odds: 1 };
}

describe("the likeliest causes", () => {
  it("weigh two classes at once as one class that does what both do", () => {
    fc.assert(
      fc.property(tableOf, sightings, (table, seen) => {
        const [a, b] = table.classes;
        if (a === undefined || b === undefined) return;
        const odds = new SymptomOdds(table, seen);
        odds.lay([0, 1]);
        const as = new SymptomOdds({ suspects: [], classes: [together(a, b)] }, seen);
        expect(odds.pairGain(0, 1)).toBeCloseTo(as.gain(0), 9);
        expect(odds.pairGain(1, 0)).toBeCloseTo(as.gain(0), 9);
      }),
      { seed: 8, numRuns: 300 },
    );
  });

  it("are the first of all there are, in order, with chances that add up to 1", () => {
    fc.assert(
      fc.property(tableOf, sightings, fc.integer({ min: 1, max: 5 }), (table, seen, most) => {
        const all = likeliest(table, seen, 1000);
        expect(all.reduce((sum, { probability }) => sum + probability, 0)).toBeCloseTo(1, 9);
        for (const [n, { probability }] of all.entries())
          expect(probability).toBeLessThanOrEqual(all[n - 1]?.probability ?? 1);
        expect(likeliest(table, seen, most)).toEqual(all.slice(0, most));
      }),
      { seed: 8, numRuns: 200 },
    );
  });

  it("survive hundreds of ticks", () => {
    const symptoms = new Map(Array.from({ length: 900 }, (_, f) => [f, "dead" as const]));
    const table = { suspects: [], classes: [{ suspects: [0], symptoms, odds: 1e-9 }] };
    expect(likeliest(table, symptoms, 1)).toEqual([{ classes: [0], probability: 1 }]);
  });
});
