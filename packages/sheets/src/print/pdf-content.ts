import { type CodeSquares, codeBoxes, codeSquares } from "../compose/code.ts";
import { INK_COLOURS } from "../compose/colours.ts";
import { LINE } from "../compose/draw.ts";
import { hatchLines } from "../compose/hatch.ts";
import type {
  ArcMark,
  CodeMark,
  Ink,
  Leaf,
  Mark,
  Page,
  PagePoint,
  Stroke,
  TextMark,
} from "../compose/mark.ts";
import { emMm, type FontName, runsOf, textWidthMm } from "../compose/text.ts";
import { PdfFont } from "./pdf-font.ts";
import type { Marking, Owner } from "./pdf-marking.ts";
import type { StructureElement } from "./pdf-structure.ts";

export const POINTS_A_MM = 72 / 25.4;

/** A number as PDF writes it, to four decimals. */
export function n(value: number): string {
  return String(Math.round(value * 1e4) / 1e4 + 0);
}

/** A length in whole micrometres, which pages are drawn in: short to write and finer than any printer. */
const um = (mm: number): string => String(Math.round(mm * 1000) + 0);

/** A part of a direction, finer than a length: a long text must not lean by rounding. */
const direction = (part: number): string => String(Math.round(part * 1e6) / 1e6 + 0);

const xy = (xMm: number, yMm: number): string => `${um(xMm)} ${um(yMm)}`;

/** sRGB as three parts of one. */
function colour(ink: Ink): string {
  const hex = INK_COLOURS[ink];
  return [1, 3, 5].map((i) => n(Number.parseInt(hex.slice(i, i + 2), 16) / 255)).join(" ");
}

const INKS: Readonly<Record<Ink, string>> = {
  ink: colour("ink"),
  accent: colour("accent"),
  faint: colour("faint"),
  tint: colour("tint"),
  paper: colour("paper"),
};

/** What pen, brush and font are set to on a page. */
interface Setting {
  widthMm: number | undefined;
  ink: Ink | undefined;
  dashMm: readonly number[] | undefined;
  fill: Ink | undefined;
  /** Font and lettering height. */
  font: FontName | undefined;
  heightMm: number | undefined;
}

const UNSET: Readonly<Setting> = {
  widthMm: undefined,
  ink: undefined,
  dashMm: undefined,
  fill: undefined,
  font: undefined,
  heightMm: undefined,
};

/** What pages of a document share: the fonts, and the codes, which are drawn once and shown on every page. */
export class PdfResources {
  readonly fonts = new Map<FontName, PdfFont>();
  /** Codes by their text: the name that pages call them by, and what they draw in a square of 1 × 1. */
  readonly codes = new Map<string, { readonly name: string; readonly content: string }>();

  font(name: FontName): PdfFont {
    const known = this.fonts.get(name) ?? new PdfFont(name);
    this.fonts.set(name, known);
    return known;
  }

  codeName(text: string): string {
    const known = this.codes.get(text);
    if (known !== undefined) return known.name;
    const squares: CodeSquares = codeSquares(text);
    // In whole modules: thousandths of the square would leave hair lines between rows.
    const boxes = codeBoxes(squares, { xMm: 0, yMm: 0 }, squares.modules);
    const paths = boxes.map((b) => `${n(b.xMm)} ${n(b.yMm)} ${n(b.widthMm)} ${n(b.heightMm)} re`);
    const scale = (1 / squares.modules).toFixed(9);
    const name = `C${this.codes.size + 1}`;
    this.codes.set(text, { name, content: `${scale} 0 0 ${scale} 0 0 cm\n${paths.join("\n")}\nf` });
    return name;
  }
}

/** Writes the marks of one page as operators (PDF 1.7, 8.4, 8.5 and 9.4), in micrometres with y down. */
class ContentWriter {
  readonly #resources: PdfResources;
  readonly #out: string[] = [];
  readonly #set: Setting = { ...UNSET };
  readonly #marking: Marking;
  readonly #page: number;
  /** Where the origin of the group that is drawn now lies. */
  #dx = 0;
  #dy = 0;
  /** What the marked content that is open now belongs to: nothing that is read is `null`, none open is `undefined`. */
  #open: StructureElement | null | undefined = undefined;

  constructor(resources: PdfResources, marking: Marking, page: number) {
    this.#resources = resources;
    this.#marking = marking;
    this.#page = page;
  }

  content(page: Page): string {
    const { heightMm, marks } = page;
    const scale = POINTS_A_MM.toFixed(9);
    // In two steps: readers keep about five decimals of a number (PDF 1.7, annex C).
    this.#out.push(`${scale} 0 0 -${scale} 0 ${n(heightMm * POINTS_A_MM)} cm .001 0 0 .001 0 0 cm 1 J 1 j`);
    this.#draw(marks, this.#marking.ofPage(page, this.#page));
    this.#close();
    return this.#out.join("\n");
  }

  /** Ends the marked content that is open. */
  #close(): void {
    if (this.#open !== undefined) this.#out.push("EMC");
    this.#open = undefined;
  }

  /** Begins marked content of an element, or of nothing that is read (ISO 32000-1, 14.7.4 and 14.8.2.2). */
  #begin(element: StructureElement | null): void {
    if (this.#open === element) return;
    this.#close();
    this.#out.push(
      element === null
        ? "/Artifact BMC"
        : `/${element.type}<</MCID ${this.#marking.structure.content(this.#page, element)}>>BDC`,
    );
    this.#open = element;
  }

  #draw(marks: readonly Mark[], owners: readonly Owner[]): void {
    marks.forEach((mark, i) => {
      const owner = owners[i] ?? { kind: "loose" };
      if (mark.kind !== "group") {
        this.#begin(this.#marking.elementOf(mark, owner));
        this.#leaf(mark);
        return;
      }
      const set = mark.clip === null ? null : { ...this.#set };
      const dx = this.#dx;
      const dy = this.#dy;
      if (mark.clip !== null) {
        this.#close();
        this.#out.push("q");
        this.#rect(mark.clip.xMm, mark.clip.yMm, mark.clip.widthMm, mark.clip.heightMm);
        this.#out.push("W n");
      }
      this.#dx += mark.dxMm;
      this.#dy += mark.dyMm;
      const inner = this.#marking.enter(mark, owner, this.#page, this.#dx, this.#dy);
      this.#draw(mark.marks, this.#marking.within(mark.marks, inner));
      this.#dx = dx;
      this.#dy = dy;
      if (set !== null) {
        this.#close();
        this.#out.push("Q");
        Object.assign(this.#set, set);
      }
    });
  }

  /** Sets the pen, leaving out what it is set to already: half of a page would be repeated settings else. */
  #pen(stroke: Stroke): void {
    const set = this.#set;
    if (set.widthMm !== stroke.widthMm) this.#out.push(`${um(stroke.widthMm)} w`);
    if (set.ink !== stroke.ink) this.#out.push(`${INKS[stroke.ink]} RG`);
    if (set.dashMm !== stroke.dashMm) this.#out.push(`[${(stroke.dashMm ?? []).map(um).join(" ")}] 0 d`);
    set.widthMm = stroke.widthMm;
    set.ink = stroke.ink;
    set.dashMm = stroke.dashMm;
  }

  #brush(fill: Ink): void {
    if (this.#set.fill === fill) return;
    this.#out.push(`${INKS[fill]} rg`);
    this.#set.fill = fill;
  }

  /** Draws a path and paints it: settings come before, for none may stand inside a path. */
  #paint(stroke: Stroke | null, fill: Ink | null, path: () => void): void {
    if (stroke !== null) this.#pen(stroke);
    if (fill !== null) this.#brush(fill);
    path();
    this.#out.push(stroke === null ? "f" : fill === null ? "S" : "B");
  }

  #rect(xMm: number, yMm: number, widthMm: number, heightMm: number): void {
    this.#out.push(`${xy(xMm + this.#dx, yMm + this.#dy)} ${xy(widthMm, heightMm)} re`);
  }

  #path(points: readonly PagePoint[], closed: boolean): void {
    let path = "";
    points.forEach((p, i) => {
      path += `${xy(p.xMm + this.#dx, p.yMm + this.#dy)} ${i === 0 ? "m" : "l"} `;
    });
    this.#out.push(closed ? `${path}h` : path);
  }

  /** Arc as cubic Bézier curves of at most 45°, within 1e-5 of the radius of a true arc. */
  #arc(mark: Pick<ArcMark, "at" | "radiusMm" | "fromDeg" | "toDeg">): void {
    const { radiusMm, fromDeg, toDeg } = mark;
    const x = mark.at.xMm + this.#dx;
    const y = mark.at.yMm + this.#dy;
    const parts = Math.max(1, Math.ceil(Math.abs(toDeg - fromDeg) / 45));
    const step = (((toDeg - fromDeg) / parts) * Math.PI) / 180;
    const k = (4 / 3) * Math.tan(step / 4);
    let angle = (fromDeg * Math.PI) / 180;
    let path = `${xy(x + radiusMm * Math.cos(angle), y - radiusMm * Math.sin(angle))} m`;
    for (let i = 0; i < parts; i++) {
      const c0 = radiusMm * Math.cos(angle);
      const s0 = radiusMm * Math.sin(angle);
      angle += step;
      const c1 = radiusMm * Math.cos(angle);
      const s1 = radiusMm * Math.sin(angle);
      path += ` ${xy(x + c0 - k * s0, y - s0 - k * c0)} ${xy(x + c1 + k * s1, y - s1 + k * c1)} ${xy(x + c1, y - s1)} c`;
    }
    this.#out.push(path);
  }

  #text(mark: TextMark): void {
    const shown = mark.text.trimEnd();
    if (shown === "") return;
    const width = mark.anchor === "start" ? 0 : textWidthMm(mark.text, mark.heightMm, mark.weight);
    const back = mark.anchor === "middle" ? width / 2 : width;
    const turn = (mark.turnDeg * Math.PI) / 180;
    const cos = Math.cos(turn);
    const sin = Math.sin(turn);
    const x = mark.at.xMm + this.#dx - back * cos;
    const y = mark.at.yMm + this.#dy + back * sin;
    this.#brush(mark.ink);
    const turned = mark.turnDeg === 0 ? "1 0 0 -1" : [cos, -sin, -sin, -cos].map(direction).join(" ");
    const set = this.#set;
    let show = `BT ${turned} ${xy(x, y)} Tm`;
    for (const run of runsOf(shown, mark.heightMm, mark.weight)) {
      if (set.font !== run.font || set.heightMm !== mark.heightMm) {
        show += ` /${run.font} ${um(emMm(mark.heightMm))} Tf`;
        set.font = run.font;
        set.heightMm = mark.heightMm;
      }
      show += ` <${this.#resources.font(run.font).encode(run.text)}> Tj`;
    }
    const isRead = this.#open !== undefined && this.#open !== null;
    // A reader would join the last word of a line to the first of the next.
    if (isRead && set.font !== undefined && set.font !== "cjk")
      show += ` <${this.#resources.font(set.font).encode(" ")}> Tj`;
    const isForeign = isRead && this.#marking.structure.isForeign(shown);
    this.#out.push(isForeign ? `/Span<</Lang(zh-CN)>>BDC ${show} ET EMC` : `${show} ET`);
  }

  #code(mark: CodeMark): void {
    this.#brush("ink");
    const size = um(mark.sizeMm);
    const where = xy(mark.at.xMm + this.#dx, mark.at.yMm + this.#dy);
    this.#out.push(`q ${size} 0 0 ${size} ${where} cm /${this.#resources.codeName(mark.text)} Do Q`);
  }

  #leaf(mark: Leaf): void {
    switch (mark.kind) {
      case "line":
        this.#paint(mark.stroke, null, () => this.#path([mark.from, mark.to], false));
        break;
      case "polyline":
        this.#paint(mark.stroke, null, () => this.#path(mark.points, false));
        break;
      case "polygon":
        this.#paint(mark.stroke, mark.fill, () => this.#path(mark.points, true));
        if (mark.hatchMm !== undefined) {
          const lines = hatchLines(mark.points, mark.hatchMm);
          this.#paint({ ink: mark.stroke?.ink ?? "ink", widthMm: LINE.hair }, null, () => {
            for (const ends of lines) this.#path(ends, false);
          });
        }
        break;
      case "area":
        this.#paint(null, mark.fill, () => {
          for (const ring of mark.rings) this.#path(ring, true);
        });
        break;
      case "circle":
        this.#paint(mark.stroke, mark.fill, () => {
          this.#arc({ ...mark, fromDeg: 0, toDeg: 360 });
          this.#out.push("h");
        });
        break;
      case "arc":
        this.#paint(mark.stroke, null, () => this.#arc(mark));
        break;
      case "rect":
        this.#paint(mark.stroke, mark.fill, () =>
          this.#rect(mark.box.xMm, mark.box.yMm, mark.box.widthMm, mark.box.heightMm),
        );
        break;
      case "text":
        this.#text(mark);
        break;
      case "code":
        this.#code(mark);
        break;
    }
  }
}

/** The operators that draw the marks of a page, each in the content of what it belongs to. */
export function pageContent(page: Page, index: number, resources: PdfResources, marking: Marking): string {
  return new ContentWriter(resources, marking, index).content(page);
}
