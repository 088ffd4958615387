import type { SheetCut, SheetCutting } from "../../model/index.ts";

/** A rectangle of wood on the bench, in the frame of its sheet. */
interface Wood {
  readonly x0: number;
  readonly y0: number;
  readonly x1: number;
  readonly y1: number;
}

/** What a sheet has become. */
interface Sawn {
  readonly parts: readonly Wood[];
  /** What the cutter could not do, in words. */
  readonly faults: readonly string[];
}

const TOLERANCE_MM = 0.002;
const near = (a: number, b: number): boolean => Math.abs(a - b) <= TOLERANCE_MM;

/**
 * Saws one sheet as its list of cuts says, cut by cut, knowing nothing of how the plan was made: each cut must run through
 * exactly one part from edge to edge, and one side of it must be as long as the fence is set. Written apart from the
 * planner, from what a table saw can do.
 */
function saw(sheet: SheetCut, kerfMm: number): Sawn {
  const faults: string[] = [];
  let parts: Wood[] = [{ x0: 0, y0: 0, x1: sheet.widthMm, y1: sheet.heightMm }];
  let setup = 0;
  for (const cut of sheet.cuts) {
    const [ax, ay, bx, by] = cut.line;
    const rip = near(ay, by);
    if (!rip && !near(ax, bx)) faults.push(`cut ${cut.number} is askew`);
    if (cut.setup < setup) faults.push(`cut ${cut.number} goes back to an earlier setting`);
    setup = cut.setup;
    const whole = parts
      .filter((part) =>
        rip
          ? ay > part.y0 - kerfMm &&
            ay < part.y1 + kerfMm &&
            near(part.x0, Math.min(ax, bx)) &&
            near(part.x1, Math.max(ax, bx))
          : ax > part.x0 - kerfMm &&
            ax < part.x1 + kerfMm &&
            near(part.y0, Math.min(ay, by)) &&
            near(part.y1, Math.max(ay, by)),
      )
      .filter((part) =>
        rip ? ay > part.y0 && ay - kerfMm / 2 < part.y1 : ax > part.x0 && ax - kerfMm / 2 < part.x1,
      );
    const [part, ...others] = whole;
    if (part === undefined || others.length > 0) {
      faults.push(`cut ${cut.number} runs through ${whole.length} parts`);
      continue;
    }
    const at = rip ? ay : ax;
    const [low, high] = rip ? [part.y0, part.y1] : [part.x0, part.x1];
    const first = at - kerfMm / 2 - low;
    const rest = high - at - kerfMm / 2;
    if (!near(first, cut.fenceMm) && !near(rest, cut.fenceMm))
      faults.push(`cut ${cut.number} gives ${first} and ${rest}, the fence stands at ${cut.fenceMm}`);
    parts = parts.filter((other) => other !== part);
    if (first > TOLERANCE_MM) parts.push(rip ? { ...part, y1: low + first } : { ...part, x1: low + first });
    if (rest > TOLERANCE_MM) parts.push(rip ? { ...part, y0: high - rest } : { ...part, x0: high - rest });
  }
  return { parts, faults };
}

/** What is wrong with a whole cutting: every part that is called a panel or an offcut must have come off the saw. */
export function sawnFaults(cutting: SheetCutting, kerfMm: number): readonly string[] {
  const faults: string[] = [];
  const got = new Map<string, number>();
  for (const sheet of cutting.sheets) {
    const { parts, faults: own } = saw(sheet, kerfMm);
    faults.push(...own);
    const find = (area: { xMm: number; yMm: number; widthMm: number; heightMm: number }): boolean =>
      parts.some(
        (part) =>
          near(part.x0, area.xMm) &&
          near(part.y0, area.yMm) &&
          near(part.x1, area.xMm + area.widthMm) &&
          near(part.y1, area.yMm + area.heightMm),
      );
    for (const panel of sheet.panels) {
      if (!find(panel)) faults.push(`${panel.panelId} did not come off ${sheet.stockId}`);
      const piece = cutting.pieces.findIndex(({ panelIds }) => panelIds === panel.panelIds);
      const { widthMm = 0, heightMm = 0, mayTurn = false } = cutting.pieces[piece] ?? {};
      const [w, h] = panel.turned ? [heightMm, widthMm] : [widthMm, heightMm];
      if (!near(w, panel.widthMm) || !near(h, panel.heightMm))
        faults.push(`${panel.panelId} has another size`);
      if (panel.turned && !mayTurn) faults.push(`${panel.panelId} lies across its grain`);
      got.set(`${piece}`, (got.get(`${piece}`) ?? 0) + sheet.copies);
    }
    for (const offcut of sheet.offcuts) {
      // An offcut keeps the edge of its sheet where nothing was trimmed.
      const inside = parts.some(
        (part) =>
          part.x0 <= offcut.xMm + TOLERANCE_MM &&
          part.y0 <= offcut.yMm + TOLERANCE_MM &&
          part.x1 >= offcut.xMm + offcut.widthMm - TOLERANCE_MM &&
          part.y1 >= offcut.yMm + offcut.heightMm - TOLERANCE_MM,
      );
      if (!inside) faults.push(`an offcut of ${sheet.stockId} did not come off`);
    }
    const done = sheet.cuts.flatMap(({ doneIds }) => doneIds).length;
    if (done > sheet.panels.length) faults.push(`${sheet.stockId}: more done than panels`);
  }
  cutting.pieces.forEach(({ count }, piece) => {
    if ((got.get(`${piece}`) ?? 0) !== count)
      faults.push(`${got.get(`${piece}`)} of piece ${piece}, wanted ${count}`);
  });
  return faults;
}
