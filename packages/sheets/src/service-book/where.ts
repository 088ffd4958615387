import type { Item, Side } from "@pinwright/engine";
import { centroid } from "@pinwright/kernel";
import type { Block } from "../compose/flow.ts";
import { itemName } from "../machine-facts.ts";
import { note } from "./blocks.ts";
import type { BookContext } from "./context.ts";
import { type MapSpot, mapBlock } from "./map.ts";

/** What a map shows. */
const MAP_KINDS = ["switches", "lamps", "movers", "boards", "connectors"] as const;
type MapKind = (typeof MAP_KINDS)[number];

/** More things than this on a panel side have maps of their own by kind. */
const MOST_TOGETHER = 26;
const TALL_MM = 216;
const LOW_MM = 98;

/** The map on which an item is to be found; null: it is on none. */
function kindOf(item: Item): MapKind | null {
  if (item.kind === "board") return "boards";
  if (item.kind === "inline") return "connectors";
  if (item.kind !== "device") return null;
  switch (item.type.class) {
    case "switch":
    case "button":
    case "sensor":
      return "switches";
    case "lamp":
      return "lamps";
    case "coil":
    case "motor":
      return "movers";
    case "supply":
    case "inlet":
    case "filter":
    case "speaker":
      return "boards";
    default:
      return null;
  }
}

/** Name of the map of an item, for links; blank: it is on none. */
export function mapAnchor(context: BookContext, itemId: string): string {
  const item = context.line.machine.items.get(itemId);
  const kind = item === undefined ? null : kindOf(item);
  if (item === undefined || kind === null) return "";
  const { panelId, side } = item.place;
  return `map:${panelId}:${side}:${isTogether(context, panelId, side) ? "all" : kind}`;
}

const mapped = ({ line }: BookContext, panelId: string, side: Side): readonly Item[] =>
  [...line.machine.items.values()].filter(
    (item) => kindOf(item) !== null && item.place.panelId === panelId && item.place.side === side,
  );

const isTogether = (context: BookContext, panelId: string, side: Side): boolean =>
  mapped(context, panelId, side).length <= MOST_TOGETHER;

/** What stands on the map for an item: its number, else its name, a mechanism over its part. */
function spotText({ line, language }: BookContext, item: Item, together: boolean): string {
  if (item.kind === "device" && item.number !== null && !together) return String(item.number);
  const name = itemName(line, item.id, language);
  const number = item.kind === "device" && item.number !== null ? `${item.number} ` : "";
  return `${number}${name.replace(/(?:: |：)/u, "\n")}`;
}

function spotsOf(context: BookContext, items: readonly Item[], together: boolean): readonly MapSpot[] {
  return items.map((item) => ({
    id: item.id,
    text: spotText(context, item, together),
    at: centroid(item.footprint) ?? item.place,
    ring: item.footprint,
    strong: kindOf(item) === "boards" || kindOf(item) === "movers",
  }));
}

/** Maps of every panel side with something electrical on it. */
export function whereBlocks(context: BookContext, widthMm: number): readonly Block[] {
  const { line, words } = context;
  const sides = [...line.machine.panels.keys()].flatMap((panelId) =>
    (["top", "under"] as const).map((side) => ({ panelId, side })),
  );
  const maps = sides.flatMap(({ panelId, side }) => {
    const items = mapped(context, panelId, side);
    if (items.length === 0) return [];
    const together = isTogether(context, panelId, side);
    const kinds = together ? (["all"] as const) : MAP_KINDS;
    return kinds.flatMap((kind) => {
      const own = kind === "all" ? items : items.filter((item) => kindOf(item) === kind);
      if (own.length === 0) return [];
      const block = mapBlock(
        context,
        {
          panelId,
          side,
          title: words((w) => w.where.kinds[kind]),
          anchor: `map:${panelId}:${side}:${kind}`,
          spots: spotsOf(context, own, together),
          mostMm: own.length > 9 ? TALL_MM : LOW_MM,
        },
        widthMm,
      );
      return block === null ? [] : [block];
    });
  });
  return maps.length === 0
    ? []
    : [
        note(
          words((w) => w.where.hint),
          widthMm,
        ),
        ...maps,
      ];
}
