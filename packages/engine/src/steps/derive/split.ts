import { type BoxMm, compareText } from "@pinwright/kernel";

/** Something with a place that counts for so many fasteners. */
export interface Spot {
  readonly id: string;
  readonly xMm: number;
  readonly yMm: number;
  readonly weight: number;
}

/** Spots that lie near each other. The path tells which halves of the panel they lie in: blank for all of it. */
export interface Patch {
  readonly path: string;
  readonly ids: readonly string[];
}

/** So often a panel is halved; what still lies together is dealt out by id. */
const MOST_HALVINGS = 10;

/**
 * Patches of a panel that hold no more than `most` each, as long as one spot alone does not. The panel is halved across
 * its longer extent, and each half that holds too much again: where a patch ends depends on the panel alone, so a spot
 * that is added or moved changes no patch but its own.
 */
export function patchesOf(spots: readonly Spot[], area: BoxMm, most: number): readonly Patch[] {
  return halve([...spots].sort(byId), area, most, "", 0);
}

const byId = (a: Spot, b: Spot): number => compareText(a.id, b.id);
const weightOf = (spots: readonly Spot[]): number => spots.reduce((sum, spot) => sum + spot.weight, 0);
const joined = (path: string, part: number): string => (path === "" ? `${part}` : `${path}.${part}`);

function halve(
  spots: readonly Spot[],
  area: BoxMm,
  most: number,
  path: string,
  depth: number,
): readonly Patch[] {
  if (spots.length === 0) return [];
  if (spots.length === 1 || weightOf(spots) <= most) return [{ path, ids: spots.map(({ id }) => id) }];
  if (depth === MOST_HALVINGS) return dealt(spots, most, path);
  const isWide = area.maxXMm - area.minXMm > area.maxYMm - area.minYMm;
  const middle = isWide ? (area.minXMm + area.maxXMm) / 2 : (area.minYMm + area.maxYMm) / 2;
  const isNear = (spot: Spot): boolean => (isWide ? spot.xMm : spot.yMm) < middle;
  const near = isWide ? { ...area, maxXMm: middle } : { ...area, maxYMm: middle };
  const far = isWide ? { ...area, minXMm: middle } : { ...area, minYMm: middle };
  return [
    ...halve(spots.filter(isNear), near, most, joined(path, 1), depth + 1),
    ...halve(
      spots.filter((spot) => !isNear(spot)),
      far,
      most,
      joined(path, 2),
      depth + 1,
    ),
  ];
}

/** Spots on top of each other, so many at a time. */
function dealt(spots: readonly Spot[], most: number, path: string): readonly Patch[] {
  const hands: Spot[][] = [];
  for (const spot of spots) {
    const hand = hands.at(-1);
    if (hand === undefined || weightOf(hand) + spot.weight > most) hands.push([spot]);
    else hand.push(spot);
  }
  return hands.map((hand, i) => ({ path: joined(path, i + 1), ids: hand.map(({ id }) => id) }));
}
