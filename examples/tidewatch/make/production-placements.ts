import type { BookRow } from "@pinwright/book";
import { fixingHoles } from "@pinwright/engine";
import { rows } from "./author.ts";
import { componentsOf, type Stuffed } from "./board-components.ts";
import { families } from "./families.ts";

type Element = BookRow<"elements">;
type Placement = Partial<BookRow<"placements">>;

interface Box {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

const meet = (a: Box, b: Box): boolean =>
  a.minX < b.maxX && b.minX < a.maxX && a.minY < b.maxY && b.minY < a.maxY;

/** Headers of a finer pitch than this are low. */
const LOW_PITCH_MM = 2.5;

/** Headers lie where the plugs go; a header is 6 mm deep for each row and a pitch longer than its pins. */
function headers(connectors: readonly BookRow<"connectors">[]): (Placement & { readonly box: Box })[] {
  return connectors.map((c) => {
    const family = families.tables.connector_families?.find((f) => f.id === c.family);
    const pitch = family?.pitch_mm ?? 2.5;
    const columns = Math.ceil(c.ways / c.rows);
    const along = columns * pitch;
    const across = 5 + c.rows * 2.5;
    const upright = Math.abs(c.rotation_deg) % 180 === 90;
    const middle = ((columns - 1) * pitch) / 2;
    const sign = c.rotation_deg % 360 === 180 || c.rotation_deg % 360 === 270 ? -1 : 1;
    const x = c.x_mm + (upright ? 0 : sign * middle);
    const y = c.y_mm + (upright ? sign * middle : 0);
    const [width, depth] = upright ? [across, along] : [along, across];
    return {
      reference: c.name.toUpperCase(),
      ...(c.mate_part === null ? {} : { part: c.mate_part }),
      x_mm: Math.round(x * 100) / 100,
      y_mm: Math.round(y * 100) / 100,
      rotation_deg: c.rotation_deg,
      width_mm: Math.round(along * 100) / 100,
      depth_mm: across,
      height_mm: pitch < LOW_PITCH_MM ? 7.5 : 12,
      joints: c.ways,
      polarity: "locking wall to the edge",
      box: { minX: x - width / 2, minY: y - depth / 2, maxX: x + width / 2, maxY: y + depth / 2 },
    };
  });
}

const EDGE_MM = 2;
const GAP_MM = 0.8;
/** Room round the middle of a fixing hole for the head of its screw. */
const FOOT_MM = 3;

/** Puts parts row by row into the free places of a board; null when they do not all fit. */
function place(
  type: BookRow<"board_types">,
  parts: readonly Stuffed[],
  taken: readonly Box[],
): Placement[] | null {
  const feet = fixingHoles(type).map(({ xMm, yMm }) => ({
    minX: xMm - FOOT_MM,
    minY: yMm - FOOT_MM,
    maxX: xMm + FOOT_MM,
    maxY: yMm + FOOT_MM,
  }));
  const boxes: Box[] = [...taken, ...feet, ...parts.flatMap((part) => fixedBox(part) ?? [])];
  const counts = new Map<string, number>();
  const placed: Placement[] = [];
  for (const part of parts) {
    const found = fixedBox(part) ?? firstFree(type, part, boxes);
    if (found === null) return null;
    boxes.push(found);
    const number = (counts.get(part.letter) ?? 0) + 1;
    counts.set(part.letter, number);
    placed.push(placementOf(part, `${part.letter}${number}`, found));
  }
  return placed;
}

/** The room of a part that has a place of its own. */
function fixedBox({ at, size }: Stuffed): Box | null {
  if (at === undefined) return null;
  const [x, y] = at;
  const [halfX, halfY] = [(size[0] + GAP_MM) / 2, (size[1] + GAP_MM) / 2];
  return { minX: x - halfX, minY: y - halfY, maxX: x + halfX, maxY: y + halfY };
}

const hundredth = (mm: number): number => Math.round(mm * 100) / 100;

/** A part in its room. What goes in after the wash has its holes masked, so that no solder fills them. */
function placementOf(part: Stuffed, reference: string, room: Box): Placement {
  return {
    reference,
    part: part.part,
    x_mm: hundredth((room.minX + room.maxX) / 2),
    y_mm: hundredth((room.minY + room.maxY) / 2),
    width_mm: part.size[0],
    depth_mm: part.size[1],
    height_mm: part.size[2],
    joints: part.joints,
    ...(part.polarity === undefined ? {} : { polarity: part.polarity }),
    ...(part.afterWash === true ? { after_wash: true, masks: part.joints } : {}),
    ...(part.hidden === true ? { hidden: true } : {}),
  };
}

function firstFree(type: BookRow<"board_types">, part: Stuffed, boxes: readonly Box[]): Box | null {
  const [width, depth] = [part.size[0] + GAP_MM, part.size[1] + GAP_MM];
  for (let y = EDGE_MM; y + depth <= type.depth_mm - EDGE_MM; y += 1) {
    for (let x = EDGE_MM; x + width <= type.width_mm - EDGE_MM; x += 1) {
      const box = { minX: x, minY: y, maxX: x + width, maxY: y + depth };
      if (boxes.every((other) => !meet(box, other))) return box;
    }
  }
  return null;
}

/** Boards that are stuffed in the workshop; the dot display and the main board come from the board maker. */
const BOUGHT_STUFFED: ReadonlySet<string> = new Set([
  "bt.dot",
  "bt.main",
  "bt.netmaster",
  "bt.audio",
  "bt.display",
]);

/**
 * Placements of the boards that the workshop stuffs: their headers where the connectors are, and what the
 * elements stand for: a transistor, clamp diode and resistor for each coil driver, and so on.
 */
export function placements(
  types: readonly BookRow<"board_types">[],
  connectors: readonly BookRow<"connectors">[],
  elements: readonly Element[],
): readonly BookRow<"placements">[] {
  return rows(
    "placements",
    types
      .filter((type) => !BOUGHT_STUFFED.has(type.id))
      .flatMap((type) => {
        const heads = headers(connectors.filter((c) => c.board_type === type.id));
        const own = elements.filter((e) => e.board_type === type.id);
        const large = componentsOf(type, own).toSorted(
          (a, b) => b.size[0] * b.size[1] - a.size[0] * a.size[1],
        );
        const rest = place(
          type,
          large,
          heads.map((h) => h.box),
        );
        if (rest === null) throw new Error(`The parts of ${type.id} do not fit on it.`);
        return [...heads.map(({ box: _, ...head }) => head), ...rest].map((row) => ({
          board_type: type.id,
          ...row,
        }));
      }),
  );
}

/** Everything that is stuffed besides headers, as parts, in the order of the boards. */
export function electronics(
  types: readonly BookRow<"board_types">[],
  elements: readonly Element[],
): readonly Stuffed[] {
  const all = types
    .filter((type) => !BOUGHT_STUFFED.has(type.id))
    .flatMap((type) =>
      componentsOf(
        type,
        elements.filter((e) => e.board_type === type.id),
      ),
    );
  return all.filter((part, i) => all.findIndex((other) => other.part === part.part) === i);
}
