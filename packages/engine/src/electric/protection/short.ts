import type { BookRow } from "@pinwright/book";
import type { Machine, ShortRating } from "../../model/index.ts";
import type { ElementPart, Part, SourcePart } from "../network/parts.ts";
import { fuseGates, leastMeltingA2s, opensWithinS, resettableOpensS } from "../physics/fuse-curve.ts";
import { type Opening, openingOf, type ShortCurrent, shortCurrent } from "../physics/short-circuit.ts";
import type { Feeding } from "./reach.ts";

/** A fuse in the circuit with what the book says of it. */
export interface Fuse {
  readonly part: ElementPart;
  /** Null for a resettable fuse of a board. */
  readonly row: BookRow<"fuses"> | null;
  readonly ratedA: number;
  readonly opensWithinS: (amps: number) => number;
  readonly meltingA2s: number | null;
}

/** Every fuse of the machine by its element's id. A row of `fuses` belongs to the element between its two points. */
export function fusesOf(machine: Machine, parts: readonly Part[]): ReadonlyMap<string, Fuse> {
  const rows = new Map<string, BookRow<"fuses">>();
  for (const row of machine.book.tables.fuses) {
    rows.set(`${row.from} ${row.to}`, row);
    rows.set(`${row.to} ${row.from}`, row);
  }
  const fuses = new Map<string, Fuse>();
  for (const part of parts) {
    if (part.kind !== "element" || part.element.row.kind !== "fuse") continue;
    const row = rows.get(`${part.element.fromPointId} ${part.element.toPointId}`) ?? null;
    fuses.set(part.id, row === null ? resettable(part) : fuseLink(part, row));
  }
  return fuses;
}

function resettable(part: ElementPart): Fuse {
  const ratedA = part.element.row.amp ?? 0;
  return {
    part,
    row: null,
    ratedA,
    opensWithinS: (amps) => resettableOpensS(amps / ratedA),
    meltingA2s: null,
  };
}

function fuseLink(part: ElementPart, row: BookRow<"fuses">): Fuse {
  const { rated_a: ratedA, speed, breaking_a, melting_a2s } = row;
  const gates = fuseGates(speed, ratedA, breaking_a);
  return {
    part,
    row,
    ratedA,
    opensWithinS: (amps) => opensWithinS(gates, amps / ratedA),
    meltingA2s: melting_a2s ?? leastMeltingA2s(gates, ratedA),
  };
}

/** A source within a board without a row of `supplies` gives what its element says, and no more. */
export function currentOf({ supply, element }: SourcePart, volts: number, loopOhm: number): ShortCurrent {
  const amp = element?.row.amp ?? null;
  return shortCurrent({
    volts,
    loopOhm,
    limitMode: supply?.limit_mode ?? (amp === null ? "none" : "constant"),
    limitA: supply === null ? amp : supply.limit_a,
    shortA: supply?.short_a ?? null,
    burstS: supply === null || supply.burst_ms === null ? null : supply.burst_ms / 1000,
    storedJ: supply?.stored_j ?? null,
  });
}

/** Opening of the one of several fuses in series that opens first; endless without a fuse. */
export function firstOpening(current: ShortCurrent, fuses: readonly Fuse[]): Opening {
  const none: Opening = openingOf(current, () => Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY);
  return fuses.reduce((best, fuse) => {
    const opening = openingOf(current, fuse.opensWithinS, fuse.meltingA2s ?? Number.POSITIVE_INFINITY);
    return opening.opensS < best.opensS ? opening : best;
  }, none);
}

export const sourceId = ({ supply, id }: SourcePart): string => supply?.id ?? id;

export function shortRating(
  source: SourcePart,
  nodeId: string,
  loopOhm: number,
  { firstA, heldA, storedA2s }: ShortCurrent,
  { opensS, letThroughA2s }: Opening,
): ShortRating {
  return { supplyId: sourceId(source), nodeId, loopOhm, firstA, heldA, storedA2s, opensS, letThroughA2s };
}

/** Resistance back to the source, and the node where that way begins. */
interface WayBack {
  readonly ohm: number;
  readonly node: string;
}

/**
 * The way back of a short circuit at a node: over the return that is nearest at the same item. An item without a
 * return, such as a coil, has it at the first item up the feed that has one, and a second wire as long as the feed's
 * from there on.
 */
export function wayBack(
  machine: Machine,
  { feed, back }: Feeding,
  returnsAt: ReadonlyMap<string, readonly string[]>,
  nodeId: string,
): WayBack | null {
  // Returns are listed nearest first.
  const at = (node: string): string | undefined => returnsAt.get(machine.points.get(node)?.itemId ?? "")?.[0];
  const own = at(nodeId);
  if (own !== undefined) return { ohm: back.ohm(own), node: own };
  for (const { far } of feed.back(nodeId)) {
    const found = at(far);
    if (found !== undefined) return { ohm: back.ohm(found) + feed.ohm(nodeId) - feed.ohm(far), node: found };
  }
  return null;
}
