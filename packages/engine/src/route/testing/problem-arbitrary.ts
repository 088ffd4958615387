import fc from "fast-check";
import type { RouteProblem } from "../search/problem.ts";

/** Minutes of the ties along a branch; one wire by itself is not tied. */
const tieMin = (lengthMm: number, wires: number): number => (wires > 1 ? (lengthMm / 75) * 0.25 : 0);

/** Wire ends at a terminal. */
const ends = (wires: readonly (readonly [number, number])[], terminal: number): number =>
  wires.flat().filter((end) => end === terminal).length;

/** Problems with a few spots, all of which hang together. */
export const smallProblem = (most: { spots: number; landings: number }): fc.Arbitrary<RouteProblem> =>
  fc
    .record({
      spots: fc.integer({ min: 2, max: most.spots }),
      landings: fc.integer({ min: 2, max: most.landings }),
      splice: fc.boolean(),
      breakoutBranches: fc.integer({ min: 1, max: 4 }),
    })
    .chain(({ spots, landings, splice, breakoutBranches }) => {
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
              minutes: tieMin(l.lengthMm, 2),
              maxSquareMm2: 1e9,
              forbidden: [],
            })),
            landings: tails.map((list, i) => ({
              candidates: list.map((c) => ({ ...c, minutes: tieMin(c.lengthMm, ends(wires, i)) })),
            })),
            splices: splice
              ? [{ places: Array.from({ length: spots }, (_, i) => ({ spot: i, penaltyMin: 0 })) }]
              : [],
            wires: wires.map(([a, b]) => ({ a, b, classIndex: 0, squareMm2: 2 })),
            classes: 1,
            apart: [],
            breakoutMin: 0.9,
            breakoutBranches,
            layMinPerM: 0.08,
            fixedMin: 1.5,
          }),
        );
    });
