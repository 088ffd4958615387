import type { LineResult, WorkStep } from "@pinwright/engine";
import { view } from "./view.ts";

/** Ids that a problem can be about and that concern a unit, or one step of it. */
interface Scope {
  readonly ids: readonly string[];
}

/** What is made, as the floor names it. */
interface ScopeOf {
  readonly what: string;
  readonly type: string;
}

/** Items with all that they are called by: themselves, their type, what is in them and its types. */
function itemIds({ machine }: LineResult, ids: Iterable<string>): readonly string[] {
  const wanted = new Set(ids);
  return [...machine.items.values()].flatMap((item) =>
    wanted.has(item.id) || wanted.has(item.parentId ?? "") ? [item.id, item.type.id] : [],
  );
}

/** Parts of assemblies of the bill, through what is only part of them. */
function partIds({ parts }: LineResult, roots: readonly string[]): readonly string[] {
  const seen = new Set(roots);
  for (const id of seen)
    for (const line of parts.bill.lines) if (line.parentId === id) seen.add(line.childId);
  return [...seen].flatMap((id) => parts.bill.nodes.get(id)?.partId ?? []);
}

function stepIds(line: LineResult, step: WorkStep): readonly string[] {
  const harness = step.harnessId === null ? [] : [step.harnessId];
  const mechanism = step.mechanismTypeId === null ? [] : [step.mechanismTypeId];
  return [
    ...[step.id, ...harness, ...mechanism],
    ...itemIds(line, [...step.itemIds, ...step.fastenerIds, ...step.recheckIds]),
    ...itemParts(line, step.itemIds),
  ];
}

/** Parts that stand at some items. */
function itemParts({ parts }: LineResult, ids: readonly string[]): readonly string[] {
  const wanted = new Set(ids);
  return parts.bill.lines
    .filter(({ at }) => at.some((one) => wanted.has(one)))
    .flatMap(({ childId }) => parts.bill.nodes.get(childId)?.partId ?? []);
}

function unitIds(line: LineResult, { what, type }: ScopeOf): readonly string[] {
  const { machine } = line;
  if (what === "machine") return [];
  if (what === "harness") return [type, ...partIds(line, [`harness:${type}`])];
  const items = [...machine.items.values()].filter((item) => item.kind === what && item.type.id === type);
  const own = itemIds(
    line,
    items.map(({ id }) => id),
  );
  return [type, ...own, ...partIds(line, [`${what}:${type}`])];
}

/**
 * What problems are about when they concern a unit: entry `unit`, of boards, harnesses and mechanisms; and of a machine or
 * mechanism each step by its id.
 */
export const problemScope = view<ScopeOf, Scope>({
  uses: ({ line }) => [line.machine.items, line.parts, line.steps],
  entries: ({ line }, of) => {
    const unique = (ids: readonly string[]): Scope => ({ ids: [...new Set(ids)] });
    const steps = line.steps.steps.filter(
      (step) => of.what === "machine" || (of.what === "mechanism" && step.mechanismTypeId === of.type),
    );
    return new Map([
      ["unit", unique(unitIds(line, of))] as const,
      ...steps.map((step) => [step.id, unique(stepIds(line, step))] as const),
    ]);
  },
  restsInPreview: true,
});
