import type { Hypothesis } from "./hypotheses.ts";
import type { Meter } from "./meter.ts";
import { MISREAD } from "./says.ts";

/** A measurement of ohms between two nodes, and the bits that it tells. */
export interface RatedOhms {
  readonly a: number;
  readonly b: number;
  readonly bits: number;
}

const bits = (p: number): number => (p <= 0 ? 0 : -p * Math.log2(p));

/**
 * The pairs of nodes between which ohms tell most (Shannon 1948, mutual information of a yes or no), the best first, ties by
 * node. Of the pairs that tell the same of every hypothesis only the first is kept.
 * @param nodes in rising order
 * @param asked weights need not add up to 1
 */
export function bestOhms(
  meter: Meter,
  asked: readonly Hypothesis[],
  nodes: readonly number[],
  most: number,
): readonly RatedOhms[] {
  const all = asked.reduce((sum, { weight }) => sum + weight, 0);
  if (all <= 0) return [];
  const sound = meter.joined(-1);
  const sets = asked.map(({ suspects }) => suspects.map((s) => meter.joined(s)));
  const noise = bits(MISREAD) + bits(1 - MISREAD);
  const found = new Map<string, RatedOhms>();
  nodes.forEach((a, i) => {
    for (const b of nodes.slice(i + 1)) {
      const isJoined = sound[a] === sound[b];
      let yes = 0;
      let pattern = "";
      sets.forEach((own, h) => {
        // Two faults: what either changes is changed.
        const isChanged = own.some((one) => (one[a] === one[b]) !== isJoined);
        const says = isChanged !== isJoined;
        if (says) yes += (asked[h]?.weight ?? 0) / all;
        pattern += says ? "1" : "0";
      });
      const p = MISREAD + yes * (1 - 2 * MISREAD);
      const told = bits(p) + bits(1 - p) - noise;
      if (told > 0 && !found.has(pattern)) found.set(pattern, { a, b, bits: told });
    }
  });
  return [...found.values()].sort((p, q) => q.bits - p.bits || p.a - q.a || p.b - q.b).slice(0, most);
}
