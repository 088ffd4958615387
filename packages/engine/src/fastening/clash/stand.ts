import { boxOf, growBox, joinBoxes, Query } from "@pinwright/kernel";
import type { Machine, Solid } from "../../model/index.ts";
import type { PanelCutouts } from "../cutouts/panel-cutouts.ts";
import type { Solids } from "../solids/solids-solver.ts";
import { type Upright, uprightOf } from "./meeting.ts";
import { type PanelArea, panelArea, panelRing } from "./panel-area.ts";
import type { SpaceBox } from "./rigid.ts";

/** A panel and what stands on it, to be held against others. */
export interface Stand {
  readonly panelId: string;
  readonly glass: boolean;
  readonly area: PanelArea;
  /** The panel itself, without its openings. */
  readonly slab: Upright;
  readonly slabBox: SpaceBox;
  /** Its solids, by item. */
  readonly solids: readonly (readonly Solid[])[];
  /** Round everything that stands on it; null when nothing does. */
  readonly box: SpaceBox | null;
}

/** The stands of a machine, with a memory: one is made anew when its panel or something on it is another. */
export class Stands {
  readonly #stands = new Query<Stand | null>(Object.is);

  of(
    machine: Machine,
    solids: Solids,
    cutouts: ReadonlyMap<string, PanelCutouts>,
  ): ReadonlyMap<string, Stand> {
    const byPanel = new Map<string, (readonly Solid[])[]>();
    for (const own of solids.values()) {
      const panelId = own[0]?.panelId;
      if (panelId === undefined) continue;
      const known = byPanel.get(panelId);
      if (known === undefined) byPanel.set(panelId, [own]);
      else known.push(own);
    }
    const stands = new Map<string, Stand>();
    for (const panel of machine.panels.values()) {
      const lists = byPanel.get(panel.id) ?? [];
      const shapes = cutouts.get(panel.id);
      const inputs = [panel, machine.panelOutlines.get(panel.id), shapes, ...lists];
      const stand = this.#stands.ask(panel.id, inputs, () => standOf(machine, panel, shapes, lists));
      if (stand !== null) stands.set(panel.id, stand);
    }
    return stands;
  }

  sweep(): void {
    this.#stands.sweep();
  }
}

type Panel = Machine["book"]["tables"]["panels"][number];

function standOf(
  machine: Machine,
  panel: Panel,
  cutouts: PanelCutouts | undefined,
  solids: readonly (readonly Solid[])[],
): Stand | null {
  const ring = panelRing(machine, panel.id);
  const box = ring === null ? null : boxOf(ring);
  if (ring === null || box === null) return null;
  const { thickness_mm: thicknessMm } = panel;
  const slab = { ring, lowMm: -thicknessMm, highMm: 0 };
  return {
    panelId: panel.id,
    glass: panel.purpose === "glass",
    area: panelArea(ring, thicknessMm, cutouts),
    slab: uprightOf(slab),
    slabBox: { ...box, lowMm: slab.lowMm, highMm: slab.highMm },
    solids,
    box: boxAround(solids),
  };
}

function boxAround(solids: readonly (readonly Solid[])[]): SpaceBox | null {
  let minXMm = Number.POSITIVE_INFINITY;
  let minYMm = Number.POSITIVE_INFINITY;
  let lowMm = Number.POSITIVE_INFINITY;
  let maxXMm = Number.NEGATIVE_INFINITY;
  let maxYMm = Number.NEGATIVE_INFINITY;
  let highMm = Number.NEGATIVE_INFINITY;
  for (const own of solids)
    for (const solid of own) {
      const { box } = solid;
      minXMm = Math.min(minXMm, box.minXMm);
      minYMm = Math.min(minYMm, box.minYMm);
      lowMm = Math.min(lowMm, solid.lowMm);
      maxXMm = Math.max(maxXMm, box.maxXMm);
      maxYMm = Math.max(maxYMm, box.maxYMm);
      highMm = Math.max(highMm, solid.highMm);
    }
  return minXMm > maxXMm ? null : { minXMm, minYMm, maxXMm, maxYMm, lowMm, highMm };
}

/** The smallest box round both. */
export const joinedBoxes = (a: SpaceBox, b: SpaceBox): SpaceBox => ({
  ...joinBoxes(a, b),
  lowMm: Math.min(a.lowMm, b.lowMm),
  highMm: Math.max(a.highMm, b.highMm),
});

/** A box with `byMm` more on every side. */
export const grownBox = (box: SpaceBox, byMm: number): SpaceBox => ({
  ...growBox(box, byMm),
  lowMm: box.lowMm - byMm,
  highMm: box.highMm + byMm,
});
