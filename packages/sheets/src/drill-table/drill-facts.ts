import { type DrillRow, drillTable, type FastenerItem, type LineResult, type Side } from "@pinwright/engine";
import { compareText } from "@pinwright/kernel";
import { type PanelView, panelView } from "../assembly/panel-view.ts";
import { symbolOf } from "../assembly/symbol-mark.ts";
import type { Layer } from "../compose/mark.ts";

/** A hole to drill, as the panel lies with its side up. */
export interface DrillHole {
  readonly row: DrillRow;
  readonly number: number;
  /** From the lower left corner of the panel as it lies, true size. */
  readonly xMm: number;
  readonly yMm: number;
  readonly fasteners: readonly FastenerItem[];
}

/** Holes of one drill: the same diameter and depth. */
export interface Drill {
  /** `D1`, counted by side. */
  readonly mark: string;
  readonly kind: DrillRow["kind"];
  readonly diameterMm: number;
  readonly depthMm: number | null;
  readonly layer: Layer;
  readonly holes: readonly DrillHole[];
}

/** All that is drilled on one side of a panel. */
export interface DrillSide {
  readonly panelId: string;
  readonly side: Side;
  readonly view: PanelView;
  readonly drills: readonly Drill[];
}

/** `DRILL_UNDER_D180_Z090` or `DRILL_TOP_D340_THROUGH`: hundredths of a mm of diameter, tenths of depth. */
function layerOf(row: DrillRow): Layer {
  const digits = (n: number): string => String(Math.round(n)).padStart(3, "0");
  const depth = row.depthMm === null ? "THROUGH" : `Z${digits(row.depthMm * 10)}`;
  return `DRILL_${row.side.toUpperCase()}_D${digits(row.diameterMm * 100)}_${depth}`;
}

/** Every panel side that something is drilled on, in the order of the panels, the top first. */
export function drillSides(line: LineResult): readonly DrillSide[] {
  return [...line.machine.panels.keys()].flatMap((panelId) => {
    const rows = drillTable(line.machine, line.fastening.fits, panelId);
    return (["top", "under"] as const).flatMap((side) => {
      const view = panelView(line, panelId, side, 1);
      const own = rows.filter((row) => row.side === side);
      return view === null || own.length === 0
        ? []
        : [{ panelId, side, view, drills: drillsOf(line, own, view) }];
    });
  });
}

function drillsOf(line: LineResult, rows: readonly DrillRow[], view: PanelView): readonly Drill[] {
  const byLayer = new Map<Layer, DrillRow[]>();
  for (const row of rows) byLayer.set(layerOf(row), [...(byLayer.get(layerOf(row)) ?? []), row]);
  const sorted = [...byLayer].sort(([a], [b]) => compareText(a, b));
  let number = 0;
  return sorted.flatMap(([layer, own], i): Drill[] => {
    const first = own[0];
    if (first === undefined) return [];
    return [
      {
        mark: `D${i + 1}`,
        kind: first.kind,
        diameterMm: first.diameterMm,
        depthMm: first.depthMm,
        layer,
        holes: own.map((row): DrillHole => {
          number++;
          const lies = view.lying(row);
          const fasteners = row.fastenerIds.flatMap((id) => {
            const item = line.machine.items.get(id);
            return item?.kind === "fastener" ? [item] : [];
          });
          return { row, number, ...lies, fasteners };
        }),
      },
    ];
  });
}

/** `A, C`: letters of the fasteners that go into some holes. */
export function lettersOf(line: LineResult, holes: readonly DrillHole[]): string {
  const letters = holes.flatMap((h) => h.fasteners.map((f) => symbolOf(line, f.type.id).letter));
  return [...new Set(letters)].sort(compareText).join(", ");
}
