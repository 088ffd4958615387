import { compareText, distance, shortestPathOrder, toMicrometres } from "@pinwright/kernel";
import type { FastenerFit, FastenerHole, Machine, Side } from "../../model/index.ts";

/** A hole to be drilled into a panel, for all fasteners that go into it. */
export interface DrillRow {
  /** In code-point order; more than one when several share the hole. */
  readonly fastenerIds: readonly string[];
  /** Face that it is drilled from. */
  readonly side: Side;
  readonly xMm: number;
  readonly yMm: number;
  readonly kind: FastenerHole["kind"];
  readonly diameterMm: number;
  /** Depth from that face to the tip of the drill; null: right through. */
  readonly depthMm: number | null;
}

/** Places are compared in steps of so many µm: nobody drills nearer than 0.05 mm. */
const SAME_PLACE_UM = 50;

/** The order of a walk is worth little search: few disturbances, and its bound is not asked for. */
const WALK_EFFORT = { kicksPerNode: 1, boundSteps: 0 };

/**
 * The pilot and clearance holes of a panel's fasteners, without its cutouts: those from the top first, then by diameter,
 * and the holes of one drill in the order of a short walk that begins at the hole nearest to the panel's origin. Holes of
 * the same diameter at the same place are one: drilled through if any of them is, else as deep as the deepest.
 */
export function drillTable(
  machine: Machine,
  fits: ReadonlyMap<string, FastenerFit>,
  panelId: string,
): readonly DrillRow[] {
  const rows = merged(holesOf(machine, fits, panelId));
  const drills = new Map<string, DrillRow[]>();
  for (const row of rows) {
    const key = `${row.side} ${row.diameterMm}`;
    const same = drills.get(key);
    if (same === undefined) drills.set(key, [row]);
    else same.push(row);
  }
  return [...drills.values()].sort(bySideAndDiameter).flatMap(walked);
}

function holesOf(
  machine: Machine,
  fits: ReadonlyMap<string, FastenerFit>,
  panelId: string,
): readonly DrillRow[] {
  const rows: DrillRow[] = [];
  for (const [id, { hole }] of fits) {
    const item = machine.items.get(id);
    if (hole === null || item === undefined || item.place.panelId !== panelId) continue;
    const { side, xMm, yMm } = item.place;
    const { kind, diameterMm, depthMm } = hole;
    rows.push({ fastenerIds: [id], side, xMm, yMm, kind, diameterMm, depthMm });
  }
  return rows.sort((a, b) => compareText(a.fastenerIds[0] ?? "", b.fastenerIds[0] ?? ""));
}

/** One row for each hole. What goes right through is the same hole from either side: the first one's side is kept. */
function merged(rows: readonly DrillRow[]): readonly DrillRow[] {
  const holes = new Map<string, DrillRow>();
  for (const row of rows) {
    const steps = [row.xMm, row.yMm].map((mm) => Math.round(toMicrometres(mm) / SAME_PLACE_UM));
    const from = row.depthMm === null ? "through" : row.side;
    const key = `${steps.join(" ")} ${toMicrometres(row.diameterMm)} ${from}`;
    const known = holes.get(key);
    holes.set(key, known === undefined ? row : joined(known, row));
  }
  return [...holes.values()];
}

const joined = (a: DrillRow, b: DrillRow): DrillRow => ({
  ...a,
  fastenerIds: [...a.fastenerIds, ...b.fastenerIds],
  depthMm: a.depthMm === null || b.depthMm === null ? null : Math.max(a.depthMm, b.depthMm),
});

function bySideAndDiameter([a]: readonly DrillRow[], [b]: readonly DrillRow[]): number {
  if (a === undefined || b === undefined) return 0;
  if (a.side !== b.side) return a.side === "top" ? -1 : 1;
  return a.diameterMm - b.diameterMm;
}

function walked(rows: readonly DrillRow[]): readonly DrillRow[] {
  const fromOriginMm = rows.map((row) => distance(row, { xMm: 0, yMm: 0 }));
  const start = fromOriginMm.indexOf(Math.min(...fromOriginMm));
  const matrix = rows.map((a) => rows.map((b) => distance(a, b)));
  return shortestPathOrder(matrix, start, undefined, WALK_EFFORT).order.flatMap((i) => rows[i] ?? []);
}
