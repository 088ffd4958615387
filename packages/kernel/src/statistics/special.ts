/**
 * Natural logarithm of the gamma function for x > 0, to about 1e-14: C. Lanczos, "A precision approximation of the gamma
 * function", SIAM Journal on Numerical Analysis B 1, 1964, with the nine coefficients for g = 7.
 */
export function lnGamma(x: number): number {
  if (x < 0.5) return Math.log(Math.PI / Math.sin(Math.PI * x)) - lnGamma(1 - x);
  const t = x + 6.5;
  let sum = LANCZOS[0] ?? 0;
  for (let i = 1; i < LANCZOS.length; i++) sum += (LANCZOS[i] ?? 0) / (x - 1 + i);
  return 0.5 * Math.log(2 * Math.PI) + (x - 0.5) * Math.log(t) - t + Math.log(sum);
}

const LANCZOS = [
  0.999_999_999_999_809_93, 676.520_368_121_885_1, -1259.139_216_722_402_8, 771.323_428_777_653_13,
  -176.615_029_162_140_59, 12.507_343_278_686_905, -0.138_571_095_265_720_12, 9.984_369_578_019_571_6e-6,
  1.505_632_735_149_311_6e-7,
];

const MOST_TERMS = 10_000;
const PRECISION = 1e-15;

/**
 * Share of the gamma distribution of shape a below x: the regularised incomplete gamma function P(a, x), by its series
 * below a + 1 and by its continued fraction above (NIST Digital Library of Mathematical Functions, 8.7.1 and 8.9.2).
 */
export function gammaBelow(a: number, x: number): number {
  if (x <= 0) return 0;
  const scale = Math.exp(a * Math.log(x) - x - lnGamma(a));
  if (x < a + 1) {
    let term = 1 / a;
    let sum = term;
    for (let n = 1; n < MOST_TERMS && Math.abs(term) > Math.abs(sum) * PRECISION; n++) {
      term *= x / (a + n);
      sum += term;
    }
    return Math.min(1, sum * scale);
  }
  const tiny = 1e-300;
  let b = x + 1 - a;
  let c = 1 / tiny;
  let d = 1 / b;
  let h = d;
  for (let i = 1; i < MOST_TERMS; i++) {
    const an = -i * (i - a);
    b += 2;
    d = an * d + b;
    if (Math.abs(d) < tiny) d = tiny;
    c = b + an / c;
    if (Math.abs(c) < tiny) c = tiny;
    d = 1 / d;
    const factor = d * c;
    h *= factor;
    if (Math.abs(factor - 1) < PRECISION) break;
  }
  return Math.max(0, 1 - scale * h);
}

/** Share of the standard normal distribution below z. */
export const normalBelow = (z: number): number =>
  z < 0 ? 0.5 * (1 - gammaBelow(0.5, (z * z) / 2)) : 0.5 * (1 + gammaBelow(0.5, (z * z) / 2));

/** The point below which a share of a rising distribution lies, by halving the interval. */
function quantile(share: number, low: number, high: number, below: (x: number) => number): number {
  let [a, b] = [low, high];
  for (let i = 0; i < 200 && b - a > 1e-14 * Math.max(1, Math.abs(a)); i++) {
    const middle = (a + b) / 2;
    if (below(middle) < share) a = middle;
    else b = middle;
  }
  return (a + b) / 2;
}

/**
 * The point below which a share of the standard normal distribution lies.
 * @throws RangeError unless the share is between 0 and 1
 */
export function normalQuantile(share: number): number {
  if (!(share > 0 && share < 1)) throw new RangeError(`share ${share}, expected between 0 and 1`);
  return quantile(share, -40, 40, normalBelow);
}

/**
 * The point below which a share of the chi-squared distribution lies.
 * @throws RangeError unless the share is between 0 and 1 and there are degrees of freedom
 */
export function chiSquaredQuantile(share: number, degrees: number): number {
  if (!(share > 0 && share < 1)) throw new RangeError(`share ${share}, expected between 0 and 1`);
  if (!(degrees > 0)) throw new RangeError(`${degrees} degrees of freedom, expected more than 0`);
  const below = (x: number): number => gammaBelow(degrees / 2, x / 2);
  let high = Math.max(1, degrees);
  while (below(high) < share) high *= 2;
  return quantile(share, 0, high, below);
}
