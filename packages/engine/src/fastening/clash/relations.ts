import { compareText, type Frame3Mm, NestedQuery, Query } from "@pinwright/kernel";
import type { Machine } from "../../model/index.ts";
import { boxesNear, movedBox, type Rigid, rigidBetween, type SpaceBox } from "./rigid.ts";
import { joinedBoxes, type Stand } from "./stand.ts";

/** How one panel stands to another, and the poses in which it does so. */
export interface Relation {
  readonly a: string;
  readonly b: string;
  /** The frame of `b` in that of `a`. */
  readonly bInA: Rigid;
  /** The frame of `a` in that of `b`. */
  readonly aInB: Rigid;
  readonly poses: readonly string[];
  /** They stand to each other in other ways too: they can meet on the way. */
  readonly changes: boolean;
}

/** Ways to stand that differ by less than this are the same, mm. */
const GRAIN_MM = 1e-6;

/** Frames in the room, by pose and panel. */
type Frames = ReadonlyMap<string, ReadonlyMap<string, Frame3Mm>>;

const ROOM: Frame3Mm = { xMm: 0, yMm: 0, zMm: 0, rxDeg: 0, ryDeg: 0, rzDeg: 0 };

/** The ways in which panels stand near each other in the poses of a machine, with a memory. */
export class Relations {
  readonly #frames = new NestedQuery<Frames, Frame3Mm>(Object.is, sameFrame);
  readonly #ways = new Query<readonly Relation[]>(Object.is);

  /** Of every two panels that come within `withinMm` of each other in any pose, with what stands on them, all ways. */
  of(machine: Machine, stands: ReadonlyMap<string, Stand>, withinMm: number): readonly Relation[] {
    const { poses, pose_places } = machine.book.tables;
    const frames = this.#frames.ask("all", [poses, pose_places, machine.panels], (parts) =>
      framesOf(machine, parts),
    );
    const pairs = new Map<string, readonly [string, string]>();
    for (const placed of frames.values())
      for (const [a, b] of nearPairs(placed, stands, withinMm)) pairs.set(`${a} ${b}`, [a, b]);
    return [...pairs]
      .sort(([a], [b]) => compareText(a, b))
      .flatMap(([key, [a, b]]) => {
        const both = [...frames].map(([pose, placed]) => ({ pose, a: placed.get(a), b: placed.get(b) }));
        const inputs = both.flatMap((way) => [way.pose, way.a, way.b]);
        return this.#ways.ask(key, inputs, () => waysOf(a, b, both));
      });
  }

  sweep(): void {
    this.#frames.sweep();
    this.#ways.sweep();
  }
}

function framesOf({ book, panels }: Machine, parts: Query<Frame3Mm>): Frames {
  const poses = book.tables.poses.map(({ id }) => id).sort(compareText);
  const frames = new Map(poses.map((id) => [id, new Map<string, Frame3Mm>()]));
  for (const row of book.tables.pose_places)
    if (panels.has(row.panel))
      frames.get(row.pose)?.set(
        row.panel,
        parts.ask(`${row.pose} ${row.panel}`, [row], () => frameOf(row)),
      );
  return frames;
}

type PosePlace = Machine["book"]["tables"]["pose_places"][number];

const frameOf = (row: PosePlace): Frame3Mm => ({
  xMm: row.x_mm,
  yMm: row.y_mm,
  zMm: row.z_mm,
  rxDeg: row.rx_deg,
  ryDeg: row.ry_deg,
  rzDeg: row.rz_deg,
});

function sameFrame(a: Frame3Mm, b: Frame3Mm): boolean {
  return (
    a.xMm === b.xMm &&
    a.yMm === b.yMm &&
    a.zMm === b.zMm &&
    a.rxDeg === b.rxDeg &&
    a.ryDeg === b.ryDeg &&
    a.rzDeg === b.rzDeg
  );
}

/** Every two panels of a pose whose boxes in the room come near each other; the first in code-point order. */
function nearPairs(
  placed: ReadonlyMap<string, Frame3Mm>,
  stands: ReadonlyMap<string, Stand>,
  withinMm: number,
): readonly (readonly [string, string])[] {
  const boxes = [...placed]
    .flatMap(([panelId, frame]): { panelId: string; box: SpaceBox }[] => {
      const stand = stands.get(panelId);
      if (stand === undefined) return [];
      const own = stand.box === null ? stand.slabBox : joinedBoxes(stand.box, stand.slabBox);
      return [{ panelId, box: movedBox(rigidBetween(ROOM, frame), own) }];
    })
    .sort((a, b) => a.box.minXMm - b.box.minXMm);
  const pairs: [string, string][] = [];
  boxes.forEach((one, i) => {
    for (let j = i + 1; j < boxes.length; j++) {
      const other = boxes[j];
      // Those after it begin farther on still.
      if (other === undefined || other.box.minXMm >= one.box.maxXMm + withinMm) return;
      if (!boxesNear(one.box, other.box, withinMm)) continue;
      const [a, b] = [one.panelId, other.panelId].sort(compareText);
      if (a !== undefined && b !== undefined) pairs.push([a, b]);
    }
  });
  return pairs;
}

interface Way {
  readonly pose: string;
  readonly a: Frame3Mm | undefined;
  readonly b: Frame3Mm | undefined;
}

/** The ways in which two panels stand to each other, each with its poses. */
function waysOf(a: string, b: string, both: readonly Way[]): readonly Relation[] {
  const ways = new Map<string, Omit<Relation, "changes">>();
  for (const way of both) {
    if (way.a === undefined || way.b === undefined) continue;
    const bInA = rigidBetween(way.a, way.b);
    const key = keyOf(bInA);
    const poses = [...(ways.get(key)?.poses ?? []), way.pose];
    ways.set(key, { a, b, bInA, aInB: rigidBetween(way.b, way.a), poses });
  }
  return [...ways.values()].map((relation) => ({ ...relation, changes: ways.size > 1 }));
}

const keyOf = ({ origin, x, y, z }: Rigid): string =>
  [origin, x, y, z]
    .flatMap((p) => [p.xMm, p.yMm, p.zMm])
    .map((mm) => Math.round(mm / GRAIN_MM))
    .join(" ");
