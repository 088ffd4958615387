import type { Groups, TestBench } from "../continuity/index.ts";
import type { TesterScan } from "./scan.ts";

/** Which point of the tester makes contact with which place of a harness. */
export interface TesterAdapter {
  /** Points of the tester, by place. */
  readonly pointOf: ReadonlyMap<string, number>;
}

/** What is wrong with the list of an adapter; line 0: with the list as a whole. */
export interface AdapterFault {
  readonly kind:
    | "heading"
    | "cells"
    | "not-a-point"
    | "point-twice"
    | "unknown-place"
    | "place-twice"
    | "place-missing";
  readonly line: number;
  /** The cell, line or place it is about. */
  readonly of: string;
}

const HEADING = "point,place";

/** The list of an adapter whose points go through the places in the order of the bench: what an adapter is built to. */
export const formatAdapter = (bench: TestBench): string =>
  [HEADING, ...bench.places.map(({ id }, i) => `${i + 1},${id}`), ""].join("\n");

/**
 * Reads the list of an adapter, a CSV file with the heading `point,place`. Ids hold no comma and no quotes, so cells need
 * none. Every place of the harness must have a point: one that is not tried proves nothing.
 * @param points points of the tester
 */
export function parseAdapter(
  text: string,
  bench: TestBench,
  points: number,
): { readonly adapter: TesterAdapter; readonly faults: readonly AdapterFault[] } {
  const pointOf = new Map<string, number>();
  const used = new Set<number>();
  const faults: AdapterFault[] = [];
  const places = new Set(bench.places.map(({ id }) => id));
  const [heading = "", ...lines] = text.replace(/^\uFEFF/, "").split(/\r?\n/);
  if (heading !== HEADING) faults.push({ kind: "heading", line: 1, of: heading });
  lines.forEach((text, i) => {
    if (text === "") return;
    const fault = (kind: AdapterFault["kind"], of: string): void => {
      faults.push({ kind, line: i + 2, of });
    };
    const [cell = "", place = "", ...more] = text.split(",");
    const point = /^[1-9][0-9]*$/.test(cell) ? Number(cell) : 0;
    if (place === "" || more.length > 0) fault("cells", text);
    else if (point < 1 || point > points) fault("not-a-point", cell);
    else if (used.has(point)) fault("point-twice", cell);
    else if (!places.has(place)) fault("unknown-place", place);
    else if (pointOf.has(place)) fault("place-twice", place);
    else {
      used.add(point);
      pointOf.set(place, point);
    }
  });
  for (const { id } of bench.places)
    if (!pointOf.has(id)) faults.push({ kind: "place-missing", line: 0, of: id });
  return { adapter: { pointOf }, faults };
}

/** What a scan says of the places of a harness. */
export interface ScannedPlaces {
  /** Group of each place in the order of the bench, as `diagnoseHarness` takes them. */
  readonly groups: Groups;
  /** Points that belong to no place and yet read joined with another: the adapter is not as its list says. */
  readonly strays: readonly number[];
}

/**
 * Turns a scan into the groups of a harness's places.
 * @throws RangeError when a place has no point: `parseAdapter` says so before
 */
export function groupsOfScan(bench: TestBench, adapter: TesterAdapter, scan: TesterScan): ScannedPlaces {
  const groupOf = new Map<number, number>();
  scan.groups.forEach((group, i) => {
    for (const point of group) groupOf.set(point, i);
  });
  const used = new Set(adapter.pointOf.values());
  return {
    groups: bench.places.map(({ id }) => {
      const point = adapter.pointOf.get(id);
      if (point === undefined) throw new RangeError(`Place ${id} has no point on the tester`);
      // A point that stands alone is a group of its own, numbered behind all others.
      return groupOf.get(point) ?? scan.groups.length + point;
    }),
    strays: [...groupOf.keys()].filter((point) => !used.has(point)).sort((a, b) => a - b),
  };
}
