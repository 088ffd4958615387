import type { Corner, Spread } from "../../model/index.ts";

/** The nominal corner, and then every combination of the extremes: what results are given at. */
export const CORNERS: readonly Corner[] = [
  { contacts: "new", supply: "nominal", temperature: "nominal" },
  ...(["new", "worn"] as const).flatMap((contacts) =>
    (["low", "high"] as const).flatMap((supply) =>
      (["cold", "hot"] as const).map((temperature): Corner => ({ contacts, supply, temperature })),
    ),
  ),
];

const NOMINAL: Corner = CORNERS[0] ?? { contacts: "new", supply: "nominal", temperature: "nominal" };

/** The same value at every corner. */
export const same = (value: number): Spread => ({
  nominal: value,
  least: value,
  leastAt: NOMINAL,
  most: value,
  mostAt: NOMINAL,
});

/** The spread of a quantity over the corners; `at` gives it at the c-th corner. The first corner of equals counts. */
export function spreadOf(at: (corner: number) => number): Spread {
  const nominal = at(0);
  let least = nominal;
  let leastAt = 0;
  let most = nominal;
  let mostAt = 0;
  for (let c = 1; c < CORNERS.length; c++) {
    const value = at(c);
    if (value < least) {
      least = value;
      leastAt = c;
    }
    if (value > most) {
      most = value;
      mostAt = c;
    }
  }
  return { nominal, least, leastAt: CORNERS[leastAt] ?? NOMINAL, most, mostAt: CORNERS[mostAt] ?? NOMINAL };
}
