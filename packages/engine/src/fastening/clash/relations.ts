import { compareText, type Frame3Mm, Query } from "@pinwright/kernel";
import type { Machine } from "../../model/index.ts";
import { type Rigid, rigidBetween } from "./rigid.ts";

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

/** Every way in which two panels stand to each other in the poses of a machine, with a memory. */
export class Relations {
  readonly #all = new Query<readonly Relation[]>(Object.is);

  of(machine: Machine): readonly Relation[] {
    const { poses, pose_places } = machine.book.tables;
    const { panels } = machine;
    return this.#all.ask("all", [poses, pose_places, panels], () => relationsOf(machine));
  }

  sweep(): void {
    this.#all.sweep();
  }
}

function relationsOf({ book, panels }: Machine): readonly Relation[] {
  const found = new Map<string, Map<string, Relation>>();
  for (const pose of [...book.tables.poses].sort((a, b) => compareText(a.id, b.id))) {
    const placed = book.tables.pose_places
      .filter((row) => row.pose === pose.id && panels.has(row.panel))
      .map((row) => ({ panelId: row.panel, frame: frameOf(row) }))
      .sort((a, b) => compareText(a.panelId, b.panelId));
    placed.forEach((a, i) => {
      for (const b of placed.slice(i + 1)) {
        const ways = found.get(`${a.panelId} ${b.panelId}`) ?? new Map<string, Relation>();
        found.set(`${a.panelId} ${b.panelId}`, ways);
        const bInA = rigidBetween(a.frame, b.frame);
        const key = keyOf(bInA);
        const known = ways.get(key);
        ways.set(key, {
          a: a.panelId,
          b: b.panelId,
          bInA,
          aInB: rigidBetween(b.frame, a.frame),
          poses: [...(known?.poses ?? []), pose.id],
          changes: false,
        });
      }
    });
  }
  return [...found.values()].flatMap((ways) =>
    [...ways.values()].map((relation) => ({ ...relation, changes: ways.size > 1 })),
  );
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

const keyOf = ({ origin, x, y, z }: Rigid): string =>
  [origin, x, y, z]
    .flatMap((p) => [p.xMm, p.yMm, p.zMm])
    .map((mm) => Math.round(mm / GRAIN_MM))
    .join(" ");
