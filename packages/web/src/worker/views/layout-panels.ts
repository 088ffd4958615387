import type { Outline } from "@pinwright/book";
import { centredRing, flat } from "./rings.ts";
import { view } from "./view.ts";

/** A panel to be chosen and drawn. */
export interface LayoutPanel {
  readonly id: string;
  readonly label: string;
  readonly labelZh: string;
  readonly purpose: string;
  readonly widthMm: number;
  readonly heightMm: number;
  readonly thicknessMm: number;
  /** Rings of its outline, holes after what they are cut from; x and y by turns. */
  readonly rings: readonly (readonly number[])[];
  /** How many items and waypoints are on its sides. */
  readonly top: number;
  readonly under: number;
}

function ringsOf(outline: Outline | undefined, widthMm: number, heightMm: number): LayoutPanel["rings"] {
  if (outline !== undefined) return outline.rings.map(flat);
  return [centredRing(widthMm / 2, heightMm / 2, 0, widthMm, heightMm)];
}

/** Every panel of the machine, in the order of the book. */
export const layoutPanels = view<null, LayoutPanel>({
  early: true,
  uses: ({ line: { machine } }) => [
    machine.panels,
    machine.book.outlines,
    machine.book.tables.waypoints,
    machine.items.size,
    ...[...machine.items.values()].map((item) => item.place.panelId + item.place.side),
  ],
  entries: ({ line: { machine } }) => {
    const counts = new Map<string, number>();
    const count = (panelId: string, side: string): void => {
      const key = `${side} ${panelId}`;
      counts.set(key, (counts.get(key) ?? 0) + 1);
    };
    for (const item of machine.items.values()) count(item.place.panelId, item.place.side);
    for (const row of machine.book.tables.waypoints) count(row.panel, row.side);
    return new Map(
      [...machine.panels.values()].map((panel) => [
        panel.id,
        {
          id: panel.id,
          label: panel.label,
          labelZh: panel.label_zh,
          purpose: panel.purpose,
          widthMm: panel.width_mm,
          heightMm: panel.height_mm,
          thicknessMm: panel.thickness_mm,
          rings: ringsOf(machine.panelOutlines.get(panel.id), panel.width_mm, panel.height_mm),
          top: counts.get(`top ${panel.id}`) ?? 0,
          under: counts.get(`under ${panel.id}`) ?? 0,
        },
      ]),
    );
  },
  restsInPreview: true,
});
