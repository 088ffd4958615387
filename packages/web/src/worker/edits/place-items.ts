import { type CellChange, type CellTables, plainDecimal } from "@pinwright/book";
import { rowOfKey } from "./rows.ts";
import { setCells } from "./set-cells.ts";

/** Tables whose rows have a place of their own. */
const PLACED = ["devices", "boards", "mechanisms", "inlines", "fasteners", "waypoints", "cutouts"] as const;
type PlacedTable = (typeof PLACED)[number];

/** Things that get another place on their panels. What is left out stays. */
export interface PlaceItems {
  readonly kind: "place";
  readonly places: readonly {
    readonly table: PlacedTable;
    readonly id: string;
    readonly xMm?: number;
    readonly yMm?: number;
    readonly rotationDeg?: number;
    readonly panelId?: string;
    readonly side?: "top" | "under";
  }[];
}

export function placeItems(tables: CellTables, { places }: PlaceItems): readonly CellChange[] {
  const cells = places.flatMap(({ table, id, xMm, yMm, rotationDeg, panelId, side }) => {
    const row = rowOfKey(tables, table, id);
    if (row === null) return [];
    const texts: Readonly<Record<string, string | undefined>> = {
      x_mm: xMm === undefined ? undefined : plainDecimal(xMm),
      y_mm: yMm === undefined ? undefined : plainDecimal(yMm),
      rotation_deg:
        rotationDeg === undefined ? undefined : rotationDeg === 0 ? "" : plainDecimal(rotationDeg),
      panel: panelId,
      side,
    };
    return Object.entries(texts).flatMap(([column, to]) =>
      to === undefined ? [] : [{ table, row, column, to }],
    );
  });
  return setCells(tables, { kind: "cells", cells });
}
