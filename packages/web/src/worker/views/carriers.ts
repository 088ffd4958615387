import type { Item } from "@pinwright/engine";
import type { Both } from "../wires/wires-at.ts";
import { view } from "./view.ts";

/** Something that wires end on: a board, a device, an in-line connector. */
export interface Carrier {
  readonly id: string;
  readonly kind: "board" | "device" | "inline";
  readonly label: Both;
  /** What it is: name of its type. */
  readonly type: Both;
  readonly panelId: string;
  readonly side: "top" | "under";
  /** Housings on it, and bare terminals as one. */
  readonly landings: readonly { readonly id: string; readonly isHousing: boolean }[];
}

const typeOf = (item: Item): Both => {
  if (item.kind === "inline")
    return { en: item.type.label || item.type.id, zh: item.type.label || item.type.id };
  const { label, label_zh, id } = item.type;
  return { en: label || id, zh: label_zh || label || id };
};

/** Everything that wires end on, in the order of their ids. */
export const carriers = view<null, Carrier>({
  uses: ({ line }) => [line.machine.landings, line.machine.items],
  entries: ({ line }) => {
    const { machine } = line;
    const landings = new Map<string, { id: string; isHousing: boolean }[]>();
    for (const landing of machine.landings.values()) {
      const list = landings.get(landing.itemId) ?? [];
      landings.set(landing.itemId, list);
      list.push({ id: landing.id, isHousing: landing.connector !== null });
    }
    const found = [...machine.items.values()].flatMap((item): readonly Carrier[] => {
      const own = landings.get(item.id);
      if (own === undefined || item.kind === "mechanism" || item.kind === "fastener") return [];
      const { panelId, side } = item.place;
      return [
        {
          id: item.id,
          kind: item.kind,
          label: item.labels,
          type: typeOf(item),
          panelId,
          side,
          landings: own,
        },
      ];
    });
    found.sort((a, b) => (a.id < b.id ? -1 : a.id > b.id ? 1 : 0));
    return new Map(found.map((one) => [one.id, one]));
  },
  restsInPreview: true,
});
