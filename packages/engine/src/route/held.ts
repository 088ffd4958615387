import type { BookRow } from "@pinwright/book";
import { choicesOf, type Landing, type Machine } from "../model/index.ts";
import { type LaneGraph, sideKey } from "./lane-graph.ts";

type Choice = BookRow<"choices">;

/** What a person pinned, or an earlier result keeps, of a harness's route. */
export interface HeldRoute {
  /** The only lanes and crossings that the tree may use; null: any. */
  readonly only: ReadonlySet<string> | null;
  /** Lanes and crossings that go before others; null: none. */
  readonly rather: ReadonlySet<string> | null;
  /** Waypoint of a landing's tail, by landing id. */
  readonly attach: ReadonlyMap<string, string>;
  /** Waypoint of a splice, by splice id. */
  readonly splices: ReadonlyMap<string, string>;
}

/** The ids in a choice's value. */
export const idsIn = (value: string): ReadonlySet<string> =>
  new Set(value.split(/\s+/).filter((id) => id !== ""));

/**
 * What to hold, strictest first: everything; settled lanes only as the better ones, settled tails and splices let
 * go; only what is pinned. The first with which every landing is reached and no rule broken is taken.
 */
export function heldRoutes(machine: Machine, harnessId: string): readonly HeldRoute[] {
  const trunk = machine.choices.get("trunk")?.get(harnessId);
  const lanes = trunk === undefined ? null : idsIn(trunk.value);
  const pinnedLanes = trunk?.held === "pinned" ? lanes : null;
  const places = (kind: string, pinnedOnly: boolean): readonly Choice[] => {
    const { own, general } = choicesOf(machine.choices.get(kind), harnessId);
    return [...general.values(), ...own.values()].filter((row) => !pinnedOnly || row.held === "pinned");
  };
  const everything: HeldRoute = {
    only: lanes,
    rather: null,
    attach: attachPlaces(places("attach", false), harnessId),
    splices: splicePlaces(places("splice-place", false)),
  };
  const pinned = {
    attach: attachPlaces(places("attach", true), harnessId),
    splices: splicePlaces(places("splice-place", true)),
  };
  const settled =
    everything.attach.size > pinned.attach.size ||
    everything.splices.size > pinned.splices.size ||
    lanes !== pinnedLanes;
  if (!settled) return [everything];
  return [
    everything,
    { ...everything, only: pinnedLanes, rather: lanes },
    { ...pinned, only: pinnedLanes, rather: lanes },
    { ...pinned, only: pinnedLanes, rather: null },
  ];
}

/** Subject of the choice that holds a landing's tail in one harness: several may meet at one row of terminals. */
export const attachSubject = (harnessId: string, landingId: string): string => `${harnessId}|${landingId}`;

/** The landing that such a subject means in a harness: without a harness it means any; null: another harness's. */
export function attachedLanding(subject: string, harnessId: string): string | null {
  const own = attachSubject(harnessId, "");
  if (subject.startsWith(own)) return subject.slice(own.length);
  return subject.includes("|") ? null : subject;
}

const splicePlaces = (chosen: readonly Choice[]): ReadonlyMap<string, string> =>
  new Map(chosen.map(({ subject, value }) => [subject, value]));

/**
 * Waypoints by landing id. What a person pinned goes before what is kept; of two alike, what is held for this harness
 * goes before what is held for any.
 */
function attachPlaces(chosen: readonly Choice[], harnessId: string): ReadonlyMap<string, string> {
  const best = new Map<string, { readonly value: string; readonly rank: number }>();
  for (const { subject, value, held } of chosen) {
    const landingId = attachedLanding(subject, harnessId);
    if (landingId === null) continue;
    const rank = (held === "pinned" ? 2 : 0) + (subject === landingId ? 0 : 1);
    const before = best.get(landingId);
    if (before === undefined || rank > before.rank) best.set(landingId, { value, rank });
  }
  return new Map([...best].map(([landingId, one]) => [landingId, one.value]));
}

/** A spot that a landing's tail may lead to. */
export interface TailRoom {
  /** Spot number. */
  readonly spot: number;
  readonly lengthMm: number;
}

/** Length of a tail, mm: the straight way along the panel, and the height of the landing off it. */
function tailLengthMm(graph: LaneGraph, spot: number, landing: Landing): number | null {
  const place = graph.spots[spot]?.place;
  const { panelId, side, xMm, yMm, zMm } = landing.place;
  if (place === undefined || place.panelId !== panelId || place.side !== side) return null;
  const mm = Math.hypot(place.xMm - xMm, place.yMm - yMm) + Math.abs(zMm - place.zMm);
  return Math.round(mm * 1000) / 1000;
}

/**
 * The spots that a landing's tail may lead to: of its own panel and side, within the longest tail (mm); or only the
 * one that is held, at any distance, as long as it is on the landing's panel and side.
 */
export function tailRooms(
  graph: LaneGraph,
  landing: Landing,
  longestMm: number,
  heldId: string | undefined,
): readonly TailRoom[] {
  const rooms: TailRoom[] = [];
  const { xMm, yMm } = landing.place;
  for (const spot of graph.onSide.get(sideKey(landing.place)) ?? []) {
    const at = graph.spots[spot]?.place;
    if (at === undefined) continue;
    // Most spots are too far off along one axis alone.
    const far = Math.abs(at.xMm - xMm) > longestMm || Math.abs(at.yMm - yMm) > longestMm;
    if (far && heldId === undefined) continue;
    const lengthMm = tailLengthMm(graph, spot, landing);
    if (lengthMm === null) continue;
    if (heldId !== undefined && graph.spots[spot]?.id === heldId) return [{ spot, lengthMm }];
    if (lengthMm <= longestMm) rooms.push({ spot, lengthMm });
  }
  return rooms;
}
