/** One of the eight tests for special causes: L. S. Nelson, Journal of Quality Technology 16, 1984. */
export type ControlRule =
  /** One point beyond three deviations. */
  | "beyond"
  /** Nine in a row on one side of the centre. */
  | "one-side"
  /** Six in a row rising or falling. */
  | "trend"
  /** Fourteen in a row going up and down in turn. */
  | "alternating"
  /** Two of three in a row beyond two deviations on one side. */
  | "two-of-three"
  /** Four of five in a row beyond one deviation on one side. */
  | "four-of-five"
  /** Fifteen in a row within one deviation. */
  | "hugging"
  /** Eight in a row beyond one deviation on either side. */
  | "two-humps";

/** A rule that is broken, at the point that completes the pattern. */
export interface RuleSignal {
  readonly rule: ControlRule;
  readonly at: number;
}

/** @param z distance of a point from the centre in deviations */
type Test = (z: readonly number[], at: number) => boolean;

/** Whether the last n up to a place all are so; false while there are fewer. */
const all = (n: number, is: (z: number) => boolean): Test => {
  return (z, at) => at + 1 >= n && z.slice(at + 1 - n, at + 1).every(is);
};
/** Whether the last n up to a place, the point there among them, hold at least k that are so. */
const some = (k: number, n: number, is: (z: number) => boolean): Test => {
  return (z, at) => {
    const last = z.slice(Math.max(0, at + 1 - n), at + 1);
    return is(z[at] ?? 0) && last.filter(is).length >= k;
  };
};
const either =
  (a: Test, b: Test): Test =>
  (z, at) =>
    a(z, at) || b(z, at);
const steps = (z: readonly number[], at: number, n: number): number[] =>
  z.slice(at + 2 - n, at + 1).map((value, i) => value - (z[at + 1 - n + i] ?? 0));

const TESTS: readonly (readonly [ControlRule, Test])[] = [
  ["beyond", (z, at) => Math.abs(z[at] ?? 0) > 3],
  [
    "one-side",
    either(
      all(9, (z) => z > 0),
      all(9, (z) => z < 0),
    ),
  ],
  [
    "trend",
    (z, at) =>
      at >= 5 && (steps(z, at, 6).every((step) => step > 0) || steps(z, at, 6).every((step) => step < 0)),
  ],
  [
    "alternating",
    (z, at) =>
      at >= 13 && steps(z, at, 14).every((step, i, list) => i === 0 || step * (list[i - 1] ?? 0) < 0),
  ],
  [
    "two-of-three",
    either(
      some(2, 3, (z) => z > 2),
      some(2, 3, (z) => z < -2),
    ),
  ],
  [
    "four-of-five",
    either(
      some(4, 5, (z) => z > 1),
      some(4, 5, (z) => z < -1),
    ),
  ],
  ["hugging", all(15, (z) => Math.abs(z) < 1)],
  ["two-humps", all(8, (z) => Math.abs(z) > 1)],
];

/**
 * Every rule that a chart breaks, in the order of its points.
 * @param z each point's distance from the centre line in standard deviations of what is plotted
 */
export const controlSignals = (
  z: readonly number[],
  rules: readonly ControlRule[] = TESTS.map(([rule]) => rule),
): readonly RuleSignal[] =>
  z.flatMap((_, at) =>
    TESTS.flatMap(([rule, test]) => (rules.includes(rule) && test(z, at) ? [{ rule, at }] : [])),
  );
