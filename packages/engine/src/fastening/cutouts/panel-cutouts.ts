import type { BookRow } from "@pinwright/book";
import { GridIndex, NestedQuery, Query, sameMembers } from "@pinwright/kernel";
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
  readonly #rows = new Query<ReadonlyMap<string, readonly BookRow<"cutouts">[]>>(Object.is);
  readonly #shapes = new NestedQuery<readonly CutoutShape[], CutoutShape | null>(sameMembers, Object.is);
  readonly #panels = new Query<PanelCutouts>(Object.is);

  /** By panel; a panel without cutouts has no entry. */
  solve(machine: Machine): ReadonlyMap<string, PanelCutouts> {
    const { book, options } = machine;
    const { outlines } = book;
    const { cutouts } = book.tables;
    const byPanel = this.#rows.ask("all", [cutouts, ...options], () =>
      groupRows(cutouts, (row) => (appliesTo(row, options) ? row.panel : null)),
    );
    const found = new Map<string, PanelCutouts>();
    for (const [panelId, rows] of byPanel) {
      const shapes = this.#shapes.ask(panelId, [outlines, ...rows], (parts) =>
        rows.flatMap((row) => parts.ask(row.id, [row, outlines], () => cutoutShape(book, row)) ?? []),
      );
      found.set(
        panelId,
        this.#panels.ask(panelId, [shapes], () => indexed(shapes)),
      );
    }
    return found;
  }

  /** Forgets what the last machine did not use. */
  sweep(): void {
    this.#rows.sweep();
    this.#shapes.sweep();
    this.#panels.sweep();
  }
}

function indexed(shapes: readonly CutoutShape[]): PanelCutouts {
  const index = new GridIndex<CutoutShape>(CELL_MM);
  for (const shape of shapes) index.add(shape.box, shape);
  return { shapes, index };
}
