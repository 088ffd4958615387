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

/** How many steps the states may have together that are searched best first. */
const MOST_SEARCHED = 50_000;

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
 *
 * @param laid panels that begin with a given side up; all others begin with either
 */
export function fewestTurns(problem: SideProblem, laid: readonly Turn[] = []): Turning {
  const up = new Array<Side | null>(problem.panels).fill(null);
  for (const { panel, side } of laid) up[panel] = side;
  let state = worked(problem, {
    waits: Int32Array.from(problem.waits),
    done: new Uint8Array(problem.panel.length),
    left: problem.panel.length,
    up,
    turns: laid,
    paid: 0,
  });
  const lowerBound = restOf(problem, state);
  let open: readonly Branch[] = branchesOf(problem, state, lowerBound);
  for (let searched = 0; state.left > 0; ) {
    const best = open.reduce((a, b) => (isBetter(b, a) ? b : a));
    open = open.filter((one) => one !== best);
    if (best.to === null) {
      const to = turned(problem, best.from, best.turn);
      const bound = searched < MOST_SEARCHED ? to.paid + restOf(problem, to) : to.paid;
      open = [...open, { ...best, to, bound }];
      searched += problem.panel.length;
      continue;
    }
    state = best.to;
    const further = branchesOf(problem, state, best.bound);
    // Beyond the limit only the way that was begun is followed.
    open = searched < MOST_SEARCHED ? [...open, ...further] : further;
  }
  return { turns: state.turns, turnOvers: state.paid, lowerBound };
}

/** A turn that may be next. Until it has been looked into, it is as good as what it comes from. */
interface Branch {
  readonly from: State;
  readonly turn: Turn;
  readonly to: State | null;
  readonly bound: number;
}

/** Whether one has the lesser bound; of those as good what has been looked into, and then the one that is farther on. */
function isBetter(a: Branch, b: Branch): boolean {
  if (a.bound !== b.bound) return a.bound < b.bound;
  if ((a.to === null) !== (b.to === null)) return a.to !== null;
  return (a.to ?? a.from).left < (b.to ?? b.from).left;
}

/** Turns of each panel that has something to be done on its other side. */
function branchesOf(problem: SideProblem, from: State, bound: number): readonly Branch[] {
  const ready = new Set<number>();
  problem.panel.forEach((panel, node) => {
    if (panel !== -1 && from.done[node] === 0 && from.waits[node] === 0)
      ready.add(2 * panel + SIDES.indexOf(problem.side[node] ?? "top"));
  });
  return [...ready]
    .sort((a, b) => a - b)
    .map((key) => ({ from, turn: { panel: key >> 1, side: SIDES[key & 1] ?? "top" }, to: null, bound }));
}

function turned(problem: SideProblem, from: State, turn: Turn): State {
  return worked(problem, {
    ...from,
    waits: from.waits.slice(),
    done: from.done.slice(),
    up: from.up.with(turn.panel, turn.side),
    turns: [...from.turns, turn],
    paid: from.paid + (from.up[turn.panel] === null ? 0 : 1),
  });
}

/** Everything that can be done is done; the state's own arrays are used up. */
function worked(problem: SideProblem, state: State): State {
  const { waits, done, up } = state;
  const { panel, side, after } = problem;
  const open: number[] = [];
  const offer = (node: number): void => {
    const own = panel[node] ?? -1;
    if (own === -1 || up[own] === side[node]) open.push(node);
  };
  for (let node = 0; node < waits.length; node++) if (waits[node] === 0 && done[node] === 0) offer(node);
  let { left } = state;
  for (let node = open.pop(); node !== undefined; node = open.pop()) {
    done[node] = 1;
    left--;
    for (const next of after[node] ?? []) {
      const still = (waits[next] ?? 0) - 1;
      waits[next] = still;
      if (still === 0) offer(next);
    }
  }
  return { ...state, left };
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

/** Turn-overs of one panel that lies with a side up, as if all others took care of themselves. */
function turnsOf({ panel, side, after }: SideProblem, state: State, own: number, begin: Side): number {
  const waits = state.waits.slice();
  let now: number[] = [];
  let later: number[] = [];
  let up = begin;
  const offer = (node: number): void => {
    if (panel[node] !== own || side[node] === up) now.push(node);
    else later.push(node);
  };
  for (let node = 0; node < waits.length; node++)
    if (waits[node] === 0 && state.done[node] === 0) offer(node);
  for (let turns = 0; ; turns++) {
    for (let node = now.pop(); node !== undefined; node = now.pop())
      for (const next of after[node] ?? []) {
        const still = (waits[next] ?? 0) - 1;
        waits[next] = still;
        if (still === 0) offer(next);
      }
    if (later.length === 0) return turns;
    [now, later] = [later, now];
    up = up === "top" ? "under" : "top";
  }
}
