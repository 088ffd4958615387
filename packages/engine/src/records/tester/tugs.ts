import { compareText } from "@pinwright/kernel";
import type { TestBench, TestPlace, Tug } from "../continuity/index.ts";

/** Where somebody is who tugs at every contact of a harness. */
export interface TugWalk {
  /** Place to tug at next; null: all are done. */
  readonly next: TestPlace | null;
  readonly done: number;
  readonly total: number;
  /** Places where the contact did not hold, is not there, or lacks a wire. */
  readonly failed: readonly { readonly placeId: string; readonly tug: Tug }[];
}

/**
 * The walk along every contact with a wire, before continuity: a contact that is not latched passes continuity. It goes
 * housing by housing, row by row, as the hand does; what was told of a place that has no wire is passed over.
 */
export function tugWalk(bench: TestBench, told: ReadonlyMap<string, Tug>): TugWalk {
  const places = bench.places
    .filter(({ wires }) => wires.length > 0)
    .sort(
      (a, b) =>
        compareText(a.landingId, b.landingId) ||
        a.row - b.row ||
        a.column - b.column ||
        compareText(a.id, b.id),
    );
  const left = places.filter(({ id }) => !told.has(id));
  return {
    next: left[0] ?? null,
    done: places.length - left.length,
    total: places.length,
    failed: places.flatMap(({ id }) => {
      const tug = told.get(id);
      return tug === undefined || tug === "held" ? [] : [{ placeId: id, tug }];
    }),
  };
}
