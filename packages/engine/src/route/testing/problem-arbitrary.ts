import fc from "fast-check";
import type { RouteProblem } from "../search/problem.ts";

/** Problems with a few spots, all of which hang together. */
export const smallProblem = (most: { spots: number; landings: number }): fc.Arbitrary<RouteProblem> =>
  fc
    .record({
      spots: fc.integer({ min: 2, max: most.spots }),
      landings: fc.integer({ min: 2, max: most.landings }),
      splice: fc.boolean(),
    })
    .chain(({ spots, landings, splice }) => {
      const spot = fc.integer({ min: 0, max: spots - 1 });
      const lengthMm = fc.integer({ min: 20, max: 300 });
      const lane = fc.record({ a: spot, b: spot, lengthMm }).filter(({ a, b }) => a !== b);
      const terminals = landings + (splice ? 1 : 0);
      return fc
        .record({
          spine: fc.tuple(
            ...Array.from({ length: spots - 1 }, (_, i) =>
              fc.tuple(fc.integer({ min: 0, max: i }), lengthMm),
            ),
          ),
          more: fc.array(lane, { maxLength: 4 }),
          tails: fc.tuple(
            ...Array.from({ length: landings }, () =>
              fc.uniqueArray(fc.record({ spot, lengthMm: fc.integer({ min: 10, max: 260 }) }), {
                minLength: 1,
                maxLength: 3,
                selector: (c) => c.spot,
              }),
            ),
          ),
          wires: fc.array(
            fc
              .tuple(fc.integer({ min: 0, max: landings - 1 }), fc.integer({ min: 0, max: terminals - 1 }))
              .filter(([a, b]) => a !== b),
            { minLength: 1, maxLength: 6 },
          ),
        })
        .map(
          ({ spine, more, tails, wires }): RouteProblem => ({
            spots,
            lanes: [...spine.map(([a, mm], i) => ({ a, b: i + 1, lengthMm: mm })), ...more].map((l) => ({
              ...l,
              minutes: (l.lengthMm / 75) * 0.25,
              maxSquareMm2: 1e9,
              forbidden: [],
            })),
            landings: tails.map((list) => ({ candidates: list.map((c) => ({ ...c, minutes: 0 })) })),
            splices: splice
              ? [{ places: Array.from({ length: spots }, (_, i) => ({ spot: i, penaltyMin: 0 })) }]
              : [],
            wires: wires.map(([a, b]) => ({ a, b, classIndex: 0, squareMm2: 2 })),
            classes: 1,
            apart: [],
            breakoutMin: 0.9,
            layMinPerM: 0.08,
            fixedMin: 1.5,
          }),
        );
    });
