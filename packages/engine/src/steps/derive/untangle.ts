import { compareText } from "@pinwright/kernel";
import type { Precedence } from "../../model/index.ts";
import type { Draft } from "./draft.ts";
import { stepsOf } from "./edges.ts";
import { knotsOf, ranksOf, reaches } from "./knots.ts";

/**
 * Splits groups that wait for each other only because they are groups: of what lies on a loop of steps each group is
 * divided by how many other steps its items wait for, and the parts are put together again where that makes no loop.
 * The first part keeps the id. Loops among what cannot be divided stay.
 * @param edges precedence of items, harnesses and steps
 * @param fastenersOf what holds an item, so that it goes along
 */
export function untangle(
  drafts: readonly Draft[],
  edges: readonly Precedence[],
  fastenersOf: (itemId: string) => readonly string[],
): readonly Draft[] {
  const stepOf = stepsOf(drafts);
  const knots = knotsOf(mapped(edges, stepOf));
  const byId = new Map(drafts.map((draft) => [draft.id, draft]));
  const parts = new Map<string, readonly (readonly string[])[]>();
  for (const knot of knots) {
    const groups = knot.flatMap((id) => {
      const draft = byId.get(id);
      return draft !== undefined && isGroup(draft) ? [draft] : [];
    });
    if (groups.length > 0) for (const [id, own] of partsOf(knot, groups, edges, stepOf)) parts.set(id, own);
  }
  if (parts.size === 0) return drafts;
  return drafts
    .flatMap((draft) => divided(draft, parts.get(draft.id) ?? [], fastenersOf))
    .sort((a, b) => compareText(a.id, b.id));
}

/** Steps that were made by putting alike things together. */
const isGroup = ({ kind, itemIds, fastenerIds }: Draft): boolean =>
  (kind === "devices" || kind === "boards" || kind === "join" || kind === "fixings") &&
  itemIds.length + (kind === "fixings" ? fastenerIds.length : 0) > 1;

type Pair = readonly [before: string, after: string];

const mapped = (edges: readonly Precedence[], stepOf: ReadonlyMap<string, string>): readonly Pair[] =>
  edges.flatMap(({ beforeId, afterId }): Pair[] => {
    const before = stepOf.get(beforeId);
    const after = stepOf.get(afterId);
    return before === undefined || after === undefined || before === after ? [] : [[before, after]];
  });

const membersOf = (group: Draft): readonly string[] =>
  group.kind === "fixings" ? group.fastenerIds : group.itemIds;

function partsOf(
  knot: readonly string[],
  groups: readonly Draft[],
  edges: readonly Precedence[],
  stepOf: ReadonlyMap<string, string>,
): ReadonlyMap<string, readonly (readonly string[])[]> {
  const inKnot = new Set(knot);
  const split = new Set(groups.map((group) => group.id));
  /** A member of a group stands by itself, everything else with its step. */
  const node = (id: string): string | undefined => {
    const step = stepOf.get(id);
    return step === undefined || !inKnot.has(step) ? undefined : split.has(step) && step !== id ? id : step;
  };
  const pairs = edges.flatMap(({ beforeId, afterId }): Pair[] => {
    const before = node(beforeId);
    const after = node(afterId);
    return before === undefined || after === undefined || before === after ? [] : [[before, after]];
  });
  const ranks = ranksOf(pairs, (before, after) => (stepOf.get(before) === stepOf.get(after) ? 0 : 1));
  const pieces = new Map<string, string>();
  for (const group of groups)
    for (const id of membersOf(group)) pieces.set(id, `${group.id}|${ranks.get(id) ?? 0}`);
  const piece = (id: string): string => pieces.get(id) ?? id;
  let links = pairs
    .map(([before, after]): Pair => [piece(before), piece(after)])
    .filter(([before, after]) => before !== after);
  const parts = new Map<string, readonly (readonly string[])[]>();
  for (const group of groups) {
    const found = new Map<string, string[]>();
    const byRank = [...membersOf(group)].sort(
      (a, b) => (ranks.get(a) ?? 0) - (ranks.get(b) ?? 0) || compareText(a, b),
    );
    let last: string | null = null;
    for (const id of byRank) {
      const own = piece(id);
      if (!found.has(own)) {
        if (last !== null && !isLooped(links, last, own)) {
          const into: string = last;
          for (const [member, name] of pieces) if (name === own) pieces.set(member, into);
          const renamed = (name: string): string => (name === own ? into : name);
          links = links
            .map(([before, after]): Pair => [renamed(before), renamed(after)])
            .filter(([before, after]) => before !== after);
        } else {
          found.set(own, []);
          last = own;
        }
      }
      found.get(piece(id))?.push(id);
    }
    parts.set(group.id, [...found.values()]);
  }
  return parts;
}

/** Whether two parts in one would wait for themselves: a way from one to the other leads over something else. */
const isLooped = (links: readonly Pair[], a: string, b: string): boolean => {
  const others = links.filter(
    ([before, after]) => !(before === a && after === b) && !(before === b && after === a),
  );
  return reaches(others, a, b) || reaches(others, b, a);
};

function divided(
  draft: Draft,
  parts: readonly (readonly string[])[],
  fastenersOf: (itemId: string) => readonly string[],
): readonly Draft[] {
  if (parts.length < 2) return [draft];
  return parts.map((ids, i): Draft => {
    const id = i === 0 ? draft.id : `${draft.id}~${i + 1}`;
    const { en, zh } = draft.labels;
    const labels = { en: `${en}, part ${i + 1}`, zh: `${zh}，第 ${i + 1} 部分` };
    const members = [...ids].sort(compareText);
    if (draft.kind === "fixings") return { ...draft, id, labels, fastenerIds: members };
    const own = new Set(draft.fastenerIds);
    const fastenerIds = members.flatMap(fastenersOf).filter((fastener) => own.has(fastener));
    return { ...draft, id, labels, itemIds: members, fastenerIds: fastenerIds.sort(compareText) };
  });
}
