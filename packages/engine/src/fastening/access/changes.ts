import type { BoxMm } from "@pinwright/kernel";
import type { Solid } from "../../model/index.ts";
import type { Solids } from "../solids/solids-solver.ts";

/** An area of a panel in which something has changed. */
export interface Area {
  readonly panelId: string;
  readonly box: BoxMm;
}

/** Areas of the solids that are others than before, as they were and as they are. */
export function changedAreas(before: Solids, now: Solids): Area[] {
  const areas: Area[] = [];
  if (before === now) return areas;
  const note = (list: readonly Solid[]): void => {
    for (const { panelId, box } of list) areas.push({ panelId, box });
  };
  for (const [id, old] of before) if (now.get(id) !== old) note(old);
  for (const [id, fresh] of now) if (before.get(id) !== fresh) note(fresh);
  return areas;
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
