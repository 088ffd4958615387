/**
 * Spares for the field. Failures in a fleet over some years follow Poisson's law when each is rare and independent;
 * where each of n things fails at most once, the binomial law.
 */

/**
 * The least number of spares s with P(X ≤ s) ≥ confidence, X after Poisson.
 * @param expected failures that are expected, 0 or more
 * @param confidence from 0 up to, not including, 1
 * @throws RangeError outside of that
 */
export function spareCount(expected: number, confidence: number): number {
  if (!(expected >= 0 && Number.isFinite(expected)))
    throw new RangeError(`${expected} failures are expected, there can only be 0 or more`);
  checkConfidence(confidence);
  if (expected === 0) return 0;
  const log = Math.log(expected);
  return leastCount(confidence, Number.POSITIVE_INFINITY, -expected, (k) => log - Math.log(k));
}

/**
 * The least number of spares s with P(X ≤ s) ≥ confidence, X binomial.
 * @param count things of which each fails at most once
 * @param share probability with which each fails, from 0 to 1
 * @param confidence from 0 up to, not including, 1
 * @throws RangeError outside of that
 */
export function sparesBinomial(count: number, share: number, confidence: number): number {
  if (!Number.isSafeInteger(count) || count < 0)
    throw new RangeError(`count is ${count}, expected a whole number from 0`);
  if (!(share >= 0 && share <= 1)) throw new RangeError(`share is ${share}, expected 0 to 1`);
  checkConfidence(confidence);
  if (share === 0 || count === 0) return 0;
  if (share === 1) return count;
  const odds = Math.log(share) - Math.log1p(-share);
  return leastCount(
    confidence,
    count,
    count * Math.log1p(-share),
    (k) => Math.log(count - k + 1) - Math.log(k) + odds,
  );
}

function checkConfidence(confidence: number): void {
  if (!(confidence >= 0 && confidence < 1))
    throw new RangeError(`confidence is ${confidence}, expected 0 to below 1`);
}

/**
 * Least s whose cumulated probability reaches the confidence. Probabilities are kept as logarithms, since that of no
 * failure underflows where hundreds are expected.
 * @param first logarithm of P(X = 0)
 * @param step logarithm of P(X = k) ÷ P(X = k − 1)
 */
function leastCount(confidence: number, most: number, first: number, step: (k: number) => number): number {
  let log = first;
  let sum = Math.exp(log);
  for (let k = 0; ; k++) {
    if (sum >= confidence || k >= most) return k;
    log += step(k + 1);
    const added = Math.exp(log);
    // Past the middle a term that no longer changes the sum means that rounding, not probability, is missing.
    if (added > 0 && sum + added === sum && sum > 0.5) return k;
    sum += added;
  }
}
