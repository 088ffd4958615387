import { compareText, roundTo } from "@pinwright/kernel";
import { type FastenerFit, type FastenerItem, type Finding, makeFinding } from "../../model/index.ts";
import { handLikeness } from "./hand-likeness.ts";
import { type NearPair, pairKey } from "./neighbours.ts";

/** From this likeness on two types are taken for each other by someone who does not look twice. */
const TAKEN_FOR = 0.3;

/** Bodies of posts and stand-offs that differ by more hold their board or plastic askew. */
const ASKEW_MM = 0.3;

type Harm = "through" | "bottom" | "short" | "askew";

/** What spoils a part, and not only the hold. */
const BREAKS: ReadonlySet<Harm> = new Set<Harm>(["through", "bottom"]);

const bodyMm = ({ type, flangeMm }: FastenerItem): number =>
  type.kind === "post" ? flangeMm : (type.head_height_mm ?? 0);

const isPost = ({ type }: FastenerItem): boolean => type.kind === "post" || type.kind === "standoff";

/** What happens at the place of `own` when it gets the type of `other`; null: nothing that was not so before. */
function harmOf(own: FastenerItem, other: FastenerItem, fit: FastenerFit | undefined): Harm | null {
  if (isPost(own) && isPost(other) && Math.abs(bodyMm(own) - bodyMm(other)) > ASKEW_MM) return "askew";
  if (fit === undefined || fit.holdsIn === "nothing") return null;
  // A post's length counts its body.
  const reach = ({ type, flangeMm }: FastenerItem): number =>
    type.length_mm - (type.kind === "post" ? flangeMm : 0);
  const moreMm = reach(other) - reach(own);
  if (fit.leftMm !== null && fit.leftMm >= 0 && fit.leftMm - moreMm < 0)
    return fit.holdsIn === "tapped" ? "bottom" : "through";
  const short = fit.engagedMm >= fit.leastEngagedMm && fit.engagedMm + moreMm < fit.leastEngagedMm;
  return short ? "short" : null;
}

interface Swap {
  readonly pair: NearPair;
  /** The one whose place gets the wrong type. */
  readonly at: FastenerItem;
  readonly other: FastenerItem;
  readonly harm: Harm;
}

function swapsOf(pair: NearPair, fits: ReadonlyMap<string, FastenerFit>): readonly Swap[] {
  const swaps: Swap[] = [];
  for (const [at, other] of [
    [pair.a, pair.b],
    [pair.b, pair.a],
  ] as const) {
    const harm = harmOf(at, other, fits.get(at.id));
    if (harm !== null) swaps.push({ pair, at, other, harm });
  }
  return swaps;
}

/**
 * Types that look alike in the hand and stand side by side where the wrong one does harm: comes through, bottoms in
 * its tapped hole, holds a board askew or is too short. One finding for each two types and kind of harm on a side of
 * a panel, at the nearest two; a warning when a screw would come through or bottom.
 */
export function lookalikes(
  beside: readonly NearPair[],
  fits: ReadonlyMap<string, FastenerFit>,
): readonly Finding[] {
  const groups = new Map<string, Swap[]>();
  const takenFor = new Map<string, boolean>();
  for (const pair of beside) {
    const types = pairKey(pair.a.type.id, pair.b.type.id);
    const taken = takenFor.get(types) ?? handLikeness(pair.a.type, pair.b.type) >= TAKEN_FOR;
    takenFor.set(types, taken);
    if (!taken) continue;
    for (const swap of swapsOf(pair, fits)) {
      const key = `${types}|${swap.harm}`;
      const group = groups.get(key);
      if (group === undefined) groups.set(key, [swap]);
      else group.push(swap);
    }
  }
  return [...groups.values()].flatMap(finding);
}

const byDistance = (a: Swap, b: Swap): number =>
  a.pair.distanceMm - b.pair.distanceMm ||
  compareText(a.at.id, b.at.id) ||
  compareText(a.other.id, b.other.id);

function finding(swaps: readonly Swap[]): readonly Finding[] {
  return swaps
    .toSorted(byDistance)
    .slice(0, 1)
    .map(({ at, other, harm, pair }) => {
      const severity = BREAKS.has(harm) ? "warning" : "note";
      return makeFinding("screw-lookalike", severity, [at.id, other.id, at.type.id, other.type.id], {
        harm,
        distance_mm: roundTo(pair.distanceMm, 0.1),
        length_mm: at.type.length_mm,
        other_length_mm: other.type.length_mm,
        alike_pct: roundTo(100 * handLikeness(at.type, other.type), 1),
        pairs: swaps.length,
      });
    });
}
