import type { Side } from "../../model/index.ts";

/** Steps on panels, for the question of turning panels over: node 0, 1, 2 … with what waits for each. */
export interface SideProblem {
  /** Panel with two sides that a node lies on, by its number; −1: one that is never turned. */
  readonly panel: readonly number[];
  readonly side: readonly Side[];
  readonly after: readonly (readonly number[])[];
  /** How many others each waits for. */
  readonly waits: readonly number[];
  readonly panels: number;
}

/** A panel is laid down, or turned, with a side up. */
export interface Turn {
  readonly panel: number;
  readonly side: Side;
}

/** How far the work has come. */
interface State {
  readonly waits: Int32Array;
  readonly done: Uint8Array;
  readonly left: number;
  /** By panel; null: not laid down yet. */
  readonly up: readonly (Side | null)[];
  readonly turns: readonly Turn[];
  readonly paid: number;
}

export interface Turning {
  /** Every laying down and turning in its order; between two of them all that can be done is done. */
  readonly turns: readonly Turn[];
  readonly turnOvers: number;
  readonly lowerBound: number;
}

const SIDES: readonly Side[] = ["top", "under"];
const other = (side: Side): Side => (side === "top" ? "under" : "top");

/** Most states that are looked into beyond those on the way to the first answer. */
const MOST_STATES = 200;

/**
 * The fewest turn-overs; the work must be free of loops.
 *
 * For one panel: lay it down with one side up, do all that can be done, turn it, and so on; of both beginnings the
 * better. That is best, because what is done after k turns contains what any other order with that beginning has done
 * after k turns: by induction, whatever that order does next on the side that is up then waits only for things that are
 * done here too. To wait with something gains nothing for the same reason.
 *
 * For several panels the sum of what each needs with all others free is a bound. It is searched best first with that
 * bound, which is met at once unless panels wait for each other crosswise.
 */
export function fewestTurns(problem: SideProblem): Turning {
  const start: State = {
    waits: Int32Array.from(problem.waits),
    done: new Uint8Array(problem.panel.length),
    left: problem.panel.length,
    up: new Array<Side | null>(problem.panels).fill(null),
    turns: [],
    paid: 0,
  };
  const first = worked(problem, start);
  const lowerBound = restOf(problem, first);
  let open: readonly Bounded[] = [];
  let state = first;
  for (let states = 0; state.left > 0; states++) {
    const further = nextStates(problem, state).map((next) => ({
      state: next,
      bound: next.paid + restOf(problem, next),
    }));
    // Beyond the limit only the way that is farthest on is followed.
    const all = states < MOST_STATES ? [...open, ...further] : further;
    const best = all.reduce((a, b) => (isBetter(b, a) ? b : a));
    open = all.filter((one) => one !== best);
    state = best.state;
  }
  return { turns: state.turns, turnOvers: state.paid, lowerBound };
}

interface Bounded {
  readonly state: State;
  readonly bound: number;
}

/** Whether one has the lesser bound, or as little and is farther on. */
const isBetter = (a: Bounded, b: Bounded): boolean =>
  a.bound < b.bound || (a.bound === b.bound && a.state.left < b.state.left);

/** States after turning each panel that has something to be done on its other side. */
function nextStates(problem: SideProblem, state: State): readonly State[] {
  const ready = new Set<number>();
  problem.panel.forEach((panel, node) => {
    if (panel !== -1 && state.done[node] === 0 && state.waits[node] === 0)
      ready.add(2 * panel + SIDES.indexOf(problem.side[node] ?? "top"));
  });
  return [...ready]
    .sort((a, b) => a - b)
    .map((key) => {
      const panel = key >> 1;
      const side = SIDES[key & 1] ?? "top";
      const turned = {
        ...state,
        waits: state.waits.slice(),
        done: state.done.slice(),
        up: state.up.with(panel, side),
        turns: [...state.turns, { panel, side }],
        paid: state.paid + (state.up[panel] === null ? 0 : 1),
      };
      return worked(problem, turned);
    });
}

/** Everything that can be done is done; the state's own arrays are used up. */
function worked(problem: SideProblem, state: State): State {
  const { waits, done, up } = state;
  const isUp = (node: number): boolean => {
    const panel = problem.panel[node] ?? -1;
    return panel === -1 || up[panel] === problem.side[node];
  };
  return { ...state, left: state.left - doAll(problem, waits, done, isUp) };
}

/** Does what may be done until nothing is left of it; gives how many were done. */
function doAll(
  problem: SideProblem,
  waits: Int32Array,
  done: Uint8Array,
  may: (node: number) => boolean,
): number {
  const open: number[] = [];
  for (let node = 0; node < waits.length; node++)
    if (waits[node] === 0 && done[node] === 0 && may(node)) open.push(node);
  let count = 0;
  for (let node = open.pop(); node !== undefined; node = open.pop()) {
    done[node] = 1;
    count++;
    for (const next of problem.after[node] ?? []) {
      const left = (waits[next] ?? 0) - 1;
      waits[next] = left;
      if (left === 0 && may(next)) open.push(next);
    }
  }
  return count;
}

/** Turn-overs that are still needed at the least: of each panel by itself, as if all others took care of themselves. */
function restOf(problem: SideProblem, state: State): number {
  let sum = 0;
  for (let panel = 0; panel < problem.panels; panel++) {
    const up = state.up[panel] ?? null;
    sum += Math.min(...(up === null ? SIDES : [up]).map((side) => turnsOf(problem, state, panel, side)));
  }
  return sum;
}

function turnsOf(problem: SideProblem, state: State, panel: number, begin: Side): number {
  const waits = state.waits.slice();
  const done = state.done.slice();
  let left = state.left;
  let up = begin;
  for (let turns = 0; ; turns++) {
    const side = up;
    left -= doAll(
      problem,
      waits,
      done,
      (node) => problem.panel[node] !== panel || problem.side[node] === side,
    );
    if (left === 0) return turns;
    up = other(up);
  }
}
