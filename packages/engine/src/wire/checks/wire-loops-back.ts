import { type Finding, makeFinding } from "../../model/index.ts";
import { areLinked } from "../net-index.ts";
import type { WireFacts } from "./facts.ts";

/** `wire-loops-back`: both ends of a wire are joined inside their item, so that it carries nothing: mark one spare. */
export function wireLoopsBack({ index, wires }: WireFacts): readonly Finding[] {
  return wires.flatMap((wire) =>
    areLinked(index, wire.a, wire.b)
      ? [makeFinding("wire-loops-back", "warning", [wire.id, wire.a, wire.b])]
      : [],
  );
}
