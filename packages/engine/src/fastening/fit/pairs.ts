import { Query, sameMembers } from "@pinwright/kernel";
import type { Finding } from "../../model/index.ts";
import { pairFinding, pairReachMm, type Shaft } from "./shaft.ts";

type Shafts = readonly Shaft[];

/** Smallest side of the cells that fasteners are sorted into, mm. */
const LEAST_CELL_MM = 25;

/** The sides of a cell grow in steps, so that a thicker screw seldom makes all cells anew. */
const CELL_STEP_MM = 25;

/** Cells of a panel are counted row after row, each row so many long: more than a panel of ±10 m has. */
const ROW = 4096;

/** Half of the cells about a cell: each pair of neighbours is looked at from one of the two. */
const FORWARD = [1, ROW - 1, ROW, ROW + 1] as const;

/** Looks at pairs of neighbours, with a memory: only cells in or beside which something was changed are looked at again. */
export class Pairs {
  readonly #all = new Query<readonly Finding[]>(sameMembers);
  readonly #cells = new Query<Shafts>(sameMembers);
  readonly #found = new Query<readonly Finding[]>(Object.is);
  #isAnew = false;

  /** Findings of all pairs. */
  solve(shafts: Shafts, spacingDiameters: number): readonly Finding[] {
    return this.#all.ask("all", [spacingDiameters, ...shafts], () => this.#solve(shafts, spacingDiameters));
  }

  #solve(shafts: Shafts, spacingDiameters: number): readonly Finding[] {
    this.#isAnew = true;
    const thickestMm = shafts.reduce((most, { diameterMm }) => Math.max(most, diameterMm), 0);
    const reachMm = Math.max(LEAST_CELL_MM, pairReachMm(thickestMm, spacingDiameters));
    const cellMm = CELL_STEP_MM * Math.ceil(reachMm / CELL_STEP_MM);
    return [...cellsOf(shafts, cellMm)].flatMap(([panelId, cells]) => {
      for (const [key, cell] of cells)
        cell.shafts = this.#cells.ask(`${key} ${panelId}`, cell.shafts, () => cell.shafts);
      return [...cells].flatMap(([key, { shafts: own }]) => {
        const beside = FORWARD.map((step) => cells.get(key + step)?.shafts ?? NONE);
        return this.#found.ask(`${key} ${panelId}`, [spacingDiameters, own, ...beside], () =>
          findingsOf(own, beside.flat(), spacingDiameters),
        );
      });
    });
  }

  /** Forgets cells that are empty now; while nothing has changed they are not asked for. */
  sweep(): void {
    if (this.#isAnew) {
      this.#cells.sweep();
      this.#found.sweep();
    }
    this.#isAnew = false;
  }

  /** How many cells were looked at so far, for tests of growth. */
  get computed(): number {
    return this.#found.computed;
  }
}

const NONE: Shafts = [];

/** Fasteners by panel and cell, in their own order. */
function cellsOf(
  shafts: Shafts,
  cellMm: number,
): ReadonlyMap<string, ReadonlyMap<number, { shafts: Shafts }>> {
  const panels = new Map<string, Map<number, { shafts: Shaft[] }>>();
  for (const shaft of shafts) {
    const key = Math.floor(shaft.xMm / cellMm) + ROW * Math.floor(shaft.yMm / cellMm);
    let cells = panels.get(shaft.panelId);
    if (cells === undefined) {
      cells = new Map();
      panels.set(shaft.panelId, cells);
    }
    const cell = cells.get(key);
    if (cell === undefined) cells.set(key, { shafts: [shaft] });
    else cell.shafts.push(shaft);
  }
  return panels;
}

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
