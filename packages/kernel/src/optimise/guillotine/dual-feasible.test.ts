import fc from "fast-check";
import { expect, it } from "vitest";
import { dualFeasibleFunctions } from "./dual-feasible.ts";

it("dual feasible functions keep lengths that fit beside each other within the whole", () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 2, max: 60 }).chain((total) =>
        fc.record({
          total: fc.constant(total),
          // Any lengths; then as many of them, with repetition, as fit beside each other.
          lengths: fc.array(fc.integer({ min: 1, max: total }), { minLength: 1, maxLength: 8 }),
          picks: fc.array(fc.nat(7), { maxLength: 40 }),
        }),
      ),
      ({ total, lengths, picks }) => {
        const chosen: number[] = [];
        let used = 0;
        for (const pick of picks) {
          const i = pick % lengths.length;
          if (used + (lengths[i] ?? 0) > total) continue;
          used += lengths[i] ?? 0;
          chosen.push(i);
        }
        for (const values of dualFeasibleFunctions(lengths, total)) {
          expect(Math.min(...values)).toBeGreaterThanOrEqual(0);
          expect(chosen.reduce((sum, i) => sum + (values[i] ?? 0), 0)).toBeLessThanOrEqual(1 + 1e-9);
        }
      },
    ),
    { numRuns: 300, seed: 3 },
  );
});
