import type { Comparison } from "./change.ts";
import { changedSheets, changedTypes, harnessEffects, toolEffects } from "./effects.ts";
import { compareEnds } from "./ends.ts";
import type { MachineFacts } from "./facts.ts";
import { compareFindings } from "./findings.ts";
import { Groups } from "./groups.ts";
import { newRenames, renamedFacts } from "./renames.ts";
import { compareChoices, compareParts, compareSteps } from "./rest.ts";
import { compareRows } from "./rows.ts";
import { compareWires } from "./wires.ts";

/**
 * Two revisions of a machine side by side, in the language of the machine: what was done to each thing, what follows from it,
 * and which sheets, harnesses, tools and units it reaches. Nothing is computed anew: all comes from the facts of both.
 */
export function compareFacts(before: MachineFacts, after: MachineFacts): Comparison {
  const renames = newRenames(before, after);
  const old = renamedFacts(before, renames);
  const groups = new Groups();
  for (const { table, from, to } of renames)
    groups.add({ table, id: to }, { what: "renamed", values: { from, to } });
  compareRows(old, after, groups);
  compareEnds(old, after, groups);
  compareWires(old, after, groups);
  compareSteps(old, after, groups);
  compareParts(old, after, groups);
  compareChoices(old, after, groups);
  compareFindings(old, after, groups);
  const list = groups.list(old, after);
  const sheets = changedSheets(before, after);
  return {
    before: before.machine.revision,
    after: after.machine.revision,
    groups: list,
    sheets,
    harnesses: harnessEffects(old, after),
    tools: toolEffects(old, after, sheets),
    types: changedTypes(list),
  };
}
