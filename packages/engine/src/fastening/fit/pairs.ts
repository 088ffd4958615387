import { compareText, Query, sameMembers } from "@pinwright/kernel";
import type { Finding } from "../../model/index.ts";
import { pairFinding, pairReachMm, type Shaft } from "./shaft.ts";

type Shafts = readonly Shaft[];

/** Smallest side of the cells that fasteners are sorted into, mm. */
const LEAST_CELL_MM = 25;

/** The sides of a cell grow in steps, so that a thicker screw seldom makes all cells anew. */
const CELL_STEP_MM = 25;

/** Half of the cells about a cell: each pair of neighbours is looked at from one of the two. */
const FORWARD = [
  [1, 0],
  [-1, 1],
  [0, 1],
  [1, 1],
] as const;

/** Looks at pairs of neighbours, with a memory: only cells in or beside which something was changed are looked at again. */
export class Pairs {
  readonly #cells = new Query<Shafts>(sameMembers);
  readonly #found = new Query<readonly Finding[]>(Object.is);

  /** Findings of all pairs. */
  solve(shafts: Shafts, spacingDiameters: number): readonly (readonly Finding[])[] {
    const thickestMm = shafts.reduce((most, { diameterMm }) => Math.max(most, diameterMm), 0);
    const reachMm = Math.max(LEAST_CELL_MM, pairReachMm(thickestMm, spacingDiameters));
    const cellMm = CELL_STEP_MM * Math.ceil(reachMm / CELL_STEP_MM);
    const grouped = new Map<string, { column: number; row: number; panelId: string; shafts: Shaft[] }>();
    for (const shaft of shafts) {
      const column = Math.floor(shaft.xMm / cellMm);
      const row = Math.floor(shaft.yMm / cellMm);
      const key = cellKey(shaft.panelId, column, row);
      const cell = grouped.get(key);
      if (cell === undefined) grouped.set(key, { column, row, panelId: shaft.panelId, shafts: [shaft] });
      else cell.shafts.push(shaft);
    }
    const cells = new Map(
      [...grouped].map(([key, cell]) => [key, this.#cells.ask(key, [cell], () => inOrder(cell.shafts))]),
    );
    return [...grouped].map(([key, { panelId, column, row }]) => {
      const own = cells.get(key) ?? [];
      const beside = FORWARD.map(([dx, dy]) => cells.get(cellKey(panelId, column + dx, row + dy)) ?? NONE);
      return this.#found.ask(key, [spacingDiameters, cellMm, own, ...beside], () =>
        findingsOf(own, beside.flat(), spacingDiameters),
      );
    });
  }

  sweep(): void {
    this.#cells.sweep();
    this.#found.sweep();
  }

  /** How many cells were looked at so far, for tests of growth. */
  get computed(): number {
    return this.#found.computed;
  }
}

const NONE: Shafts = [];

const cellKey = (panelId: string, column: number, row: number): string => `${column} ${row} ${panelId}`;

const inOrder = (shafts: Shafts): Shafts => shafts.toSorted((a, b) => compareText(a.id, b.id));

function findingsOf(own: Shafts, beside: Shafts, spacingDiameters: number): readonly Finding[] {
  const found: Finding[] = [];
  own.forEach((a, i) => {
    for (const b of [...own.slice(i + 1), ...beside]) {
      const finding = pairFinding(a, b, spacingDiameters);
      if (finding !== null) found.push(finding);
    }
  });
  return found;
}
