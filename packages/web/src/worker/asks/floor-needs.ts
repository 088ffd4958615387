import { type FactBody, NO_FACT, type UnitKind } from "@pinwright/contract";
import { foldUnits, type Needed, neededFor } from "@pinwright/engine";
import type { Model } from "../model.ts";

/**
 * What a unit of a kind and type must have behind it, by the book as it is looked at: for a unit that is about to go into
 * another one.
 * @param param.steps steps that are recorded of it
 */
export function floorNeeds(
  { line }: Model,
  {
    what,
    type,
    steps,
  }: { readonly what: UnitKind; readonly type: string; readonly steps: readonly string[] },
): Needed {
  const unit = "u";
  const bodies: readonly FactBody[] = [
    { kind: "begun", unit, what, type, book: "", revision: "", options: [] },
    ...steps.map((step): FactBody => ({ kind: "step-done", unit, step })),
  ];
  const facts = bodies.map((body, i) => ({
    ...{ stream: "", seq: i + 1, before: NO_FACT, at: "", person: "", body, hash: NO_FACT },
  }));
  const state = foldUnits(facts).get(unit);
  return state === undefined ? { steps: [], tests: [], places: [] } : neededFor(line, state);
}
