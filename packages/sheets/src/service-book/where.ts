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
/** Kinds of so few things are shown on one map after all. */
const FEW = 12;
const TALL_MM = 216;
const LOW_MM = 98;
/** Room of the heading of the chapter and of what stands under it, on its first page. */
const HEAD_MM = 34;
/** A panel so much higher than wide needs the height of a page. */
const TALL = 1.5;

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
  const own = mapsOf(context, panelId, side).find(({ kinds }) => kinds.includes(kind));
  return own === undefined ? "" : anchorOf(panelId, side, own);
}

const mapped = ({ line }: BookContext, panelId: string, side: Side): readonly Item[] =>
  [...line.machine.items.values()].filter(
    (item) => kindOf(item) !== null && item.place.panelId === panelId && item.place.side === side,
  );

/** One map: all that is on a panel side, or some kinds of it. */
interface OneMap {
  readonly isAll: boolean;
  readonly kinds: readonly MapKind[];
  readonly items: readonly Item[];
}

const known = new WeakMap<BookContext["facts"], Map<string, readonly OneMap[]>>();

/** The maps of a panel side. */
function mapsOf(context: BookContext, panelId: string, side: Side): readonly OneMap[] {
  const own = known.get(context.facts) ?? new Map<string, readonly OneMap[]>();
  known.set(context.facts, own);
  const key = `${panelId} ${side}`;
  const maps = own.get(key) ?? splitMaps(mapped(context, panelId, side));
  own.set(key, maps);
  return maps;
}

function splitMaps(items: readonly Item[]): readonly OneMap[] {
  if (items.length === 0) return [];
  if (items.length <= MOST_TOGETHER) return [{ isAll: true, kinds: MAP_KINDS, items }];
  const byKind = MAP_KINDS.flatMap((kind) => {
    const own = items.filter((item) => kindOf(item) === kind);
    return own.length === 0 ? [] : [{ isAll: false, kinds: [kind], items: own }];
  });
  const few: OneMap = [...byKind]
    .sort((a, b) => a.items.length - b.items.length)
    .reduce<OneMap>(
      (sum, one) =>
        sum.items.length + one.items.length <= FEW
          ? { isAll: false, kinds: [...sum.kinds, ...one.kinds], items: [...sum.items, ...one.items] }
          : sum,
      { isAll: false, kinds: [], items: [] },
    );
  if (few.kinds.length < 2) return byKind;
  const together = { ...few, kinds: MAP_KINDS.filter((kind) => few.kinds.includes(kind)) };
  return [...byKind.filter(({ kinds }) => !kinds.some((kind) => few.kinds.includes(kind))), together];
}

const anchorOf = (panelId: string, side: Side, { isAll, kinds }: OneMap): string =>
  `map:${panelId}:${side}:${isAll ? "all" : kinds.join("+")}`;

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

/** How high a map may be: a page for a panel that is high or full, else half of one. */
function mostMm({ line }: BookContext, panelId: string, count: number, isFirst: boolean): number {
  const panel = line.machine.panels.get(panelId);
  const isTall = panel !== undefined && panel.height_mm > TALL * panel.width_mm;
  const most = (isTall && count > 3) || count > MOST_TOGETHER ? TALL_MM : LOW_MM;
  return isFirst ? Math.min(most, TALL_MM - HEAD_MM) : most;
}

/** Maps of every panel side with something electrical on it. */
export function whereBlocks(context: BookContext, widthMm: number): readonly Block[] {
  const { line, words } = context;
  const sides = [...line.machine.panels.keys()].flatMap((panelId) =>
    (["top", "under"] as const).flatMap((side) =>
      mapsOf(context, panelId, side).map((map) => ({ panelId, side, map })),
    ),
  );
  const maps = sides.flatMap(({ panelId, side, map }, i) => {
    const titles = map.isAll
      ? [words((w) => w.where.kinds.all)]
      : map.kinds.map((kind) => words((w) => w.where.kinds[kind]));
    const block = mapBlock(
      context,
      {
        panelId,
        side,
        title: titles.join(" · "),
        anchor: anchorOf(panelId, side, map),
        spots: spotsOf(context, map.items, map.isAll),
        mostMm: mostMm(context, panelId, map.items.length, i === 0),
      },
      widthMm,
    );
    return block === null ? [] : [block];
  });
  const [first] = maps;
  return first === undefined
    ? []
    : [
        {
          ...note(
            words((w) => w.where.hint),
            widthMm,
          ),
          keepMm: first.heightMm,
        },
        ...maps,
      ];
}
