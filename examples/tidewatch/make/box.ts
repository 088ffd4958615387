import type { Book, BookRow, Outline } from "@pinwright/book";
import { rotateXyz, roundTo } from "@pinwright/kernel";
import { rows } from "./author.ts";
import { BACKBOX, CABINET } from "./cabinet-panels.ts";
import { outlineAbout, polygon, type Xy } from "./shape.ts";

/**
 * The boxes as the joiner makes them. Everything else is placed from the inside corner of the box; here the panels get
 * the wood that the joints need, and their frames begin at their own corners.
 *
 * Cabinet: bottom, front and back stand between the sides; front and back stand on the bottom. Backbox: the sides stand
 * on the bottom and carry the top; the back lies in rebates of the sides, between bottom and top.
 */
interface Joined {
  readonly panel: string;
  /** How far the panel's corner lies outside the corner that places are counted from. */
  readonly out?: Xy;
  readonly width?: number;
  readonly height?: number;
  readonly outline?: readonly Xy[];
}

const { widthMm: W, depthMm: D, frontMm, rearMm, plyMm: T } = CABINET;
/** The back of the backbox lies so deep in the sides, with a millimetre of play on each side. */
const REBATE_MM = 9;
const BACK_PLAY_MM = 1;
const BACK_MM = 12;
const BACK_OUT_MM = T - REBATE_MM + BACK_PLAY_MM;
const HEAD_TALL_MM = BACKBOX.heightMm - T;

/** A side of the cabinet as seen from inside: its upper edge slopes up from the front. */
const SIDE: readonly Xy[] = [
  [0, 0],
  [D + 2 * T, 0],
  [D + 2 * T, rearMm + T],
  [1020 + T, rearMm + T],
  [T, frontMm + T],
  [0, frontMm + T],
];

const JOINED: readonly Joined[] = [
  { panel: "cab.bottom", out: [0, T], width: W, height: D + 2 * T },
  { panel: "cab.left", out: [T, T], width: D + 2 * T, height: rearMm + T, outline: SIDE },
  {
    panel: "cab.right",
    out: [T, T],
    width: D + 2 * T,
    height: rearMm + T,
    outline: SIDE.map(([x, y]): Xy => [D + 2 * T - x, y]).reverse(),
  },
  { panel: "bb.left", height: HEAD_TALL_MM },
  { panel: "bb.right", height: HEAD_TALL_MM },
  {
    panel: "bb.back",
    out: [-BACK_OUT_MM, 0],
    width: BACKBOX.widthMm - 2 * BACK_OUT_MM,
    height: HEAD_TALL_MM,
  },
];

/** Sizes that mate and are cut at one setting, and those that follow a thickness as measured. */
const SIZES: readonly (readonly [
  panel: string,
  direction: "x" | "y",
  setting: string,
  follows?: string,
  times?: number,
])[] = [
  // Inside stays as wide and as deep as it is drawn, whatever the sheet measures.
  ["cab.bottom", "x", "cabinet-inside"],
  ["cab.front", "x", "cabinet-inside"],
  ["cab.back", "x", "cabinet-inside"],
  ["cab.bottom", "y", "cabinet-length", "cab.front", 2],
  ["cab.left", "x", "cabinet-length", "cab.front", 2],
  ["cab.right", "x", "cabinet-length", "cab.front", 2],
  ["cab.left", "y", "cabinet-side", "cab.bottom", 1],
  ["cab.right", "y", "cabinet-side", "cab.bottom", 1],
  ["bb.bottom", "x", "backbox-width"],
  ["bb.top", "x", "backbox-width"],
  ["bb.bottom", "y", "backbox-depth"],
  ["bb.top", "y", "backbox-depth"],
  ["bb.left", "x", "backbox-depth"],
  ["bb.right", "x", "backbox-depth"],
  // From bottom to top the backbox stays as tall as it is drawn.
  ["bb.left", "y", "backbox-tall", "bb.top", -1],
  ["bb.right", "y", "backbox-tall", "bb.top", -1],
  ["bb.back", "y", "backbox-tall", "bb.top", -1],
  ["bb.back", "x", "backbox-back", "bb.left", -2],
];

type Term = readonly [panel: string | null, dimension: BookRow<"fit_terms">["dimension"], times: number];
type Fit = Pick<BookRow<"fits">, "id" | "label" | "label_zh" | "min_mm" | "max_mm" | "reason"> & {
  readonly terms: readonly (Term | Partial<BookRow<"fit_terms">>)[];
};

const FITS: readonly Fit[] = [
  {
    id: "fit.cabinet-width",
    label: "Cabinet, outside width",
    label_zh: "机箱外宽",
    min_mm: 594,
    max_mm: 597,
    reason: "Lock bar and leg brackets are made for 596 mm.",
    terms: [
      ["cab.front", "width", 1],
      ["cab.left", "thickness", 1],
      ["cab.right", "thickness", 1],
    ],
  },
  {
    id: "fit.cabinet-rear",
    label: "Sides over the back at the top edge",
    label_zh: "侧板高出后板上沿",
    min_mm: -1.5,
    max_mm: 1.5,
    reason: "The backbox stands on both.",
    terms: [
      ["cab.left", "height", 1],
      ["cab.bottom", "thickness", -1],
      ["cab.back", "height", -1],
    ],
  },
  {
    id: "fit.cabinet-ends",
    label: "Sides longer than the bottom",
    label_zh: "侧板长出底板",
    min_mm: -1.5,
    max_mm: 1.5,
    reason: "Front and back stand flush with the ends of the sides.",
    terms: [
      ["cab.left", "width", 1],
      ["cab.bottom", "height", -1],
    ],
  },
  {
    id: "fit.glass",
    label: "Play of the playfield glass between the sides",
    label_zh: "台面玻璃两侧总间隙",
    min_mm: 6,
    max_mm: 10,
    reason: "The channels hold the glass from 552 mm on and let it slide.",
    terms: [
      ["cab.front", "width", 1],
      { panel: "glass.field", dimension: "width", times: -1, minus_mm: 1, plus_mm: 1 },
    ],
  },
  {
    id: "fit.door",
    label: "Play of the coin door in its opening",
    label_zh: "投币门在门洞中的总间隙",
    min_mm: 4,
    max_mm: 8,
    reason: "The frame of the door covers it.",
    terms: [
      { dimension: "other", times: 1, nominal_mm: 266, minus_mm: 0.3, plus_mm: 0.3 },
      ["cab.door", "width", -1],
    ],
  },
  {
    id: "fit.lamp-panel",
    label: "Play of the lamp panel between the sides of the backbox",
    label_zh: "灯板在背箱侧板间的总间隙",
    min_mm: 3,
    max_mm: 7,
    reason: "It swings out on its hinge.",
    terms: [
      ["bb.top", "width", 1],
      ["bb.left", "thickness", -1],
      ["bb.right", "thickness", -1],
      ["bb.lamp", "width", -1],
    ],
  },
  {
    id: "fit.backbox-back",
    label: "Play of the back in the rebates of the backbox sides",
    label_zh: "背箱后板在侧板企口中的总间隙",
    min_mm: 0,
    max_mm: 4,
    reason: "It squares the box and must go in.",
    terms: [
      ["bb.top", "width", 1],
      ["bb.left", "thickness", -1],
      ["bb.right", "thickness", -1],
      { dimension: "other", times: 2, nominal_mm: REBATE_MM, minus_mm: 0.1, plus_mm: 0.1 },
      ["bb.back", "width", -1],
    ],
  },
  {
    id: "fit.backbox-height",
    label: "Backbox, height above its bottom",
    label_zh: "背箱底板以上高度",
    min_mm: 749,
    max_mm: 751,
    reason: "The lamp panel and the speaker grille stand between bottom and top.",
    terms: [
      ["bb.left", "height", 1],
      ["bb.top", "thickness", 1],
    ],
  },
];

/** Rebates for the back, whose width follows the thickness of the back; the rear edge of the right side is at its x = 0. */
const REBATES: readonly (readonly [id: string, panel: string, x: number])[] = [
  ["rebate-left", "bb.left", BACKBOX.depthMm - BACK_MM / 2],
  ["rebate-right", "bb.right", BACK_MM / 2],
];

const SHEET_OF: ReadonlyMap<number, string> = new Map(
  [18, 13, 12, 9].map((mm) => [mm, `sheet.ply-${mm}`] as const),
);

type Placed = { readonly panel: string; readonly x_mm: number; readonly y_mm: number };

/** The book with its panels as they are made. */
export function boxed(book: Book): Book {
  const joined = new Map(JOINED.map((own) => [own.panel, own] as const));
  const shifted = <R extends Placed>(row: R): R => {
    const [dx, dy] = joined.get(row.panel)?.out ?? [0, 0];
    return dx === 0 && dy === 0 ? row : { ...row, x_mm: mm(row.x_mm + dx), y_mm: mm(row.y_mm + dy) };
  };
  const t = book.tables;
  const outlines = new Map<string, Outline>(book.outlines);
  for (const { panel, outline } of JOINED) {
    const file = t.panels.find((row) => row.id === panel)?.outline;
    if (outline !== undefined && file != null) outlines.set(file, outlineAbout([0, 0], polygon(...outline)));
  }
  return {
    ...book,
    outlines,
    tables: {
      ...t,
      panels: t.panels.map((row) => ({
        ...row,
        width_mm: joined.get(row.id)?.width ?? row.width_mm,
        height_mm: joined.get(row.id)?.height ?? row.height_mm,
        part: row.wood === "none" ? row.part : (SHEET_OF.get(row.thickness_mm) ?? null),
      })),
      pose_places: t.pose_places.map((row) => movedFrame(row, joined.get(row.panel)?.out ?? [0, 0])),
      devices: t.devices.map(shifted),
      boards: t.boards.map(shifted),
      mechanisms: t.mechanisms.map(shifted),
      fasteners: t.fasteners.map(shifted),
      inlines: t.inlines.map(shifted),
      waypoints: t.waypoints.map(shifted),
      cutouts: [...t.cutouts.map(shifted), ...rebates()],
      panel_sizes: rows(
        "panel_sizes",
        SIZES.map(([panel, direction, setting, thickness_of, times]) => ({
          panel,
          direction,
          setting,
          ...(thickness_of === undefined ? {} : { thickness_of, times: times ?? 0 }),
        })),
      ),
      fits: rows(
        "fits",
        FITS.map(({ terms: _, ...fit }) => fit),
      ),
      fit_terms: rows("fit_terms", FITS.flatMap(termRows)),
    },
  };
}

const mm = (value: number): number => roundTo(value, 0.001);

function termRows({ id, terms }: Fit): Partial<BookRow<"fit_terms">>[] {
  return terms.map((term, i) => {
    const name = { fit: id, term: String.fromCharCode(97 + i) };
    if (!("length" in term)) return { ...name, ...term };
    const [panel, dimension, times] = term;
    return { ...name, panel, dimension, times };
  });
}

const rebates = (): BookRow<"cutouts">[] =>
  rows(
    "cutouts",
    REBATES.map(([id, panel, x_mm]) => ({
      id: `cut.${id}`,
      panel,
      side: "top",
      purpose: "groove",
      shape: "rect",
      x_mm,
      y_mm: HEAD_TALL_MM / 2,
      width_mm: BACK_MM,
      height_mm: HEAD_TALL_MM,
      depth_mm: REBATE_MM,
      takes: "bb.back",
    })),
  );

function movedFrame(row: BookRow<"pose_places">, [dx, dy]: Xy): BookRow<"pose_places"> {
  const by = rotateXyz({ xMm: dx, yMm: dy, zMm: 0 }, row.rx_deg, row.ry_deg, row.rz_deg);
  return {
    ...row,
    x_mm: mm(row.x_mm - by.xMm),
    y_mm: mm(row.y_mm - by.yMm),
    z_mm: mm(row.z_mm - by.zMm),
  };
}
