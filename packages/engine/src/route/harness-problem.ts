import { NET_CLASSES } from "@pinwright/book";
import { compareText, roundTo } from "@pinwright/kernel";
import type { HarnessWires, Landing, Machine, Wire } from "../model/index.ts";
import { APART_PAIRS } from "./apart.ts";
import { type HeldRoute, tailRooms } from "./held.ts";
import type { GraphLane, GraphSpot, LaneGraph } from "./lane-graph.ts";
import { laneParts } from "./part.ts";
import type { ProblemCandidate, RouteProblem } from "./search/problem.ts";

/** The routing problem of one harness, with what its numbers stand for. */
export interface HarnessProblem {
  readonly problem: RouteProblem;
  readonly spots: readonly GraphSpot[];
  readonly lanes: readonly GraphLane[];
  /** Landings that can be joined, in code-point order of their ids: the first terminals. */
  readonly landings: readonly Landing[];
  /** Splice ids in code-point order: the terminals after them. */
  readonly spliceIds: readonly string[];
  /** The wires of the problem, in its order. */
  readonly wires: readonly Wire[];
  readonly unreached: readonly string[];
}

/** Minutes that stand for a splice at the end of a hinge, where the bundle flexes. Our own choice, no source. */
const HINGE_SPLICE_MIN = 5;

/** Landing that a wire's end belongs to; undefined for a splice. */
export const landingIdOf = (machine: Machine, end: string): string | undefined =>
  machine.points.get(end)?.landingId;

/** Landings of a harness, in code-point order of their ids. */
export function landingsOf(machine: Machine, harness: HarnessWires): readonly Landing[] {
  const ids = new Set<string>();
  for (const wire of harness.wires)
    for (const end of [wire.a, wire.b]) {
      const id = landingIdOf(machine, end);
      if (id !== undefined) ids.add(id);
    }
  return [...ids].sort(compareText).flatMap((id) => machine.landings.get(id) ?? []);
}

/**
 * Sets up the routing of one harness: the lanes that some wire of it may use, the tails that each landing may
 * have, the wires between them. Landings that no tail joins to the rest are left out and named. Of several parts of
 * the lane graph that are not joined, the one counts that most landings reach.
 */
export function harnessProblem(
  machine: Machine,
  harness: HarnessWires,
  graph: LaneGraph,
  held: HeldRoute,
): HarnessProblem {
  const { numbers } = machine.shop;
  const classes = new Set(harness.wires.map((w) => w.netClass));
  const parts = laneParts(graph, classes, held.only, numbers);
  const all = landingsOf(machine, harness).map((landing) => ({
    landing,
    rooms: tailRooms(graph, landing, numbers.tail_max_mm, held.attach.get(landing.id)),
  }));
  const votes = new Map<number, number>();
  for (const { rooms } of all)
    for (const p of new Set(rooms.map((room) => parts.partOf(room.spot))))
      votes.set(p, (votes.get(p) ?? 0) + 1);
  let chosen = -1;
  for (const [p, n] of [...votes].sort(([a], [b]) => a - b)) if (n > (votes.get(chosen) ?? 0)) chosen = p;

  const part = parts.part(chosen);
  const wireEnds = new Map<string, number>();
  for (const end of harness.wires.flatMap((wire) => [wire.a, wire.b])) {
    const id = landingIdOf(machine, end);
    if (id !== undefined) wireEnds.set(id, (wireEnds.get(id) ?? 0) + 1);
  }
  const tieMinPerMm = numbers.tie_min / numbers.tie_spacing_mm;
  const reached = all.flatMap(({ landing, rooms }) => {
    // One wire by itself is not tied.
    const minPerMm = (wireEnds.get(landing.id) ?? 0) > 1 ? tieMinPerMm : 0;
    const candidates = rooms.flatMap((room): ProblemCandidate[] => {
      const spot = part.numberOf[room.spot] ?? -1;
      return spot < 0 ? [] : [{ spot, lengthMm: room.lengthMm, minutes: room.lengthMm * minPerMm }];
    });
    return candidates.length === 0 ? [] : [{ landing, candidates }];
  });
  const terminals = new Map(reached.map(({ landing }, i) => [landing.id, i]));
  const splices = harness.splices.map((s) => s.id).sort(compareText);

  const ties = (end: string): boolean => terminals.has(landingIdOf(machine, end) ?? "");
  const tiedSplices = splices.filter((id) =>
    harness.wires.some((w) => (w.a === id && ties(w.b)) || (w.b === id && ties(w.a))),
  );
  for (const [i, id] of tiedSplices.entries()) terminals.set(id, reached.length + i);
  const terminalOf = (end: string): number | undefined => terminals.get(landingIdOf(machine, end) ?? end);
  const wires = [...harness.wires]
    .sort((a, b) => compareText(a.id, b.id))
    .flatMap((wire) => {
      const a = terminalOf(wire.a);
      const b = terminalOf(wire.b);
      return a === undefined || b === undefined ? [] : [{ wire, a, b }];
    });

  const problem: RouteProblem = {
    spots: part.spots.length,
    lanes: part.problemLanes,
    landings: reached.map(({ candidates }) => ({ candidates })),
    splices: tiedSplices.map((id) => ({ places: splicePlaces(part.spots, held.splices.get(id)) })),
    wires: wires.map(({ wire, a, b }) => ({
      a,
      b,
      classIndex: NET_CLASSES.indexOf(wire.netClass),
      squareMm2: wire.wireType.od_mm ** 2,
    })),
    classes: NET_CLASSES.length,
    apart: APART_PAIRS,
    breakoutMin: numbers.breakout_min,
    breakoutBranches: Math.max(1, Math.floor(numbers.breakout_branches)),
    layMinPerM: numbers.lay_wire_m_min,
    fixedMin: roundTo(
      insertions(harness) * numbers.insertion_min + harness.splices.length * numbers.splice_min,
      1e-9,
    ),
  };
  return {
    problem,
    spots: part.spots,
    lanes: part.lanes,
    landings: reached.map((r) => r.landing),
    spliceIds: tiedSplices,
    wires: wires.map((w) => w.wire),
    unreached: all.map((a) => a.landing.id).filter((id) => !terminals.has(id)),
  };
}

/** Contacts to load: a contact that takes two wires is loaded once. */
export function insertions(harness: HarnessWires): number {
  const splices = new Set(harness.splices.map((s) => s.id));
  return new Set(harness.wires.flatMap((w) => [w.a, w.b]).filter((end) => !splices.has(end))).size;
}

/** Spots in this part at which a splice may lie: the one that is held, else all, those at a hinge only at need. */
function splicePlaces(spots: readonly GraphSpot[], heldId: string | undefined) {
  const places = spots.map(({ id, atHinge }, spot) => ({
    id,
    spot,
    penaltyMin: atHinge ? HINGE_SPLICE_MIN : 0,
  }));
  const kept = places.filter((p) => p.id === heldId);
  return (kept.length > 0 ? kept : places).map(({ spot, penaltyMin }) => ({ spot, penaltyMin }));
}
