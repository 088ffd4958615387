import type { TestYield } from "@pinwright/contract";
import { rolledYield } from "@pinwright/engine";
import { compareText } from "@pinwright/kernel";

/** Units that took something, and how many of them were good. */
export interface YieldCount {
  readonly units: number;
  readonly first: number;
  readonly last: number;
}

/** Counts in groups, in the order of the groups' keys. */
export function yieldsBy(
  tests: readonly TestYield[],
  keyOf: (test: TestYield) => string,
): ReadonlyMap<string, YieldCount> {
  const found = new Map<string, YieldCount>();
  for (const test of tests) {
    const key = keyOf(test);
    const known = found.get(key) ?? { units: 0, first: 0, last: 0 };
    found.set(key, {
      units: known.units + test.units,
      first: known.first + test.first,
      last: known.last + test.last,
    });
  }
  return new Map([...found].sort(([a], [b]) => compareText(a, b)));
}

/** Product of the first-pass yields of the tests of each kind of unit, by kind and type. */
export function rolledByType(tests: readonly TestYield[]): ReadonlyMap<string, number> {
  const shares = new Map<string, number[]>();
  for (const [key, { units, first }] of yieldsBy(
    tests,
    ({ what, type, test }) => `${what} ${type} ${test}`,
  )) {
    const [what = "", type = ""] = key.split(" ");
    const of = `${what} ${type}`;
    shares.set(of, [...(shares.get(of) ?? []), first / units]);
  }
  return new Map([...shares].map(([key, list]) => [key, rolledYield(list)]));
}
