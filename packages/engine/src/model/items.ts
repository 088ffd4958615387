import type { Book, BookRow, Ring } from "@pinwright/book";
import { normaliseDeg } from "@pinwright/kernel";
import { centredRectangle, cornerRectangle, faceX, placed, placeOf } from "./frames.ts";
import type {
  BoardItem,
  DeviceItem,
  FastenerItem,
  FastenerMoment,
  InlineItem,
  Languages,
  MechanismItem,
  PanelPoint,
  Place,
} from "./machine.ts";

type Labelled = { readonly label: string; readonly label_zh: string };

/** English and Chinese names of a row; a language that is missing falls back to the other, then to the id. */
export function labelsOf(row: Labelled, id: string): Languages {
  const en = row.label || row.label_zh || id;
  return { en, zh: row.label_zh || en };
}

/** Outer ring of an outline file, or the rectangle that stands for it. */
function ringOf(book: Book, outline: string | null, rectangle: Ring): Ring {
  return (outline === null ? undefined : book.outlines.get(outline)?.rings[0]) ?? rectangle;
}

function footprint(place: Place, ring: Ring, middleMm: number): readonly PanelPoint[] {
  return ring.map((p) => placed(place, faceX(place.side, p.xMm, middleMm), p.yMm));
}

export function deviceItem(book: Book, row: BookRow<"devices">, type: BookRow<"device_types">): DeviceItem {
  const place = placeOf(row, row.z_mm);
  return {
    kind: "device",
    id: row.id,
    labels: labelsOf(row, row.id),
    place,
    parentId: null,
    type,
    number: row.number,
    footprint: footprint(
      place,
      ringOf(book, type.outline, centredRectangle(type.width_mm, type.depth_mm)),
      0,
    ),
  };
}

export function boardItem(book: Book, row: BookRow<"boards">, type: BookRow<"board_types">): BoardItem {
  const place = placeOf(row, type.standoff_mm);
  const ring = ringOf(book, type.outline, cornerRectangle(type.width_mm, type.depth_mm));
  return {
    kind: "board",
    id: row.id,
    labels: labelsOf(row, row.id),
    place,
    parentId: null,
    type,
    address: row.address,
    footprint: footprint(place, ring, type.width_mm / 2),
  };
}

/** A mechanism's own frame is seen from `top` on either side, so its outline is never turned over. */
export function mechanismItem(
  book: Book,
  row: BookRow<"mechanisms">,
  type: BookRow<"mechanism_types">,
): MechanismItem {
  const place = placeOf(row, 0);
  const ring = ringOf(book, type.outline, centredRectangle(type.width_mm, type.depth_mm));
  return {
    kind: "mechanism",
    id: row.id,
    labels: labelsOf(row, row.id),
    place,
    parentId: null,
    type,
    footprint: ring.map((p) => placed(place, p.xMm, p.yMm)),
  };
}

function childPlace(
  parent: MechanismItem,
  xMm: number,
  yMm: number,
  rotationDeg: number,
  zMm: number,
): Place {
  return {
    ...parent.place,
    ...placed(parent.place, xMm, yMm),
    rotationDeg: normaliseDeg(parent.place.rotationDeg + rotationDeg),
    zMm,
  };
}

/** A mechanism's device: named after both, so that `Left flipper` and `Coil` read `Left flipper: Coil`. */
export function childDevice(
  book: Book,
  parent: MechanismItem,
  row: BookRow<"mechanism_devices">,
  type: BookRow<"device_types">,
  number: number | null,
): DeviceItem {
  const place = childPlace(parent, row.x_mm, row.y_mm, row.rotation_deg, row.z_mm);
  const own = labelsOf(row, row.child);
  return {
    kind: "device",
    id: `${parent.id}/${row.child}`,
    place,
    parentId: parent.id,
    type,
    number,
    labels: { en: `${parent.labels.en}: ${own.en}`, zh: `${parent.labels.zh}：${own.zh}` },
    footprint: footprint(
      place,
      ringOf(book, type.outline, centredRectangle(type.width_mm, type.depth_mm)),
      0,
    ),
  };
}

function fastenerFootprint(place: Place, type: BookRow<"fastener_types">): readonly PanelPoint[] {
  const sizeMm = type.head_diameter_mm ?? type.diameter_mm;
  return footprint(place, centredRectangle(sizeMm, sizeMm), 0);
}

const MOMENTS: readonly FastenerMoment[] = ["start", "align", "tighten", "recheck"];

/** Moments that a row names, in the order of work; when it names none, it is tightened and that is all. */
function momentsOf(text: string): readonly FastenerMoment[] {
  const named = text.split(" ");
  const found = MOMENTS.filter((moment) => named.includes(moment));
  return found.length === 0 ? ["tighten"] : found;
}

/** A fastener with what goes on under its head and on the far side. */
export interface FastenerTypes {
  readonly type: BookRow<"fastener_types">;
  readonly washer: BookRow<"fastener_types"> | null;
  readonly nut: BookRow<"fastener_types"> | null;
}

export function childFastener(
  parent: MechanismItem,
  row: BookRow<"mechanism_fasteners">,
  { type, washer, nut }: FastenerTypes,
): FastenerItem {
  const place = childPlace(parent, row.x_mm, row.y_mm, 0, 0);
  return {
    kind: "fastener",
    id: `${parent.id}/${row.child}`,
    labels: labelsOf(type, type.id),
    place,
    parentId: parent.id,
    type,
    flangeMm: row.flange_mm,
    holds: parent.id,
    moments: momentsOf(row.moments),
    washer,
    nut,
    tappedMm: row.tapped_mm,
    purpose: "",
    footprint: fastenerFootprint(place, type),
  };
}

export function fastenerItem(row: BookRow<"fasteners">, { type, washer, nut }: FastenerTypes): FastenerItem {
  const place = placeOf({ ...row, rotation_deg: 0 }, 0);
  return {
    kind: "fastener",
    id: row.id,
    labels: labelsOf(type, type.id),
    place,
    parentId: null,
    type,
    flangeMm: row.flange_mm,
    holds: row.holds,
    moments: momentsOf(row.moments),
    washer,
    nut,
    tappedMm: row.tapped_mm,
    purpose: row.purpose,
    footprint: fastenerFootprint(place, type),
  };
}

/** An in-line connector lies along its own x; its drawn size follows from its cavities. */
export function inlineItem(
  row: BookRow<"inlines">,
  type: BookRow<"connectors">,
  widthMm: number,
  depthMm: number,
): InlineItem {
  const place = placeOf(row, 0);
  return {
    kind: "inline",
    id: row.id,
    labels: labelsOf(row, row.id),
    place,
    parentId: null,
    type,
    footprint: footprint(place, centredRectangle(widthMm, depthMm), 0),
  };
}
