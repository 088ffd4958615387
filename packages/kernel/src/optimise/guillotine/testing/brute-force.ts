import type { CutKind, CuttingRules } from "../problem.ts";

/** A single piece of whole lengths. */
export interface Single {
  readonly width: number;
  readonly height: number;
  readonly mayTurn: boolean;
}

/**
 * Whether pieces can be cut from a sheet, found by trying every cut at every whole position and every division of the
 * pieces: from the definition alone, for a few pieces and short lengths.
 */
const canCut = (pieces: readonly Single[], width: number, height: number, rules: CuttingRules): boolean => {
  const known = new Map<string, boolean>();
  const { kerfMm, stages, firstCut, lastTrim } = rules;

  const exactly = (set: number, w: number, h: number): boolean => {
    const piece = pieces[Math.log2(set)];
    if (piece === undefined) return false;
    return (
      (piece.width === w && piece.height === h) || (piece.mayTurn && piece.height === w && piece.width === h)
    );
  };

  const stageOf = (cut: CutKind, stage: number, along: CutKind | null): number => {
    if (along !== null) return cut === along ? stage : stage + 1;
    return firstCut === "either" || firstCut === cut ? 1 : 2;
  };

  const part = (set: number, w: number, h: number, stage: number, along: CutKind | null): boolean => {
    if (set === 0) return true;
    if (w <= 0 || h <= 0) return false;
    if (exactly(set, w, h)) return true;
    const key = `${set} ${w} ${h} ${stage} ${along}`;
    const before = known.get(key);
    if (before !== undefined) return before;
    const found = (["rip", "cross"] as const).some((cut) =>
      divided(set, w, h, stageOf(cut, stage, along), cut),
    );
    known.set(key, found);
    return found;
  };

  const divided = (set: number, w: number, h: number, stage: number, cut: CutKind): boolean => {
    if (stages !== null && stage > stages + (lastTrim ? 1 : 0)) return false;
    const trimOnly = stages !== null && stage > stages;
    const length = cut === "rip" ? h : w;
    for (let at = 1; at < length; at++) {
      const rest = length - at - kerfMm;
      const [first, second] =
        cut === "rip" ? [[w, at] as const, [w, rest] as const] : [[at, h] as const, [rest, h] as const];
      if (trimOnly) {
        if (exactly(set, first[0], first[1]) || exactly(set, second[0], second[1])) return true;
        continue;
      }
      for (let one = set; ; one = (one - 1) & set) {
        const other = set & ~one;
        const useful = one !== set || rest < length;
        if (
          useful &&
          part(one, first[0], first[1], stage, cut) &&
          part(other, second[0], second[1], stage, cut)
        )
          return true;
        if (one === 0) break;
      }
    }
    return false;
  };
  return part((1 << pieces.length) - 1, width, height, 0, null);
};

/** Fewest equal sheets for all pieces; infinite when one doesn't fit. */
export const fewestByBruteForce = (
  pieces: readonly Single[],
  width: number,
  height: number,
  rules: CuttingRules,
): number => {
  const all = (1 << pieces.length) - 1;
  const members = (set: number): Single[] => pieces.filter((_, i) => (set >> i) & 1);
  const fits = Array.from({ length: all + 1 }, (_, set) => canCut(members(set), width, height, rules));
  const need = new Array<number>(all + 1).fill(Number.POSITIVE_INFINITY);
  need[0] = 0;
  for (let set = 1; set <= all; set++) {
    for (let one = set; one > 0; one = (one - 1) & set) {
      if (fits[one] === true) need[set] = Math.min(need[set] ?? 0, 1 + (need[set & ~one] ?? 0));
    }
  }
  return need[all] ?? 0;
};

/** Most value of the pieces that can be cut from one sheet. */
export const mostValueByBruteForce = (
  pieces: readonly (Single & { readonly value: number })[],
  width: number,
  height: number,
  rules: CuttingRules,
): number => {
  let best = 0;
  for (let set = 1; set < 1 << pieces.length; set++) {
    const chosen = pieces.filter((_, i) => (set >> i) & 1);
    const value = chosen.reduce((sum, piece) => sum + piece.value, 0);
    if (value > best && canCut(chosen, width, height, rules)) best = value;
  }
  return best;
};
