import type { Item } from "@pinwright/engine";
import type { Model } from "../model.ts";
import { flatAbout } from "./rings.ts";
import { view } from "./view.ts";

/** An item as it is drawn on its panel. */
export interface LayoutItem {
  readonly id: string;
  readonly kind: Item["kind"];
  /** What a device does, or what kind of fastener it is. */
  readonly sort: string;
  readonly label: string;
  readonly labelZh: string;
  readonly number: number | null;
  readonly side: "top" | "under";
  readonly xMm: number;
  readonly yMm: number;
  readonly rotationDeg: number;
  readonly parentId: string | null;
  readonly typeId: string;
  /** Its outline about its own origin, turned as it lies on the panel; x and y by turns. */
  readonly ring: readonly number[];
}

const known = new WeakMap<Item, LayoutItem>();

function sortOf(item: Item): string {
  if (item.kind === "device") return item.type.class;
  return item.kind === "fastener" ? item.type.kind : "";
}

function drawn(item: Item): LayoutItem {
  const before = known.get(item);
  if (before !== undefined) return before;
  const { place } = item;
  const made: LayoutItem = {
    id: item.id,
    kind: item.kind,
    sort: sortOf(item),
    label: item.labels.en,
    labelZh: item.labels.zh,
    number: item.kind === "device" ? item.number : null,
    side: place.side,
    xMm: place.xMm,
    yMm: place.yMm,
    rotationDeg: place.rotationDeg,
    parentId: item.parentId,
    typeId: item.type.id,
    ring: flatAbout(item.footprint, place),
  };
  known.set(item, made);
  return made;
}

const onPanel = ({ line }: Model, panelId: string): readonly Item[] =>
  [...line.machine.items.values()].filter((item) => item.place.panelId === panelId);

/** Items on both sides of one panel. While something is dragged the page itself moves what it drags. */
export const layoutItems = view<{ readonly panelId: string }, LayoutItem>({
  early: true,
  uses: (model, { panelId }) => onPanel(model, panelId),
  entries: (model, { panelId }) => new Map(onPanel(model, panelId).map((item) => [item.id, drawn(item)])),
  restsInPreview: true,
});
