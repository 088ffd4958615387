import type { PlacedElement } from "@pinwright/engine";
import type { CircuitGraph, Joint, LaidWire } from "./graph.ts";

/** A wire, or an element that is passed. */
type Step =
  | { readonly kind: "wire"; readonly laid: LaidWire }
  | { readonly kind: "element"; readonly element: PlacedElement };

/** A way from one point on to another. */
export interface Branch {
  readonly step: Step;
  readonly fromPointId: string;
  readonly to: Stop;
  /** It comes to where another way has come before. */
  readonly closes: boolean;
}

/** A place where one comes to, with all that mates and links make one with it. */
export interface Stop {
  readonly pointId: string;
  /** This point and those of the same item, or of the other half, that it goes on to. */
  readonly pointIds: readonly string[];
  /** Elements at these points that are not passed, each once. */
  readonly leaves: readonly { readonly element: PlacedElement; readonly pointId: string }[];
  readonly branches: readonly Branch[];
}

/** What to do at an element: go through, tell it, or say nothing. */
export type Enter = "pass" | "tell" | "skip";

export interface WalkRules {
  readonly wire: (laid: LaidWire) => boolean;
  readonly element: (element: PlacedElement, fromPointId: string) => Enter;
}

interface Open {
  readonly pointId: string;
  readonly pointIds: string[];
  readonly leaves: { element: PlacedElement; pointId: string }[];
  readonly branches: Branch[];
}

/**
 * Follows wires and elements from a point on, breadth first, so that each place is come to by the fewest steps. No
 * wire and no element is taken twice.
 */
export function walk(graph: CircuitGraph, startId: string, rules: WalkRules): Stop {
  const stops = new Map<string, Open>();
  const taken = new Set<string>();
  const open = (pointId: string): Open => {
    const stop: Open = { pointId, pointIds: [], leaves: [], branches: [] };
    gather(graph, stop, stops);
    return stop;
  };
  const first = open(startId);
  const queue: { stop: Open; pointId: string }[] = first.pointIds.map((pointId) => ({
    stop: first,
    pointId,
  }));
  for (const { stop, pointId } of queue)
    for (const joint of graph.joints.get(pointId) ?? []) {
      const step = stepOf(joint);
      if (step === null || taken.has(joint.id)) continue;
      const enter =
        step.kind === "wire"
          ? rules.wire(step.laid)
            ? "pass"
            : "skip"
          : rules.element(step.element, pointId);
      if (enter === "skip") continue;
      taken.add(joint.id);
      if (enter === "tell") {
        if (step.kind === "element") stop.leaves.push({ element: step.element, pointId });
        continue;
      }
      const known = stops.get(joint.other);
      const to = known ?? open(joint.other);
      if (known === undefined) for (const next of to.pointIds) queue.push({ stop: to, pointId: next });
      // A way that closes ends there: what follows is told where the place is first come to.
      const end: Stop =
        known === undefined ? to : { pointId: joint.other, pointIds: [], leaves: [], branches: [] };
      stop.branches.push({ step, fromPointId: pointId, to: end, closes: known !== undefined });
    }
  return first;
}

/** All that mates and links make one place with a stop. */
function gather(graph: CircuitGraph, stop: Open, stops: Map<string, Open>): void {
  stop.pointIds.push(stop.pointId);
  stops.set(stop.pointId, stop);
  for (const at of stop.pointIds)
    for (const joint of graph.joints.get(at) ?? []) {
      if (stepOf(joint) !== null || stops.has(joint.other)) continue;
      stops.set(joint.other, stop);
      stop.pointIds.push(joint.other);
    }
}

function stepOf(joint: Joint): Step | null {
  if (joint.kind === "wire") return { kind: "wire", laid: joint.laid };
  if (joint.kind === "mate" || joint.element.row.kind === "link") return null;
  return { kind: "element", element: joint.element };
}

/** The part of a tree that leads to stops which are asked for, or to branches that are. */
export function pruned(
  stop: Stop,
  wanted: { readonly stop: (stop: Stop) => boolean; readonly branch: (branch: Branch) => boolean },
): Stop | null {
  const branches = stop.branches.flatMap((branch): Branch[] => {
    const to = pruned(branch.to, wanted);
    if (to !== null) return [{ ...branch, to }];
    return wanted.branch(branch) ? [{ ...branch, to: { ...branch.to, branches: [] } }] : [];
  });
  return branches.length > 0 || wanted.stop(stop) ? { ...stop, branches } : null;
}

/** Wires and elements of a tree. */
export function* stepsOf(stop: Stop): Generator<Branch, void> {
  for (const branch of stop.branches) {
    yield branch;
    yield* stepsOf(branch.to);
  }
}
