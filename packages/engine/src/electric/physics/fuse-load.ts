import type { BookRow } from "@pinwright/book";

type Speed = BookRow<"fuses">["speed"] | "resettable";

/** Temperature that ratings of fuses are given for, °C. */
const RATED_C = 25;

/**
 * Loss of rating by each K above 25 °C. Source: a fuse derating guide gives 0.2 to 0.5 %; catalogue curves are at the
 * upper end for time-lag and the lower for quick fuses (from memory). Resettable ones hold about 0.7 of it at 60 °C (from
 * memory).
 */
const LOSS_PER_K: Readonly<Record<Speed, number>> = {
  ff: 0.002,
  f: 0.002,
  m: 0.0035,
  t: 0.005,
  tt: 0.005,
  resettable: 0.009,
};

/** Share of its rating that a fuse carries all the time in air of `airC`; 1 at 25 °C and below. */
export const fuseAmbientShare = (speed: Speed, airC: number): number =>
  Math.max(0, 1 - LOSS_PER_K[speed] * Math.max(0, airC - RATED_C));

/**
 * Least rating in A for a steady current.
 * @param loading share of its rating that a fuse is to carry: 1 for IEC 60127, 0.75 for UL 248-14
 * Source: European and American fuse standards compared; a chip fuse data sheet has the same formula.
 */
export const steadyRatingA = (amps: number, loading: number, ambientShare: number): number =>
  amps / (loading * ambientShare);

/** Share of its melting I²t that one of so many pulses may have. Source: a fuse maker's guide; 10 s between pulses. */
const PULSES: readonly (readonly [pulses: number, share: number])[] = [
  [100, 0.48],
  [1000, 0.38],
  [10000, 0.29],
  [100000, 0.22],
];

/**
 * Share of its nominal melting I²t that each pulse may have for a fuse to outlast `pulses` of them. Between rows on a
 * logarithmic axis of pulses; below 100 as for 100; above 100 000 each further tenfold takes as much as the last.
 */
export function pulseShare(pulses: number): number {
  const decades = Math.log10(Math.max(100, pulses));
  const at = Math.min(PULSES.length - 2, Math.max(0, Math.floor(decades) - 2));
  const [[n0, s0], [n1, s1]] = [PULSES[at] ?? [1, 1], PULSES[at + 1] ?? [1, 1]];
  const along = (decades - Math.log10(n0)) / Math.log10(n1 / n0);
  return along <= 1 ? s0 + (s1 - s0) * along : s1 * (s1 / s0) ** (along - 1);
}

/** Melting I²t in A²s that a fuse needs to outlast so many pulses of `pulseA2s` each. */
export const neededMeltingA2s = (pulseA2s: number, pulses: number): number => pulseA2s / pulseShare(pulses);

/** Shapes of a current pulse, with peak `peakA` and length or time constant `seconds`. */
type PulseShape = "rectangle" | "half-sine" | "triangle" | "parabola" | "decay";

const PART_OF_RECTANGLE: Readonly<Record<PulseShape, number>> = {
  rectangle: 1,
  "half-sine": 1 / 2,
  triangle: 1 / 3,
  parabola: 1 / 5,
  decay: 1 / 2,
};

/** I²t of a pulse in A²s; of a decay `seconds` is the time constant. Source: a fuse maker's guide to wave shapes. */
export const pulseA2s = (shape: PulseShape, peakA: number, seconds: number): number =>
  PART_OF_RECTANGLE[shape] * peakA ** 2 * seconds;
