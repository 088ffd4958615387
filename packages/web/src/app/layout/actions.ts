import type { PointMm } from "@pinwright/kernel";
import type { AppWords } from "@pinwright/words/app";
import type { DeskClient } from "../book/desk-client.ts";
import { type Alignment, aligned, distributed, type Moves, type Spread } from "./geometry/align.ts";
import { freshId } from "./geometry/names.ts";
import { moversOf } from "./move-session.ts";
import type { Scene, Side, Target } from "./scene.ts";

/** Where things are done: one side of one panel. */
export interface Stage {
  readonly desk: DeskClient;
  readonly words: AppWords;
  readonly scene: Scene;
  readonly panelId: string;
  readonly side: Side;
}

/** Lanes and crossings that are drawn get the size of others that are there; this when there are none. */
export const USUAL_WAY_MM = 20;

const targetsOf = (scene: Scene, ids: readonly string[]): readonly Target[] =>
  ids.flatMap((id) => scene.targets.get(id) ?? []);

const round = (value: number): number => Math.round(value * 100) / 100;

/** Turns each thing about its own origin. */
export async function rotate(
  { desk, words, scene }: Stage,
  ids: readonly string[],
  byDeg: number,
): Promise<void> {
  const movers = moversOf(scene, ids).filter(
    (target) => target.moves !== null && target.layer !== "waypoints" && target.layer !== "fasteners",
  );
  if (movers.length === 0) return;
  const places = movers.flatMap(({ moves, rotationDeg }) =>
    moves === null ? [] : [{ ...moves, rotationDeg: round((rotationDeg + byDeg + 720) % 360) }],
  );
  await desk.edit(words.layout.notes.rotate(movers[0]?.id ?? "", movers.length), { kind: "place", places });
}

async function arrange({ desk, words, scene }: Stage, moves: Moves): Promise<void> {
  if (moves.size === 0) return;
  const places = [...moves].flatMap(([id, { dxMm, dyMm }]) => {
    const target = scene.targets.get(id);
    if (target?.moves == null) return [];
    return [{ ...target.moves, xMm: round(target.xMm + dxMm), yMm: round(target.yMm + dyMm) }];
  });
  await desk.edit(words.layout.notes.arrange(places.length), { kind: "place", places });
}

export const align = (stage: Stage, ids: readonly string[], how: Alignment): Promise<void> =>
  arrange(stage, aligned(moversOf(stage.scene, ids), how, stage.side === "under"));

export const distribute = (stage: Stage, ids: readonly string[], how: Spread): Promise<void> =>
  arrange(stage, distributed(moversOf(stage.scene, ids), how));

/** Rows of what is selected; parts of a mechanism are left out. */
export const rowsOf = (scene: Scene, ids: readonly string[]) =>
  targetsOf(scene, ids).flatMap(({ row }) => (row === null ? [] : [row]));

export async function remove({ desk, words, scene }: Stage, ids: readonly string[]): Promise<boolean> {
  const rows = rowsOf(scene, ids);
  if (rows.length === 0) return false;
  await desk.edit(words.layout.notes.remove(rows[0]?.id ?? "", rows.length), { kind: "remove", rows });
  return true;
}

const takenIds = async (desk: DeskClient): Promise<ReadonlySet<string>> =>
  new Set(await desk.ask("takenIds", [{ table: "waypoints" }, { table: "lanes" }]));

/** Last part of a panel's id, to begin new ids with. */
const shortOf = (panelId: string): string => panelId.split(".").at(-1) ?? panelId;

export async function addWaypoint({ desk, words, panelId, side }: Stage, at: PointMm): Promise<string> {
  const id = freshId(`wp.${shortOf(panelId)}-${side}-`, await takenIds(desk));
  await desk.edit(words.layout.notes.waypoint(id), {
    kind: "add",
    rows: [
      { table: "waypoints", cells: { id, panel: panelId, side, x_mm: round(at.xMm), y_mm: round(at.yMm) } },
    ],
  });
  return id;
}

/** A lane from a waypoint to another one, or to a new one; gives the ids of the lane and of its far end. */
export async function addLane(
  { desk, words, panelId, side }: Stage,
  fromId: string,
  to: string | PointMm,
  diameters: readonly number[],
): Promise<{ readonly laneId: string; readonly toId: string }> {
  const taken = await takenIds(desk);
  const toId = typeof to === "string" ? to : freshId(`wp.${shortOf(panelId)}-${side}-`, taken);
  const laneId = freshId(`ln.${shortOf(panelId)}-${side}-`, taken);
  const waypoint =
    typeof to === "string"
      ? []
      : [
          {
            table: "waypoints" as const,
            cells: { id: toId, panel: panelId, side, x_mm: round(to.xMm), y_mm: round(to.yMm) },
          },
        ];
  await desk.edit(words.layout.notes.lane(laneId), {
    kind: "add",
    rows: [
      ...waypoint,
      {
        table: "lanes",
        cells: { id: laneId, from: fromId, to: toId, max_diameter_mm: commonest(diameters) ?? USUAL_WAY_MM },
      },
    ],
  });
  return { laneId, toId };
}

function commonest(values: readonly number[]): number | null {
  const counts = new Map<number, number>();
  for (const value of values) counts.set(value, (counts.get(value) ?? 0) + 1);
  let best: number | null = null;
  let most = 0;
  for (const [value, count] of counts)
    if (count > most) {
      best = value;
      most = count;
    }
  return best;
}

/** Circles of a drawing as fasteners or waypoints of this side, in the panel's own frame. */
export async function addCircles(
  { desk, words, panelId, side }: Stage,
  circles: readonly PointMm[],
  as: "waypoints" | "fasteners",
  typeId: string,
  stem: string,
): Promise<void> {
  const taken = new Set(await desk.ask("takenIds", [{ table: as }]));
  const rows = circles.map(({ xMm, yMm }) => {
    const id = freshId(stem, taken);
    taken.add(id);
    const place = { id, panel: panelId, side, x_mm: round(xMm), y_mm: round(yMm) };
    return { table: as, cells: as === "fasteners" ? { ...place, type: typeId } : place };
  });
  await desk.edit(words.layout.notes.circles(rows.length), { kind: "add", rows });
}
