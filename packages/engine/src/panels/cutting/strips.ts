import type { CutKind, CutPart, CutPiece } from "@pinwright/kernel";

/** A piece as it may lie in a strip, kerf added to both lengths, in whole units. */
export interface LyingPiece {
  readonly piece: number;
  readonly turned: boolean;
  readonly w: number;
  readonly h: number;
}

/** Pieces side by side in a strip that is as high as one piece would lie, mostly one of them. */
export interface Strip {
  readonly like: LyingPiece;
  readonly pieces: readonly LyingPiece[];
}

/** A way of cutting one sheet: strips, in each strip pieces side by side, each trimmed to its own height. */
export interface StripPattern {
  readonly sheet: number;
  /** Cuts that part the strips. */
  readonly firstCut: CutKind;
  readonly strips: readonly Strip[];
  /** How many of each piece come out. */
  readonly counts: readonly number[];
  readonly value: number;
}

/** The sheet of a pricing problem, kerf added to both lengths. */
export interface StripSheet {
  readonly sheet: number;
  readonly w: number;
  readonly h: number;
}

/** What a pattern of strips may be. */
export interface StripRules {
  /** Cuts that may part the strips. */
  readonly firstCuts: readonly CutKind[];
  /** Whether strips may be trimmed in a third stage; without it a strip holds pieces of one height. */
  readonly trims: boolean;
  /** Rank of every length in the order in which the fence is set: no cut waits for one of a later rank. Null: any. */
  readonly ranks: ReadonlyMap<number, number> | null;
}

/** Whether a piece may lie in a strip of some height: by its own height, and by the order of the fence. */
export function mayLie(
  alongLength: number,
  acrossLength: number,
  stripHeight: number,
  { trims, ranks }: StripRules,
): boolean {
  if (trims ? acrossLength > stripHeight : acrossLength !== stripHeight) return false;
  if (ranks === null) return true;
  const rank = (length: number): number => ranks.get(length) ?? 0;
  return (
    rank(stripHeight) <= rank(alongLength) &&
    (acrossLength === stripHeight || rank(alongLength) <= rank(acrossLength))
  );
}

/**
 * A strip for pieces, as high as the highest of them; where that breaks the order of the fence, as high as the strip was
 * made for.
 */
export function stripOf(
  pieces: readonly LyingPiece[],
  made: LyingPiece,
  along: (way: LyingPiece) => number,
  across: (way: LyingPiece) => number,
  rules: StripRules,
): Strip {
  const like = pieces.reduce((high, way) => (across(way) > across(high) ? way : high), pieces[0] ?? made);
  const keeps = pieces.every((way) => mayLie(along(way), across(way), across(like), rules));
  return { like: keeps ? like : made, pieces };
}

/**
 * Most value from one sheet in two stages with trimming (rip, cross, trim, or cross, rip, trim), any number of copies:
 * exact, by a knapsack for each height of strip and one over the strips (P. C. Gilmore, R. E. Gomory, Operations Research
 * 13 (1965) 94–120).
 * @param within the sheets, and what a pattern may be
 */
export function bestStrips(
  ways: readonly LyingPiece[],
  values: readonly number[],
  within: StripRules & { readonly sheets: readonly StripSheet[] },
): StripPattern | null {
  let best: StripPattern | null = null;
  for (const sheet of within.sheets) {
    for (const firstCut of within.firstCuts) {
      const found = inDirection(ways, values, sheet, firstCut, within);
      if (found !== null && (best === null || found.value > best.value + 1e-9)) best = found;
    }
  }
  return best;
}

function inDirection(
  ways: readonly LyingPiece[],
  values: readonly number[],
  { sheet, w, h }: StripSheet,
  firstCut: CutKind,
  rules: StripRules,
): StripPattern | null {
  const rip = firstCut === "rip";
  const along = ({ w: x, h: y }: LyingPiece): number => (rip ? x : y);
  const across = ({ w: x, h: y }: LyingPiece): number => (rip ? y : x);
  const [length, width] = rip ? [w, h] : [h, w];
  const fitting = ways.filter((way) => along(way) <= length && across(way) <= width);
  const heights = [...new Set(fitting.map(across))].sort((a, b) => a - b);
  const strips = heights.map((high) => {
    const own = fitting.filter((way) => mayLie(along(way), across(way), high, rules));
    const filled = knapsack(
      own.map((way) => ({ length: along(way), value: values[way.piece] ?? 0 })),
      length,
    );
    const pieces = filled.taken.flatMap((i) => own[i] ?? []);
    return { high, value: filled.value, pieces };
  });
  const chosen = knapsack(
    strips.map(({ high, value }) => ({ length: high, value })),
    width,
  );
  if (chosen.value <= 0) return null;
  const rows = chosen.taken.flatMap((i): Strip[] => {
    const { high = 0, pieces = [] } = strips[i] ?? {};
    const made = fitting.find((way) => across(way) === high);
    return pieces.length === 0 || made === undefined ? [] : [stripOf(pieces, made, along, across, rules)];
  });
  const counts = values.map(() => 0);
  for (const way of rows.flatMap(({ pieces }) => pieces)) counts[way.piece] = (counts[way.piece] ?? 0) + 1;
  const ordered = inOrder(rows, along, across, rules);
  return { sheet, firstCut, strips: ordered, counts, value: chosen.value };
}

/**
 * Strips and the pieces in them as they are cut off one after another: in the order of the fence where there is one, for
 * each waits for the one before; else the highest first, so that what is cut off above the others lies together.
 */
export function inOrder(
  strips: readonly Strip[],
  along: (way: LyingPiece) => number,
  across: (way: LyingPiece) => number,
  { ranks }: StripRules,
): readonly Strip[] {
  const rank = (length: number): number => ranks?.get(length) ?? 0;
  const high = ({ like }: Strip): number => across(like);
  const sorted = strips.map(({ like, pieces }) => ({
    like,
    pieces: [...pieces].sort(
      (a, b) => rank(along(a)) - rank(along(b)) || across(b) - across(a) || along(b) - along(a),
    ),
  }));
  return sorted.sort((a, b) => rank(high(a)) - rank(high(b)) || high(b) - high(a));
}

/**
 * Things of most value in a length, any number of each: dynamic programme over the sums of lengths that can be reached.
 * Which things, by their place, each as often as it is taken.
 */
function knapsack(
  things: readonly { readonly length: number; readonly value: number }[],
  room: number,
): { readonly value: number; readonly taken: readonly number[] } {
  const points = reachable(
    things.map(({ length }) => length),
    room,
  );
  const place = new Map(points.map((point, i) => [point, i] as const));
  const best = new Float64Array(points.length);
  const last = new Int32Array(points.length).fill(-1);
  for (let p = 0; p < points.length; p++) {
    things.forEach(({ length, value }, i) => {
      const before = place.get((points[p] ?? 0) - length);
      if (before === undefined) return;
      const sum = (best[before] ?? 0) + value;
      if (sum > (best[p] ?? 0) + 1e-12) {
        best[p] = sum;
        last[p] = i;
      }
    });
  }
  let at = best.indexOf(Math.max(...best));
  const value = best[at] ?? 0;
  const taken: number[] = [];
  while (at >= 0 && (last[at] ?? -1) >= 0) {
    const i = last[at] ?? -1;
    taken.push(i);
    at = place.get((points[at] ?? 0) - (things[i]?.length ?? 0)) ?? -1;
  }
  return { value, taken };
}

/** Sums of lengths up to a room, ascending, from 0. */
function reachable(lengths: readonly number[], room: number): readonly number[] {
  const found = new Set([0]);
  const queue = [0];
  const steps = [...new Set(lengths)].filter((length) => length > 0);
  for (let sum = queue.pop(); sum !== undefined; sum = queue.pop()) {
    for (const step of steps) {
      const next = sum + step;
      if (next > room || found.has(next)) continue;
      found.add(next);
      queue.push(next);
    }
  }
  return [...found].sort((a, b) => a - b);
}

/**
 * The cuts of a pattern: strip by strip, then piece by piece, then trimmed.
 * @param inside width and height of the sheet inside its trim, mm
 */
export function partOfStrips(
  { firstCut, strips }: StripPattern,
  pieces: readonly Omit<CutPiece, "count">[],
  inside: { readonly widthMm: number; readonly heightMm: number },
  kerfMm: number,
): CutPart {
  const rip = firstCut === "rip";
  const size = (way: LyingPiece): { along: number; across: number } => {
    const { widthMm = 0, heightMm = 0 } = pieces[way.piece] ?? {};
    const [x, y] = way.turned ? [heightMm, widthMm] : [widthMm, heightMm];
    return rip ? { along: x, across: y } : { along: y, across: x };
  };
  const second: CutKind = rip ? "cross" : "rip";
  const inStrip = (row: readonly LyingPiece[], highMm: number, lengthMm: number): CutPart =>
    chain(
      row.map((way) => {
        const { along, across } = size(way);
        const leaf: CutPart = { kind: "piece", piece: way.piece, turned: way.turned };
        return { mm: along, part: chain([{ mm: across, part: leaf }], firstCut, highMm, kerfMm) };
      }),
      second,
      lengthMm,
      kerfMm,
    );
  const [widthMm, lengthMm] = rip ? [inside.heightMm, inside.widthMm] : [inside.widthMm, inside.heightMm];
  return chain(
    strips.map(({ like, pieces: row }) => {
      const highMm = size(like).across;
      return { mm: highMm, part: inStrip(row, highMm, lengthMm) };
    }),
    firstCut,
    widthMm,
    kerfMm,
  );
}

/** Rounds away the noise of sums of lengths: 1 µm. */
const exact = (mm: number): number => Math.round(mm * 1000) / 1000;

/** Parts cut off one after another; what is left is waste. A part that fills what is left needs no cut. */
function chain(
  parts: readonly { readonly mm: number; readonly part: CutPart }[],
  cut: CutKind,
  roomMm: number,
  kerfMm: number,
): CutPart {
  const [first, ...others] = parts;
  if (first === undefined) return { kind: "waste" };
  if (exact(roomMm - first.mm) <= 0) return first.part;
  const rest = chain(others, cut, Math.max(0, exact(roomMm - first.mm - kerfMm)), kerfMm);
  return { kind: "cut", cut, atMm: first.mm, first: first.part, rest };
}
