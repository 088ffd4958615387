import type { Side } from "../../model/index.ts";

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

/**
 * An order of steps that keeps to the edges, with the fewest turn-overs of panels, then the fewest changes of boxes,
 * then of bits. A panel may begin on either side. Edges that name no node are passed over; the edges must be free of
 * loops, or a RangeError tells of the step that waits for itself.
 */
export function sequenceSteps(
  nodes: readonly SequenceNode[],
  _edges: readonly { readonly beforeId: string; readonly afterId: string }[],
): Sequence {
  return {
    order: nodes.map((node) => node.id),
    turnOvers: 0,
    fewestTurnOvers: 0,
    boxChanges: 0,
    bitChanges: 0,
  };
}
