import { compareText } from "@pinwright/kernel";
import type { Side } from "../../model/index.ts";
import { type ChangeCount, countChanges, Numbering } from "./changes.ts";
import type { Arc } from "./digraph.ts";
import { type Draft, draftOrder } from "./draft.ts";
import { improveOrder } from "./improve.ts";
import { fewestTurns, type SideProblem, type Turning } from "./sides.ts";
import { forwardOrder } from "./sparse.ts";

/** A step, as far as the order of steps goes. */
export interface SequenceNode {
  readonly id: string;
  /** Panel that lies before the builder; null: none, as at the bench of the mechanisms. */
  readonly panelId: string | null;
  readonly side: Side;
  /** Bits in the order in which the step uses them; repeats beside each other count once. */
  readonly drives: readonly string[];
  /** Fastener types in the order in which the step opens their boxes. */
  readonly boxes: readonly string[];
  /** Among steps that are as good as each other, the lower one goes first; then the id decides. */
  readonly rank: number;
}

/** The order of steps. */
export interface Sequence {
  /** Ids in the order of work. */
  readonly order: readonly string[];
  readonly turnOvers: number;
  /** No order that keeps to the edges has fewer. */
  readonly fewestTurnOvers: number;
  /** Counted on each panel by itself: panels lie on benches of their own, each with its boxes and its driver. */
  readonly boxChanges: number;
  readonly bitChanges: number;
}

type Edge = { readonly beforeId: string; readonly afterId: string };

/**
 * An order of steps that keeps to the edges, with the fewest turn-overs of panels (see `fewestTurns`), then few changes
 * of boxes, then of bits: the next step is the one that needs no change, a change goes to the box with the most work,
 * and then steps are moved as long as that saves a change. A panel may begin on either side. Edges that name no node,
 * or the same one twice, are passed over. Throws a RangeError when the edges are not free of loops.
 */
export function sequenceSteps(nodes: readonly SequenceNode[], edges: readonly Edge[]): Sequence {
  const draft = draftOf(nodes, edges);
  const { turning, order, changes } = bestBeginning(draft);
  return {
    order: order.map((node) => draft.nodes[node]?.id ?? ""),
    turnOvers: turning.turnOvers,
    fewestTurnOvers: turning.lowerBound,
    boxChanges: changes.boxes,
    bitChanges: changes.bits,
  };
}

/** How many steps the orders may have together that are tried with panels begun on their other side. */
const MOST_TRIED = 900;

interface Tried {
  readonly turning: Turning;
  readonly order: readonly number[];
  readonly changes: ChangeCount;
}

/** Of the sides that each panel may begin on without a further turn-over, the one that saves most changes. */
function bestBeginning(draft: Draft): Tried {
  const problem = sideProblem(draft);
  const { lowerBound, ...turning } = fewestTurns(problem);
  let best = tried(draft, { ...turning, lowerBound });
  const tries = Math.min(problem.panels, Math.floor(MOST_TRIED / draft.nodes.length));
  for (let panel = 0; panel < tries; panel++) {
    const begun = best.turning.turns.filter(
      (turn, i, all) => all.findIndex((t) => t.panel === turn.panel) === i,
    );
    const laid = begun.map((turn) => (turn.panel === panel ? { ...turn, side: otherSide(turn.side) } : turn));
    const other = fewestTurns(problem, laid);
    if (other.turnOvers > turning.turnOvers) continue;
    const one = tried(draft, { ...other, lowerBound });
    if (compareChanges(one.changes, best.changes) < 0) best = one;
  }
  return best;
}

const otherSide = (side: Side): Side => (side === "top" ? "under" : "top");

const compareChanges = (a: ChangeCount, b: ChangeCount): number => a.boxes - b.boxes || a.bits - b.bits;

function tried(draft: Draft, turning: Turning): Tried {
  const order = improveOrder(draft, draftOrder(draft, turning.turns));
  const counts = draft.benches.map((bench) =>
    countChanges(
      order.filter((node) => draft.bench[node] === bench).flatMap((node) => draft.handled[node] ?? []),
    ),
  );
  const changes = {
    boxes: counts.reduce((sum, { boxes }) => sum + boxes, 0),
    bits: counts.reduce((sum, { bits }) => sum + bits, 0),
  };
  return { turning, order, changes };
}

/** Steps as numbers, the lowest rank and then the lowest id first. */
function draftOf(unsorted: readonly SequenceNode[], edges: readonly Edge[]): Draft {
  const nodes = unsorted.toSorted((a, b) => a.rank - b.rank || compareText(a.id, b.id));
  const indices = new Map(nodes.map((node, i) => [node.id, i]));
  const after: number[][] = nodes.map(() => []);
  const before: number[][] = nodes.map(() => []);
  const arcs: Arc[] = [];
  for (const { beforeId, afterId } of edges) {
    const from = indices.get(beforeId);
    const to = indices.get(afterId);
    if (from === undefined || to === undefined || from === to) continue;
    after[from]?.push(to);
    before[to]?.push(from);
    arcs.push({ from, to, weight: 1 });
  }
  if (forwardOrder(nodes.length, arcs) === null) {
    throw new RangeError("sequenceSteps: steps wait for each other in a loop; break the loops first");
  }
  const benchNumbers = new Numbering();
  const boxes = new Numbering();
  const bits = new Numbering();
  const bench = nodes.map(({ panelId }) => benchNumbers.of(panelId ?? ""));
  return {
    nodes,
    after,
    before,
    bench,
    benches: [...new Set(bench)],
    handled: nodes.map((node) => ({ boxes: boxes.listOf(node.boxes), bits: bits.listOf(node.drives) })),
    turned: turnedPanels(nodes),
  };
}

/** Numbers of the panels on both sides of which something is done, for each node; −1: another one, or none. */
function turnedPanels(nodes: readonly SequenceNode[]): readonly number[] {
  const sides = new Map<string, Set<Side>>();
  for (const { panelId, side } of nodes) {
    if (panelId === null) continue;
    const own = sides.get(panelId) ?? new Set();
    sides.set(panelId, own.add(side));
  }
  const turned = [...sides].filter(([, own]) => own.size === 2).map(([panelId]) => panelId);
  const numbers = new Map(turned.sort(compareText).map((panelId, i) => [panelId, i]));
  return nodes.map(({ panelId }) => (panelId === null ? -1 : (numbers.get(panelId) ?? -1)));
}

const sideProblem = ({ nodes, after, before, turned }: Draft): SideProblem => ({
  panel: turned,
  side: nodes.map(({ side }) => side),
  after,
  waits: before.map((list) => list.length),
  panels: turned.reduce((most, panel) => Math.max(most, panel + 1), 0),
});
