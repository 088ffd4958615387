import { compareText } from "@pinwright/kernel";
import { type Finding, makeFinding } from "../../model/index.ts";
import { tailId } from "../tree-of.ts";
import type { RouteRule } from "./facts.ts";

/**
 * `joint-at-hinge`: a splice, or the tail of an in-line connector, sits at the end of a hinge that its harness runs
 * over: nothing is joined in the length that flexes.
 */
export const jointAtHinge: RouteRule = ({ machine, crossings, harnesses }) => {
  const inlines = [...machine.landings.values()].filter((l) => l.half !== null);
  return harnesses.flatMap(({ route }): readonly Finding[] => {
    const hinges = route.branches.filter(
      (b) => b.kind === "crossing" && crossings.get(b.id)?.crossing.kind === "hinge",
    );
    if (hinges.length === 0) return [];
    const hingeAt = (nodeId: string): string | undefined =>
      hinges.find((b) => b.a === nodeId || b.b === nodeId)?.id;
    const tails = new Map(route.branches.flatMap((b) => (b.kind === "tail" ? [[b.id, b] as const] : [])));
    const joints = [
      ...route.spliceAt,
      ...inlines.flatMap((landing) => {
        const tail = tails.get(tailId(landing.id));
        return tail === undefined
          ? []
          : [[landing.id, tail.a.startsWith("landing:") ? tail.b : tail.a] as const];
      }),
    ].sort(([a], [b]) => compareText(a, b));
    return joints.flatMap(([id, nodeId]) => {
      const hinge = hingeAt(nodeId);
      return hinge === undefined
        ? []
        : [makeFinding("joint-at-hinge", "warning", [id, hinge, nodeId, route.harnessId])];
    });
  });
};
