import type { BookRow, Ring } from "@pinwright/book";
import { rotatePoint } from "@pinwright/kernel";
import type { Topic } from "./author.ts";
import { HELD_PLACES } from "./held-places.ts";
import { mechanismTypes } from "./mechanism-types.ts";
import { mechanisms } from "./mechanisms.ts";
import { playfieldCutouts } from "./playfield-cutouts.ts";
import { playfieldDeviceTypes } from "./playfield-device-types.ts";
import { playfieldFasteners } from "./playfield-fasteners.ts";
import { playfieldLamps } from "./playfield-lamps.ts";
import { playfieldSwitches } from "./playfield-switches.ts";

/** A rectangle of the playfield's frame, in mm. */
export interface Rectangle {
  readonly minX: number;
  readonly minY: number;
  readonly maxX: number;
  readonly maxY: number;
}

const PLAYFIELD = { width: 514, height: 1067, thickness: 13 } as const;
const EDGE_MM = 8;
const BETWEEN_BOARDS_MM = 6;
const FROM_MECHANISM_MM = 3;
/** Room that terminals with their wires need under a board on stand-offs. */
const WIRE_ROOM_MM = 6;

const boundsOf = (corners: readonly { readonly xMm: number; readonly yMm: number }[]): Rectangle => ({
  minX: Math.min(...corners.map((p) => p.xMm)),
  minY: Math.min(...corners.map((p) => p.yMm)),
  maxX: Math.max(...corners.map((p) => p.xMm)),
  maxY: Math.max(...corners.map((p) => p.yMm)),
});

const meet = (a: Rectangle, b: Rectangle, gap: number): boolean =>
  a.minX < b.maxX + gap && b.minX < a.maxX + gap && a.minY < b.maxY + gap && b.minY < a.maxY + gap;

const centredRectangle = (width: number, depth: number): Ring => [
  { xMm: -width / 2, yMm: -depth / 2 },
  { xMm: width / 2, yMm: -depth / 2 },
  { xMm: width / 2, yMm: depth / 2 },
  { xMm: -width / 2, yMm: depth / 2 },
];

interface Sized {
  readonly id: string;
  readonly outline: string | null;
  readonly width_mm: number;
  readonly depth_mm: number;
  readonly height_mm: number;
  readonly reach_mm: number;
}

/** What a topic places on the underside, or reaches through to it, with its height there. */
const standing = (
  placed: readonly (BookRow<"mechanisms"> | BookRow<"devices">)[],
  types: Topic,
): { readonly at: Rectangle; readonly heightMm: number }[] => {
  const sizes: readonly Sized[] = [
    ...(types.tables.device_types ?? []),
    ...(types.tables.mechanism_types ?? []),
  ];
  return placed.flatMap((row) => {
    const type = sizes.find((t) => t.id === row.type);
    if (type === undefined) return [];
    const heightMm = row.side === "under" ? type.height_mm : type.reach_mm - PLAYFIELD.thickness;
    if (heightMm <= 0) return [];
    const drawn = type.outline === null ? undefined : types.outlines?.get(type.outline);
    const ring = drawn?.rings[0] ?? centredRectangle(type.width_mm, type.depth_mm);
    const turned = ring.map((p) => rotatePoint(p, row.rotation_deg));
    const at = boundsOf(turned.map((p) => ({ xMm: row.x_mm + p.xMm, yMm: row.y_mm + p.yMm })));
    return [{ at, heightMm }];
  });
};

/** Islands between the ball's ways where wires of the upper side come down: the only wood left for their holes. */
const KEPT_FOR_WIRES: readonly Rectangle[] = [
  { minX: 394, minY: 616, maxX: 412, maxY: 634 },
  { minX: 95, minY: 721, maxX: 113, maxY: 741 },
];

/** Heads of the screws on the underside, and the wood that those from the top need. Common practice, no source. */
const SCREW_HEAD_MM = { width: 9, height: 4 } as const;
const screwHeads = (playfieldFasteners.tables.fasteners ?? []).map((row) => ({
  at: boundsOf(
    centredRectangle(SCREW_HEAD_MM.width, SCREW_HEAD_MM.width).map((p) => ({
      xMm: row.x_mm + p.xMm,
      yMm: row.y_mm + p.yMm,
    })),
  ),
  heightMm: SCREW_HEAD_MM.height,
}));

const obstacles = [
  ...standing(mechanisms.tables.mechanisms ?? [], mechanismTypes),
  ...[playfieldLamps, playfieldSwitches].flatMap((topic) =>
    standing(topic.tables.devices ?? [], playfieldDeviceTypes),
  ),
  ...screwHeads,
  ...KEPT_FOR_WIRES.map((at) => ({ at, heightMm: SCREW_HEAD_MM.height })),
];

/** Stand-offs find no wood over cuts. */
const cutouts = (playfieldCutouts.tables.cutouts ?? []).map((row) => {
  const half = Math.max(row.width_mm ?? 0, row.height_mm ?? 0) / 2;
  return { minX: row.x_mm - half, minY: row.y_mm - half, maxX: row.x_mm + half, maxY: row.y_mm + half };
});

export interface Wanted {
  readonly id: string;
  readonly widthMm: number;
  readonly depthMm: number;
  readonly standoffMm: number;
  readonly x: number;
  readonly y: number;
  /** Turned by a quarter when that lies nearer to where it is wanted. */
  readonly rotations: readonly (0 | 90)[];
}

export interface Found {
  readonly id: string;
  /** Origin, the board's lower left corner in its own frame. */
  readonly xMm: number;
  readonly yMm: number;
  readonly rotationDeg: 0 | 90;
  readonly at: Rectangle;
}

const STEP_MM = 3;
/** Fixing holes of every board under the playfield lie this far in from its corners. */
const HOLE_INSET_MM = 4;
/** Half of what a stand-off's foot needs. */
const FOOT_MM = 4;

/** Where the stand-offs of a board stand. */
export const feetOf = ({ minX, minY, maxX, maxY }: Rectangle): readonly Rectangle[] =>
  [minX + HOLE_INSET_MM, maxX - HOLE_INSET_MM].flatMap((x) =>
    [minY + HOLE_INSET_MM, maxY - HOLE_INSET_MM].map((y) => ({
      minX: x - FOOT_MM,
      minY: y - FOOT_MM,
      maxX: x + FOOT_MM,
      maxY: y + FOOT_MM,
    })),
  );

/** The place that something already has. */
function heldPlace({ id, widthMm, depthMm }: Wanted): Found | null {
  const held = HELD_PLACES[id];
  if (held === undefined) return null;
  const [minX, minY, rotationDeg] = held;
  const [w, d] = rotationDeg === 0 ? [widthMm, depthMm] : [depthMm, widthMm];
  const at = { minX, minY, maxX: minX + w, maxY: minY + d };
  return { id, xMm: rotationDeg === 0 ? minX : minX + w, yMm: minY, rotationDeg, at };
}

/**
 * Places for boards under the playfield: each as near as can be to where it is wanted, clear of mechanisms and of
 * the boards before it. A board on stand-offs passes over lamps and switches that are lower than the stand-offs;
 * the stand-offs themselves need free wood.
 * @throws when a board has no room
 */
export function underPlayfield(wanted: readonly Wanted[], kept: readonly Rectangle[]): readonly Found[] {
  const found: Found[] = [];
  for (const board of wanted) {
    const held = heldPlace(board);
    if (held !== null) {
      found.push(held);
      continue;
    }
    const tall = obstacles.filter((o) => o.heightMm + WIRE_ROOM_MM > board.standoffMm);
    const blocked = [...obstacles.map((o) => o.at), ...cutouts];
    let best: { readonly place: Found; readonly mm: number } | null = null;
    for (const rotationDeg of board.rotations) {
      const [w, d] = rotationDeg === 0 ? [board.widthMm, board.depthMm] : [board.depthMm, board.widthMm];
      for (let minX = EDGE_MM; minX + w <= PLAYFIELD.width - EDGE_MM; minX += STEP_MM) {
        for (let minY = EDGE_MM; minY + d <= PLAYFIELD.height - EDGE_MM; minY += STEP_MM) {
          const mm = Math.hypot(minX + w / 2 - board.x, minY + d / 2 - board.y);
          if (best !== null && mm >= best.mm - 1e-9) continue;
          const at = { minX, minY, maxX: minX + w, maxY: minY + d };
          if (tall.some((o) => meet(at, o.at, FROM_MECHANISM_MM))) continue;
          if (found.some((f) => meet(at, f.at, BETWEEN_BOARDS_MM))) continue;
          if (kept.some((k) => meet(at, k, 0))) continue;
          const feet = board.standoffMm > 0 ? feetOf(at) : [];
          if (feet.some((foot) => blocked.some((o) => meet(foot, o, 0)))) continue;
          const xMm = rotationDeg === 0 ? minX : minX + w;
          best = { place: { id: board.id, xMm, yMm: minY, rotationDeg, at }, mm };
        }
      }
    }
    if (best === null) throw new Error(`No room under the playfield for ${board.id}.`);
    found.push(best.place);
  }
  return found;
}
