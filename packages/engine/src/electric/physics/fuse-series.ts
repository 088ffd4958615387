/** One decade of the R10 series of preferred numbers. Source: ISO 3, as IEC 60127 uses it for ratings; from memory. */
const R10 = [1, 1.25, 1.6, 2, 2.5, 3.15, 4, 5, 6.3, 8] as const;

const LEAST_DECADE = -2;
const MOST_DECADE = 1;

/** Preferred ratings of miniature fuse-links in A, 10 mA to 80 A. IEC 60127-2 has 32 mA to 10 A of them. */
export const FUSE_RATINGS_A: readonly number[] = Array.from(
  { length: MOST_DECADE - LEAST_DECADE + 1 },
  (_, d) => R10.map((value) => Number((value * 10 ** (d + LEAST_DECADE)).toPrecision(3))),
).flat();

/** The lowest preferred rating that is at least `amps`; null above 80 A. */
export const ratingAtLeast = (amps: number): number | null =>
  FUSE_RATINGS_A.find((rating) => rating >= amps * (1 - 1e-9)) ?? null;
