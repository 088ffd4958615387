/**
 * The display list: what is on a page, in millimetres of paper. Origin at the top left corner of the page, x to
 * the right, y down (as in SVG and in reading). Angles are degrees, anticlockwise as the reader sees the page.
 * SVG, PDF and DXF are written from it and from nothing else.
 */

export interface PagePoint {
  readonly xMm: number;
  readonly yMm: number;
}

/** A rectangle with its sides along the page. */
export interface Box {
  readonly xMm: number;
  readonly yMm: number;
  readonly widthMm: number;
  readonly heightMm: number;
}

/** `ink` for all that is read, `accent` for one emphasis, `faint` for guides, `tint` for grounds, `paper` to cover. */
export type Ink = "ink" | "accent" | "faint" | "tint" | "paper";

/** Layers of a drawing; a DXF file has one of each name. */
export const LAYERS = [
  "BORDER",
  "TEXT",
  "DIMENSIONS",
  "BRANCHES",
  "PEGS",
  "HOLES",
  "HOLDERS",
  "TIES",
] as const;
/** A layer that every drawing has. */
export type PlainLayer = (typeof LAYERS)[number];
/**
 * A layer that a drawing for a machine has of its own: one for each tool (`DRILL_…`), what is engraved, what is cut
 * out, and what it is laid to. A DXF file has those that are drawn on.
 */
export type Layer = PlainLayer | `DRILL_${string}` | "ENGRAVE" | "CUT" | "LOCATE";

export interface Stroke {
  readonly ink: Ink;
  /** Width of the line; the sheets use the ISO 128-2 series 0.13 0.18 0.25 0.35 0.5 0.7. */
  readonly widthMm: number;
  /** Lengths of dash and gap in turn; absent: a full line. */
  readonly dashMm?: readonly number[];
}

interface Drawn {
  readonly layer: Layer;
}

interface Outlined extends Drawn {
  readonly stroke: Stroke | null;
}

interface Filled extends Outlined {
  readonly fill: Ink | null;
}

export interface LineMark extends Drawn {
  readonly kind: "line";
  readonly from: PagePoint;
  readonly to: PagePoint;
  readonly stroke: Stroke;
}

export interface PolylineMark extends Drawn {
  readonly kind: "polyline";
  readonly points: readonly PagePoint[];
  readonly stroke: Stroke;
}

export interface PolygonMark extends Filled {
  readonly kind: "polygon";
  readonly points: readonly PagePoint[];
  /** Distance of hatch lines at 45°, drawn inside with the stroke's ink; absent: none. */
  readonly hatchMm?: number;
}

/** Rings that are filled together, outer ones one way round and holes the other; no line round them. */
interface AreaMark extends Drawn {
  readonly kind: "area";
  readonly rings: readonly (readonly PagePoint[])[];
  readonly fill: Ink;
}

interface CircleMark extends Filled {
  readonly kind: "circle";
  readonly at: PagePoint;
  readonly radiusMm: number;
}

/** From `fromDeg` anticlockwise to `toDeg`, 0° to the right. */
export interface ArcMark extends Drawn {
  readonly kind: "arc";
  readonly at: PagePoint;
  readonly radiusMm: number;
  readonly fromDeg: number;
  readonly toDeg: number;
  readonly stroke: Stroke;
}

export interface RectMark extends Filled {
  readonly kind: "rect";
  readonly box: Box;
}

export type Weight = "regular" | "bold";
export type Anchor = "start" | "middle" | "end";

export interface TextMark extends Drawn {
  readonly kind: "text";
  /** Where the baseline starts, has its middle or ends, as `anchor` says. */
  readonly at: PagePoint;
  readonly text: string;
  /** Height of a capital letter, as ISO 3098 counts lettering; the em follows from the font. */
  readonly heightMm: number;
  readonly weight: Weight;
  readonly ink: Ink;
  readonly anchor: Anchor;
  /** Rotation about `at`, anticlockwise. */
  readonly turnDeg: number;
}

/** A QR code, drawn as squares. */
export interface CodeMark extends Drawn {
  readonly kind: "code";
  /** Top left corner of the outermost modules; the quiet zone lies outside. */
  readonly at: PagePoint;
  readonly sizeMm: number;
  readonly text: string;
}

/**
 * What marks are to somebody who hears the page or has it reflowed: standard structure types of PDF (ISO 32000-1,
 * 14.8.4). `Artifact` is what is not read: rules, frames, what is repeated on each page.
 */
export type Role =
  | "H1"
  | "H2"
  | "H3"
  | "P"
  | "TOCI"
  | "LI"
  | "Table"
  | "TR"
  | "TH"
  | "TD"
  | "Figure"
  | "Caption"
  | "Note"
  | "Artifact";

/**
 * The role of a group. Rows (`TR`) that follow each other are one table, also over pages, items (`LI`, `TOCI`) one
 * list; `starts` begins another one. A language needs no word: Chinese characters are marked as Chinese.
 */
export interface Tag {
  readonly role: Role;
  /** What a figure shows, for who does not see it. Every figure has one. */
  readonly alt?: string;
  /** What a heading cell stands over or before. */
  readonly scope?: "Column" | "Row" | "Both";
  /** Columns that a cell spans, when more than one. */
  readonly span?: number;
  readonly starts?: boolean;
}

/** Where a link leads: to the group with this `anchor` in the same document, or to an address of the web. */
export type LinkTarget = { readonly anchor: string } | { readonly url: string };

/** Marks that are moved together and may be cut off at a window. */
export interface GroupMark {
  readonly kind: "group";
  readonly marks: readonly Mark[];
  readonly dxMm: number;
  readonly dyMm: number;
  /** Window in the coordinates of the page that the group stands on; null: nothing is cut off. */
  readonly clip: Box | null;
  /**
   * `frame` holds what may change while the sheet says the same: date, sheet count, code. The body hash leaves
   * it out. `body` is all the rest.
   */
  readonly part: "body" | "frame";
  /**
   * A text that stands for its marks in the body hash: the hash of a drawing that several groups show parts of.
   * Absent: the marks speak for themselves.
   */
  readonly hash?: string;
  readonly tag?: Tag;
  /** Leads from the marks of the group to somewhere. */
  readonly link?: LinkTarget;
  /** Name of this place, for links; one of a name in a document (the first counts). */
  readonly anchor?: string;
  /** A bookmark that leads here. Levels count from 1. */
  readonly bookmark?: { readonly title: string; readonly level: number };
}

/** Anything that is not a group. */
export type Leaf =
  | LineMark
  | PolylineMark
  | PolygonMark
  | AreaMark
  | CircleMark
  | ArcMark
  | RectMark
  | TextMark
  | CodeMark;
export type Mark = Leaf | GroupMark;

/** One page of paper. */
export interface Page {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly marks: readonly Mark[];
  /** So many of the marks, the first ones, are what the sheet says; the rest is its frame. */
  readonly bodyMarks?: number;
}
