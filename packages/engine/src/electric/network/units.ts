import type { BookRow } from "@pinwright/book";
import { type Cap, compareText } from "@pinwright/kernel";
import type { Machine } from "../../model/index.ts";
import type { Feed } from "./feeds.ts";
import type { ElementPart } from "./parts.ts";
import { ALWAYS, type Usage, usageOf } from "./usage.ts";

/** Loads that are switched as one: those of an item, and of every item that hangs on the same drivers. */
export interface Unit {
  /** The first of its items. */
  readonly id: string;
  readonly itemIds: readonly string[];
  readonly loads: readonly Feed[];
  /** Drivers, or contacts where there is no driver, that are closed in a pulse. */
  readonly switches: readonly ElementPart[];
  /** Those that stay closed, by their duty, while it is held; empty when it is never held. */
  readonly holdSwitches: readonly ElementPart[];
  readonly usage: Usage;
}

export interface Units {
  readonly units: readonly Unit[];
  /** Loads that are on all the time. */
  readonly steady: readonly Feed[];
  /** Drivers and contacts that are closed all the time. */
  readonly closed: ReadonlySet<string>;
  /** How many units can be on together, by unit number. */
  readonly caps: readonly Cap[];
}

/**
 * Which loads are switched, and which are on all the time: boards, loads without a driver, and lamps and motors that
 * `activity` does not name. A coil with a driver that `activity` does not name can be on with any other, all the time.
 */
export function unitsOf(machine: Machine, feeds: readonly Feed[]): Units {
  const activity = new Map(machine.book.tables.activity.map((row) => [row.item, row]));
  const switched = feeds.filter(
    (feed) =>
      switchesOf(feed).length > 0 &&
      (feed.load.element.row.kind === "coil"
        ? feed.drivers.length > 0 || activity.has(feed.load.element.itemId)
        : activity.has(feed.load.element.itemId)),
  );
  const steady = feeds.filter((feed) => !switched.includes(feed));
  const closed = new Set(steady.flatMap((f) => [...f.drivers, ...f.contacts].map((part) => part.id)));
  // What is closed for a load that is always on switches nothing: whatever hangs on it alone is on too.
  const open = switched.filter((feed) => switchesOf(feed).some((part) => !closed.has(part.id)));
  for (const feed of open)
    if (feed.drivers.length > 0) for (const contact of feed.contacts) closed.add(contact.id);
  const units = grouped(open, closed)
    .map((loads) => unitOf(loads, closed, activity))
    .sort((a, b) => compareText(a.id, b.id));
  return {
    units,
    steady: [...steady, ...switched.filter((feed) => !open.includes(feed))],
    closed,
    caps: capsOf(machine, units),
  };
}

const switchesOf = (feed: Feed): readonly ElementPart[] =>
  feed.drivers.length > 0 ? feed.drivers : feed.contacts;

/** Loads of one item, and of items that share a switch, together. */
function grouped(feeds: readonly Feed[], closed: ReadonlySet<string>): readonly (readonly Feed[])[] {
  const groups = new Map<string, Set<Feed>>();
  for (const feed of feeds) {
    const keys = [
      `item ${feed.load.element.itemId}`,
      ...switchesOf(feed).flatMap((part) => (closed.has(part.id) ? [] : [`switch ${part.id}`])),
    ];
    const all = new Set<Feed>([feed]);
    for (const key of keys) for (const other of groups.get(key) ?? []) all.add(other);
    for (const member of all) {
      groups.set(`item ${member.load.element.itemId}`, all);
      for (const part of switchesOf(member)) if (!closed.has(part.id)) groups.set(`switch ${part.id}`, all);
    }
  }
  return [...new Set(groups.values())].map((group) => [...group]);
}

function unitOf(
  loads: readonly Feed[],
  closed: ReadonlySet<string>,
  activity: ReadonlyMap<string, BookRow<"activity">>,
): Unit {
  const itemIds = [...new Set(loads.map((feed) => feed.load.element.itemId))].sort(compareText);
  const rows = itemIds.flatMap((id) => activity.get(id) ?? []);
  // Items that share a driver are on as long as the one that is on longest.
  const row = rows.toSorted((a, b) => (b.duty_pct ?? 100) - (a.duty_pct ?? 100))[0];
  const usage = row === undefined ? ALWAYS : usageOf(row);
  const own = (feeds: readonly Feed[]): readonly ElementPart[] =>
    [...new Set(feeds.flatMap(switchesOf))].filter((part) => !closed.has(part.id));
  const switches = own(loads);
  const held = row !== undefined && (row.hold_ms ?? 0) > 0;
  return {
    id: itemIds[0] ?? "",
    itemIds,
    loads,
    switches,
    holdSwitches: held ? own(holdLoads(loads)) : [],
    usage,
  };
}

/** Of several windings of one item the one with the highest resistance holds; a single winding holds by its duty. */
function holdLoads(loads: readonly Feed[]): readonly Feed[] {
  const most = Math.max(...loads.map((feed) => feed.load.element.row.ohm ?? 0));
  const holding = loads.filter((feed) => (feed.load.element.row.ohm ?? 0) === most);
  return holding.length > 0 ? holding : loads;
}

/** Rows of `groups` as caps. A member stands for itself and for what is within it: a mechanism for its devices. */
function capsOf(machine: Machine, units: readonly Unit[]): readonly Cap[] {
  return machine.book.tables.groups.map((group) => {
    const items = new Set(group.items);
    const within = (itemId: string): boolean =>
      items.has(itemId) || items.has(machine.items.get(itemId)?.parentId ?? "");
    return {
      members: units.flatMap((unit, u) => (unit.itemIds.some(within) ? [u] : [])),
      most: group.most_on,
    };
  });
}
