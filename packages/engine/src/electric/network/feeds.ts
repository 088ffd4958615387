import { IndexHeap } from "@pinwright/kernel";
import type { Copper } from "./copper.ts";
import { isCopper } from "./copper.ts";
import type { ElementPart, Part, Parts, SourcePart } from "./parts.ts";

/** How a load gets its current: from which source, and what has to be closed for that. */
export interface Feed {
  readonly load: ElementPart;
  readonly source: SourcePart;
  /** Drivers on its way from the source and back, which are closed while it is on. */
  readonly drivers: readonly ElementPart[];
  /** Contacts at rest open on that way: the mains switch, a relay, a door's switch. */
  readonly contacts: readonly ElementPart[];
  /** True when the current enters at `to`. */
  readonly reversed: boolean;
}

export interface Feeds {
  readonly feeds: readonly Feed[];
  /** Loads that no way leads to from a source and back. */
  readonly unfed: readonly ElementPart[];
}

const LOADS = new Set(["coil", "motor", "led", "load"]);

export const isLoad = (part: Part): part is ElementPart =>
  part.kind === "element" && LOADS.has(part.element.row.kind);

/** What passing a part costs the search for a way: a way with few drivers is the one that is meant. */
function costOf({ element: { row } }: ElementPart): number {
  switch (row.kind) {
    case "contact":
      return row.normally === "closed" ? 0.2 : 1;
    case "driver":
      return 1.5;
    case "resistor":
      return 0.5;
    case "coil":
    case "motor":
    case "led":
    case "diode":
      return 100;
    default:
      return Number.POSITIVE_INFINITY;
  }
}

interface Way {
  readonly parts: readonly ElementPart[];
  readonly source: SourcePart;
}

/**
 * Traces every load through its nets: from each of its two points over copper, and where copper ends over the drivers,
 * contacts and resistors that lead on, to the positive end of a source and to the negative end of one. Other loads are
 * passed only where nothing else leads on: they are in series with it. Names play no part.
 */
export function feedsOf({ parts }: Parts, copper: Copper): Feeds {
  const tracer = new Tracer(parts, copper);
  const feeds: Feed[] = [];
  const unfed: ElementPart[] = [];
  for (const load of parts) {
    if (!isLoad(load)) continue;
    const feed = tracer.feed(load);
    if (feed === null) unfed.push(load);
    else feeds.push(feed);
  }
  return { feeds, unfed };
}

class Tracer {
  readonly #copper: Copper;
  /** Ways on from each group. */
  readonly #next = new Map<number, { readonly part: ElementPart; readonly to: number }[]>();
  readonly #heap: IndexHeap;
  readonly #known = new Map<string, Way | null>();

  constructor(parts: readonly Part[], copper: Copper) {
    this.#copper = copper;
    this.#heap = new IndexHeap(copper.group.length);
    for (const part of parts) {
      if (part.kind !== "element" || isCopper(part) || !Number.isFinite(costOf(part))) continue;
      const [a, b] = [copper.group[part.from] ?? 0, copper.group[part.to] ?? 0];
      if (a === b) continue;
      for (const [from, to] of [
        [a, b],
        [b, a],
      ] as const) {
        const list = this.#next.get(from);
        if (list === undefined) this.#next.set(from, [{ part, to }]);
        else list.push({ part, to });
      }
    }
  }

  feed(load: ElementPart): Feed | null {
    for (const reversed of [false, true]) {
      // A diode conducts one way only.
      if (reversed && load.element.row.kind === "led") break;
      const [plus, minus] = reversed ? [load.to, load.from] : [load.from, load.to];
      const up = this.#way(load, plus, "positive");
      const down = up === null ? null : this.#way(load, minus, "negative");
      if (up === null || down === null) continue;
      const passed = [...up.parts, ...down.parts];
      const kind = (k: string) => [...new Set(passed.filter((p) => p.element.row.kind === k))];
      return { load, source: up.source, drivers: kind("driver"), contacts: kind("contact"), reversed };
    }
    return null;
  }

  #way(load: ElementPart, node: number, end: "positive" | "negative"): Way | null {
    const group = this.#copper.group[node] ?? 0;
    const key = `${group} ${end}`;
    let way = this.#known.get(key);
    if (way === undefined) {
      way = this.#search(group, end, null);
      this.#known.set(key, way);
    }
    return way ?? this.#search(group, end, load);
  }

  /** @param load searches through other loads too, but not through this one; null: through none */
  #search(start: number, end: "positive" | "negative", load: ElementPart | null): Way | null {
    const goal = this.#copper[end];
    const heap = this.#heap;
    heap.clear();
    const far = new Map([[start, 0]]);
    const by = new Map<number, { readonly part: ElementPart; readonly from: number }>();
    heap.set(start, 0);
    for (let at = heap.pop(); at >= 0; at = heap.pop()) {
      const source = goal.get(at)?.[0];
      if (source !== undefined) {
        const parts: ElementPart[] = [];
        for (let step = by.get(at); step !== undefined; step = by.get(step.from)) parts.push(step.part);
        return { parts, source };
      }
      // A way never leads on through the other end of a source: that would be a way to another load's current.
      if (at !== start && (this.#copper.positive.has(at) || this.#copper.negative.has(at))) continue;
      for (const { part, to } of this.#next.get(at) ?? []) {
        if (part === load || (load === null && costOf(part) >= 100)) continue;
        const cost = (far.get(at) ?? 0) + costOf(part);
        if (cost >= (far.get(to) ?? Number.POSITIVE_INFINITY)) continue;
        far.set(to, cost);
        by.set(to, { part, from: at });
        heap.set(to, cost);
      }
    }
    return null;
  }
}
