import { GridIndex, Query, sameMembers } from "@pinwright/kernel";
import { appliesTo, groupRows, type Machine } from "../../model/index.ts";
import { type CutoutShape, cutoutShape } from "./cutout-shape.ts";

/** The cutouts of one panel, to be found by place. */
export interface PanelCutouts {
  readonly shapes: readonly CutoutShape[];
  readonly index: GridIndex<CutoutShape>;
}

/** Side of the cells in which cutouts are found, mm: about the size of most. */
const CELL_MM = 40;

/** The cutouts of every panel that apply to a machine, with a memory: a shape that was not edited stays the same object. */
export class CutoutsOfPanels {
  readonly #shapes = new Query<CutoutShape | null>(Object.is);
  readonly #lists = new Query<readonly CutoutShape[]>(sameMembers);
  readonly #panels = new Query<PanelCutouts>(Object.is);
  readonly #all = new Query<ReadonlyMap<string, readonly CutoutShape[]>>(Object.is);

  /** By panel; a panel without cutouts has no entry. */
  solve(machine: Machine): ReadonlyMap<string, PanelCutouts> {
    const { book, options } = machine;
    const { cutouts } = book.tables;
    const shapes = this.#all.ask("all", [cutouts, book.outlines, ...options], () => {
      const byPanel = groupRows(cutouts, (row) => (appliesTo(row, options) ? row.panel : null));
      return new Map(
        [...byPanel].map(([panelId, rows]) => [
          panelId,
          this.#lists.ask(panelId, [book.outlines, ...rows], () =>
            rows.flatMap(
              (row) => this.#shapes.ask(row.id, [row, book.outlines], () => cutoutShape(book, row)) ?? [],
            ),
          ),
        ]),
      );
    });
    return new Map([...shapes].map(([id, list]) => [id, this.#panels.ask(id, [list], () => indexed(list))]));
  }

  sweep(): void {
    this.#panels.sweep();
    this.#all.sweep();
  }
}

function indexed(shapes: readonly CutoutShape[]): PanelCutouts {
  const index = new GridIndex<CutoutShape>(CELL_MM);
  for (const shape of shapes) index.add(shape.box, shape);
  return { shapes, index };
}
