import type { ShopRow } from "@pinwright/book";
import type { CutPart } from "@pinwright/kernel";
import type { CutArea, CutPieceOf, PlacedPanel } from "../../model/index.ts";

/** A cut of one sheet before the order of cutting is known. */
export interface SheetNode {
  readonly kind: "trim" | "rip" | "cross";
  readonly fenceMm: number;
  readonly line: readonly [number, number, number, number];
  /** Place of the cut that must be made before; −1: none. */
  readonly after: number;
  /** Places among `panels` of those that are done with it. */
  readonly done: readonly number[];
}

/** A panel's place; what it becomes is told later. */
export interface PieceArea extends CutArea {
  readonly piece: number;
  readonly turned: boolean;
}

/** What becomes of a sheet. */
export interface SheetLayout {
  readonly panels: readonly PieceArea[];
  readonly offcuts: readonly CutArea[];
  readonly nodes: readonly SheetNode[];
}

/** Rounds away the noise of sums of lengths: 1 µm. */
const exact = (mm: number): number => Math.round(mm * 1000) / 1000 + 0;

/**
 * Places of panels, offcuts worth keeping and cuts of one sheet. An edge is trimmed before everything else; the two edges
 * that the fence is not set from are trimmed only where a panel reaches them: what else lies there is waste, or an offcut
 * that keeps its old edge.
 */
export function layOut(
  stock: ShopRow<"stock_sheets">,
  part: CutPart,
  kerfMm: number,
  offcutMinMm: number,
): SheetLayout {
  return new Layout(stock, kerfMm, offcutMinMm).of(part);
}

class Layout {
  readonly #whole: CutArea;
  readonly #inside: CutArea;
  readonly #trimMm: number;
  readonly #kerfMm: number;
  readonly #offcutMinMm: number;
  readonly #panels: PieceArea[] = [];
  readonly #offcuts: CutArea[] = [];
  readonly #nodes: SheetNode[] = [];
  /** Far edges of the sheet as it is cut up, trimmed or not. */
  #farMm = { x: 0, y: 0 };

  constructor(stock: ShopRow<"stock_sheets">, kerfMm: number, offcutMinMm: number) {
    const { length_mm: widthMm, width_mm: heightMm, trim_mm } = stock;
    this.#trimMm = trim_mm;
    this.#kerfMm = kerfMm;
    this.#offcutMinMm = offcutMinMm;
    this.#whole = { xMm: 0, yMm: 0, widthMm, heightMm };
    this.#inside = {
      xMm: trim_mm,
      yMm: trim_mm,
      widthMm: exact(widthMm - 2 * trim_mm),
      heightMm: exact(heightMm - 2 * trim_mm),
    };
  }

  of(part: CutPart): SheetLayout {
    const reaches = this.#reaches(part, this.#inside);
    const root = this.#trimMm > 0 ? this.#trims(reaches) : -1;
    const { widthMm, heightMm } = this.#whole;
    this.#farMm = {
      x: reaches.x ? exact(widthMm - this.#trimMm) : widthMm,
      y: reaches.y ? exact(heightMm - this.#trimMm) : heightMm,
    };
    this.#visit(part, this.#inside, root);
    return { panels: this.#panels, offcuts: this.#offcuts, nodes: this.#nodes };
  }

  /** Whether a panel lies at the far edge, in x and in y. */
  #reaches(part: CutPart, area: CutArea): { readonly x: boolean; readonly y: boolean } {
    if (part.kind === "waste") return { x: false, y: false };
    if (part.kind === "piece") {
      const { xMm, yMm, widthMm, heightMm } = this.#inside;
      return {
        x: exact(area.xMm + area.widthMm) >= exact(xMm + widthMm),
        y: exact(area.yMm + area.heightMm) >= exact(yMm + heightMm),
      };
    }
    const [first, rest] = this.#parts(part, area);
    const a = this.#reaches(part.first, first);
    const b = rest === null ? { x: false, y: false } : this.#reaches(part.rest, rest);
    return { x: a.x || b.x, y: a.y || b.y };
  }

  #trims(reaches: { readonly x: boolean; readonly y: boolean }): number {
    const { widthMm: w, heightMm: h } = this.#whole;
    const t = this.#trimMm;
    const half = this.#kerfMm / 2;
    const add = (fenceMm: number, line: SheetNode["line"]): void => {
      const after = this.#nodes.length - 1;
      this.#nodes.push({ kind: "trim", fenceMm: exact(fenceMm), line, after, done: [] });
    };
    add(h - t, [0, t - half, w, t - half]);
    if (reaches.y) add(h - 2 * t, [0, h - t + half, w, h - t + half]);
    const top = reaches.y ? h - t : h;
    add(w - t, [t - half, t, t - half, top]);
    if (reaches.x) add(w - 2 * t, [w - t + half, t, w - t + half, top]);
    return this.#nodes.length - 1;
  }

  #visit(part: CutPart, area: CutArea, after: number): void {
    if (part.kind === "waste") {
      if (Math.min(area.widthMm, area.heightMm) >= this.#offcutMinMm) this.#offcuts.push(area);
      return;
    }
    if (part.kind === "piece") {
      this.#panels.push({ ...area, piece: part.piece, turned: part.turned });
      return;
    }
    const at = this.#nodes.length;
    const [first, rest] = this.#parts(part, area);
    const half = this.#kerfMm / 2;
    const x = exact(area.xMm + part.atMm + half);
    const y = exact(area.yMm + part.atMm + half);
    const far = this.#farOf(area);
    const line: SheetNode["line"] = part.cut === "rip" ? [area.xMm, y, far.x, y] : [x, area.yMm, x, far.y];
    const done: number[] = [];
    this.#nodes.push({ kind: part.cut, fenceMm: part.atMm, line, after, done });
    for (const [own, inside] of [
      [part.first, first],
      [part.rest, rest],
    ] as const) {
      if (inside === null) continue;
      if (own.kind === "piece") done.push(this.#panels.length);
      this.#visit(own, inside, at);
    }
  }

  /** Far corner of a part on the saw: it reaches to the old edge of its sheet where that is not trimmed. */
  #farOf(area: CutArea): { readonly x: number; readonly y: number } {
    const { xMm, yMm, widthMm, heightMm } = this.#inside;
    const [x, y] = [exact(area.xMm + area.widthMm), exact(area.yMm + area.heightMm)];
    return {
      x: x >= exact(xMm + widthMm) ? this.#farMm.x : x,
      y: y >= exact(yMm + heightMm) ? this.#farMm.y : y,
    };
  }

  #parts(part: CutPart & { readonly kind: "cut" }, area: CutArea): readonly [CutArea, CutArea | null] {
    const rip = part.cut === "rip";
    const along = rip ? area.heightMm : area.widthMm;
    const from = exact(part.atMm + this.#kerfMm);
    const left = exact(along - from);
    const first = rip ? { ...area, heightMm: part.atMm } : { ...area, widthMm: part.atMm };
    if (left <= 0) return [first, null];
    const rest = rip
      ? { ...area, yMm: exact(area.yMm + from), heightMm: left }
      : { ...area, xMm: exact(area.xMm + from), widthMm: left };
    return [first, rest];
  }
}

/** Gives every place the next panel of its size; alike sheets take as many as they hold together. */
export class PanelNames {
  readonly #pieces: readonly CutPieceOf[];
  readonly #given: number[];

  constructor(pieces: readonly CutPieceOf[]) {
    this.#pieces = pieces;
    this.#given = pieces.map(() => 0);
  }

  name(areas: readonly PieceArea[], copies: number): readonly PlacedPanel[] {
    const here = this.#pieces.map(() => 0);
    const named = areas.map(({ piece, turned, ...area }): PlacedPanel => {
      const ids = this.#pieces[piece]?.panelIds ?? [];
      const nth = (this.#given[piece] ?? 0) + (here[piece] ?? 0);
      here[piece] = (here[piece] ?? 0) + 1;
      return { ...area, turned, panelId: ids[nth % ids.length] ?? "", panelIds: ids, copy: nth + 1 };
    });
    here.forEach((n, piece) => {
      this.#given[piece] = (this.#given[piece] ?? 0) + n * copies;
    });
    return named;
  }
}
