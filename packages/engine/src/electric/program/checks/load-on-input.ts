import { type Finding, makeFinding } from "../../../model/index.ts";
import { controlsOf, LOADS, type ProgramFacts } from "./facts.ts";

/** A load needs a driver; an input cannot switch it. */
export function loadOnInput({ traced }: ProgramFacts): readonly Finding[] {
  return traced.flatMap((load) => {
    if (!LOADS.has(load.element.row.kind) || controlsOf(load, "driver").length > 0) return [];
    const input = controlsOf(load, "input")[0];
    if (input === undefined) return [];
    return [
      makeFinding("load-on-input", "error", [load.element.itemId, input.pointId], {
        load_kind: load.element.row.kind,
      }),
    ];
  });
}
