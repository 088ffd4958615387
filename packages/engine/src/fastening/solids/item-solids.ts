import type { Book, BookRow } from "@pinwright/book";
import type { RingMm } from "@pinwright/kernel";
import {
  type BoardItem,
  cavityGrid,
  type DeviceItem,
  faceX,
  type InlineItem,
  type MechanismItem,
  placed,
  type Solid,
} from "../../model/index.ts";
import { type Opening, throughOpenings } from "./openings.ts";
import { directionAt, type Prism, prismsOf, type SolidOwner, solidOf } from "./prism.ts";
import { discRing, movedRing, outlinePieces } from "./rings.ts";

/** Thickness of a bare board: FR-4 laminate as usually stocked; common practice, no source. */
const PCB_MM = 1.6;
/** Walls of an in-line housing beyond its cavities: common practice, no source. */
const INLINE_WALL_MM = 4;

type Body = BookRow<"bodies">;

/** What an item's solids follow from, beside the item. */
export interface SolidSource {
  readonly book: Book;
  readonly thicknessMm: number;
  /** Parts of its type; none: its whole outline over its whole height. */
  readonly bodies: readonly Body[];
  /** Openings through its panel. */
  readonly openings: readonly Opening[];
}

const solidsOf = (owner: SolidOwner, prisms: readonly Prism[]): readonly Solid[] =>
  prisms.flatMap((prism) => solidOf(owner, prism) ?? []);

/** Rings of one part in the frame of its type. */
function bodyRings(book: Book, row: Body): readonly RingMm[] {
  const widthMm = row.width_mm ?? 0;
  const rectangle = row.round ? discRing(widthMm) : centred(widthMm, row.depth_mm ?? widthMm);
  return outlinePieces(book, row.outline, rectangle).map((ring) =>
    movedRing(ring, { xMm: row.x_mm, yMm: row.y_mm }, row.rotation_deg),
  );
}

function centred(widthMm: number, depthMm: number): RingMm {
  const x = widthMm / 2;
  const y = depthMm / 2;
  return [
    { xMm: -x, yMm: -y },
    { xMm: x, yMm: -y },
    { xMm: x, yMm: y },
    { xMm: -x, yMm: y },
  ];
}

/**
 * Solids of a device: the parts of its type, else its outline over its height and what of that passes through the
 * panel's openings, as far as its type reaches.
 */
export function deviceSolids(item: DeviceItem, source: SolidSource): readonly Solid[] {
  const { place, type } = item;
  // Its own frame is seen from its face, which looks down on the underside.
  const onPanel = (ring: RingMm): RingMm => movedRing(ring, place, place.rotationDeg, place.side === "under");
  const direction = directionAt(place, source.thicknessMm);
  const offMm = (mm: number): number => place.zMm + direction * mm;
  if (source.bodies.length > 0) return solidsOf({ item, ...source }, bodyPrisms(source, onPanel, offMm));
  const whole = outlinePieces(source.book, type.outline, centred(type.width_mm, type.depth_mm)).map(onPanel);
  const prism = { part: null, fromMm: offMm(0), toMm: offMm(type.height_mm) };
  return solidsOf({ item, ...source }, [
    ...prismsOf(whole, prism),
    ...(item.parentId === null ? reachPrisms(item, whole, source) : []),
  ]);
}

/** Solids of a mechanism itself, without its devices. */
export function mechanismSolids(item: MechanismItem, source: SolidSource): readonly Solid[] {
  const { place, type } = item;
  // A mechanism's own frame is seen from `top` on either side.
  const onPanel = (ring: RingMm): RingMm => movedRing(ring, place, place.rotationDeg);
  const owner = { item, ...source };
  if (source.bodies.length > 0)
    return solidsOf(
      owner,
      bodyPrisms(source, onPanel, (mm) => place.zMm + mm),
    );
  const whole = outlinePieces(source.book, type.outline, centred(type.width_mm, type.depth_mm)).map(onPanel);
  return solidsOf(owner, [
    ...prismsOf(whole, { part: null, fromMm: place.zMm, toMm: place.zMm + type.height_mm }),
    ...reachPrisms(item, whole, source),
  ]);
}

function bodyPrisms(
  { book, bodies }: SolidSource,
  onPanel: (ring: RingMm) => RingMm,
  offMm: (mm: number) => number,
): readonly Prism[] {
  return bodies.flatMap((row) =>
    prismsOf(bodyRings(book, row).map(onPanel), {
      part: row.id,
      fromMm: offMm(row.from_mm),
      toMm: offMm(row.to_mm),
      moves: row.moves,
    }),
  );
}

/** What comes up on the other side, through the panel. */
function reachPrisms(
  item: DeviceItem | MechanismItem,
  whole: readonly RingMm[],
  { openings, thicknessMm }: SolidSource,
): readonly Prism[] {
  const { reach_mm } = item.type;
  if (reach_mm <= 0) return [];
  return prismsOf(throughOpenings(whole, openings, item.id), {
    part: "reach",
    fromMm: 0,
    toMm: -thicknessMm - reach_mm,
  });
}

/** Solid of a board on its stand-offs: the board itself and room for its tallest part all over it. */
export function boardSolids(item: BoardItem, source: SolidSource): readonly Solid[] {
  const { place, type } = item;
  const onPanel = (ring: RingMm): RingMm =>
    ring.map((p) => placed(place, faceX(place.side, p.xMm, type.width_mm / 2), p.yMm));
  const rectangle: RingMm = [
    { xMm: 0, yMm: 0 },
    { xMm: type.width_mm, yMm: 0 },
    { xMm: type.width_mm, yMm: type.depth_mm },
    { xMm: 0, yMm: type.depth_mm },
  ];
  const rings = outlinePieces(source.book, type.outline, rectangle).map(onPanel);
  const toMm = place.zMm + PCB_MM + type.height_mm;
  return solidsOf({ item, ...source }, prismsOf(rings, { part: null, fromMm: place.zMm, toMm }));
}

/** Solid of an in-line connector, as high as its rows of cavities and its walls. */
export function inlineSolids(item: InlineItem, { book, thicknessMm }: SolidSource): readonly Solid[] {
  const family = book.tables.connector_families.find((row) => row.id === item.type.family);
  if (family === undefined) return [];
  const { rows, rowPitchMm } = cavityGrid(item.type, family);
  const prism = {
    part: null,
    ring: item.footprint,
    fromMm: item.place.zMm,
    toMm: item.place.zMm + rows * rowPitchMm + INLINE_WALL_MM,
  };
  return solidsOf({ item, thicknessMm }, [prism]);
}
