import { type BookRow, NET_CLASSES } from "@pinwright/book";
import {
  type BundledHarness,
  bundleOf,
  circlesOf,
  type HarnessResult,
  type Machine,
  type Thoroughfare,
  thoroughfareInputs,
  thoroughfares,
} from "@pinwright/engine";
import { createPackingMemory, Query } from "@pinwright/kernel";
import type { Model } from "../model.ts";
import { view } from "./view.ts";

/** A waypoint as it is drawn. */
export interface LayoutWaypoint {
  readonly id: string;
  readonly side: "top" | "under";
  readonly xMm: number;
  readonly yMm: number;
  readonly hold: BookRow<"waypoints">["hold"];
  readonly holdPart: string | null;
}

/** One harness in a lane. */
export interface LaneShare {
  readonly harnessId: string;
  readonly number: number;
  readonly wires: number;
  readonly laidMm: number;
}

/** A lane, and how full it is. */
export interface LayoutLane {
  readonly id: string;
  readonly from: string;
  readonly to: string;
  readonly side: "top" | "under";
  readonly maxMm: number;
  /** Blank: all but mains. */
  readonly classes: readonly string[];
  /** Diameter of everything in it together, as laid; 0 when it is empty. */
  readonly usedMm: number;
  readonly shares: readonly LaneShare[];
}

/** A way from one panel side to another, as seen from one of its ends. */
export interface LayoutCrossing {
  readonly id: string;
  readonly kind: BookRow<"crossings">["kind"];
  /** Waypoint on this panel, and the one at the other end. */
  readonly here: string;
  readonly there: string;
  readonly side: "top" | "under";
  readonly therePanelId: string;
  readonly thereSide: "top" | "under";
  /** Between the ties; null: found from the poses. */
  readonly lengthMm: number | null;
  /** Depth free for the slack when it is shut; null: not checked. */
  readonly roomMm: number | null;
  /** Blank: all but mains. */
  readonly classes: readonly string[];
  readonly usedMm: number;
  readonly maxMm: number;
}

type OnPanel = { readonly panelId: string };

const waypointsOn = ({ book }: Model, panelId: string): readonly BookRow<"waypoints">[] =>
  book.tables.waypoints.filter((row) => row.panel === panelId);

export const layoutWaypoints = view<OnPanel, LayoutWaypoint>({
  early: true,
  uses: ({ book }) => [book.tables.waypoints],
  entries: (model, { panelId }) =>
    new Map(
      waypointsOn(model, panelId).map((row) => [
        row.id,
        {
          id: row.id,
          side: row.side,
          xMm: row.x_mm,
          yMm: row.y_mm,
          hold: row.hold,
          holdPart: row.hold_part,
        },
      ]),
    ),
  restsInPreview: true,
});

const packings = createPackingMemory();
const loads = new Query<{ readonly usedMm: number; readonly shares: readonly LaneShare[] }>(Object.is);

const sharesOf = ({ through }: Thoroughfare): readonly LaneShare[] =>
  through.map(({ harness, branches }) => ({
    harnessId: harness.harness.id,
    number: harness.harness.number,
    wires: new Set(branches.flatMap((branch) => branch.wireIds)).size,
    laidMm: Math.max(...branches.map((branch) => branch.bundle.laidMm)),
  }));

/** Diameter of all wires of a place together: that of the one bundle, or packed anew when there are several. */
function usedMm(machine: Machine, { through }: Thoroughfare): number {
  const branches = through.flatMap((one) => one.branches);
  const [only] = branches;
  if (branches.length === 1 && only !== undefined) return only.bundle.laidMm;
  const inside = through.flatMap(({ harness, branches: own }) => {
    const ids = new Set(own.flatMap((branch) => branch.wireIds));
    return harness.wires.filter((wire) => ids.has(wire.id));
  });
  return bundleOf(circlesOf(inside, machine.book), machine.shop, packings).laidMm;
}

/** What lies in the lanes and crossings that `wanted` names. */
function loadsOf(
  { line }: Model,
  wanted: ReadonlySet<string>,
): ReadonlyMap<string, { readonly usedMm: number; readonly shares: readonly LaneShare[] }> {
  const { machine } = line;
  const results: readonly BundledHarness[] = [...line.harnesses.values()];
  const found = thoroughfares(machine, results).filter(
    (place) => place.kind !== "clip" && wanted.has(place.id),
  );
  return new Map(
    found.map((place) => {
      const inputs = [machine.shop, machine.book.tables.cables, ...thoroughfareInputs(place)];
      return [
        place.id,
        loads.ask(place.id, inputs, () => ({ usedMm: usedMm(machine, place), shares: sharesOf(place) })),
      ];
    }),
  );
}

const branchesOf = ({ line }: Model): readonly HarnessResult["branches"][] =>
  [...line.harnesses.values()].map((harness) => harness.branches);

export const layoutLanes = view<OnPanel, LayoutLane>({
  early: true,
  uses: (model) => [model.book.tables.lanes, model.book.tables.waypoints, ...branchesOf(model)],
  entries: (model, { panelId }) => {
    const places = new Map(waypointsOn(model, panelId).map((row) => [row.id, row]));
    const rows = model.book.tables.lanes.filter((row) => places.has(row.from) && places.has(row.to));
    const inside = loadsOf(model, new Set(rows.map((row) => row.id)));
    return new Map(
      rows.map((row) => [
        row.id,
        {
          id: row.id,
          from: row.from,
          to: row.to,
          side: places.get(row.from)?.side ?? "top",
          maxMm: row.max_diameter_mm,
          classes: NET_CLASSES.filter((name) => row.classes.includes(name)),
          usedMm: inside.get(row.id)?.usedMm ?? 0,
          shares: inside.get(row.id)?.shares ?? [],
        },
      ]),
    );
  },
  restsInPreview: true,
});

export const layoutCrossings = view<OnPanel, LayoutCrossing>({
  early: true,
  uses: (model) => [model.book.tables.crossings, model.book.tables.waypoints, ...branchesOf(model)],
  entries: (model, { panelId }) => {
    const places = new Map(model.book.tables.waypoints.map((row) => [row.id, row]));
    const inside = loadsOf(model, new Set(model.book.tables.crossings.map((row) => row.id)));
    return new Map(
      model.book.tables.crossings.flatMap((row) =>
        [
          [row.from, row.to],
          [row.to, row.from],
        ].flatMap(([here = "", there = ""]): [string, LayoutCrossing][] => {
          const a = places.get(here);
          const b = places.get(there);
          if (a?.panel !== panelId || b === undefined) return [];
          const crossing: LayoutCrossing = {
            id: row.id,
            kind: row.kind,
            here,
            there,
            side: a.side,
            therePanelId: b.panel,
            thereSide: b.side,
            lengthMm: row.length_mm,
            roomMm: row.room_mm,
            classes: NET_CLASSES.filter((name) => row.classes.includes(name)),
            usedMm: inside.get(row.id)?.usedMm ?? 0,
            maxMm: row.max_diameter_mm,
          };
          return [[`${row.id} ${here}`, crossing]];
        }),
      ),
    );
  },
  restsInPreview: true,
});
