import { type BoxMm, joinBoxes } from "@pinwright/kernel";
import type { Solid } from "../../model/index.ts";
import type { Solids } from "../solids/solids-solver.ts";

/** An area of a panel in which something has changed. */
export interface Area {
  readonly panelId: string;
  readonly box: BoxMm;
}

/** Areas of the items whose solids are others than before, from where they were to where they are. */
export function changedAreas(before: Solids, now: Solids): Area[] {
  const areas: Area[] = [];
  if (before === now) return areas;
  for (const [id, old] of before) {
    const fresh = now.get(id);
    if (fresh !== old) areas.push(...areasOf(fresh === undefined ? old : [...old, ...fresh]));
  }
  for (const [id, fresh] of now) if (!before.has(id)) areas.push(...areasOf(fresh));
  return areas;
}

/** One area round all solids on each panel. */
function areasOf(solids: readonly Solid[]): readonly Area[] {
  const boxes = new Map<string, BoxMm>();
  for (const { panelId, box } of solids) {
    const known = boxes.get(panelId);
    boxes.set(panelId, known === undefined ? box : joinBoxes(known, box));
  }
  return [...boxes].map(([panelId, box]) => ({ panelId, box }));
}

/** More areas than this are looked at as one: with so many, looking at each costs more than it saves. */
const MOST_AREAS = 300;

/** Whether an area lies within reach of some place, boxes counted. */
export class Changes {
  readonly #areas: readonly Area[];
  readonly #everything: boolean;

  constructor(areas: readonly Area[], everything: boolean) {
    this.#areas = areas;
    this.#everything = everything || areas.length > MOST_AREAS;
  }

  /** Whether anything within a distance of a box has changed. */
  touch(panelId: string, box: BoxMm, byMm: number): boolean {
    if (this.#everything) return true;
    for (const area of this.#areas) {
      const other = area.box;
      if (
        area.panelId === panelId &&
        other.minXMm < box.maxXMm + byMm &&
        other.maxXMm > box.minXMm - byMm &&
        other.minYMm < box.maxYMm + byMm &&
        other.maxYMm > box.minYMm - byMm
      )
        return true;
    }
    return false;
  }
}
