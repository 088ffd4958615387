import { compareText } from "@pinwright/kernel";
import type { Precedence } from "../../model/index.ts";
import { isThreaded } from "../order/index.ts";
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
  const knots = knotsOf(edges.flatMap((edge) => pairOf(edge, (id) => stepOf.get(id))));
  if (knots.length === 0) return drafts;
  const byId = new Map(drafts.map((draft) => [draft.id, draft]));
  const within = edgesWithin(knots, edges, stepOf);
  const parts = new Map<string, readonly (readonly string[])[]>();
  knots.forEach((knot, i) => {
    const groups = knot.flatMap((id) => byId.get(id) ?? []).filter(isGroup);
    for (const [id, own] of partsOf(groups, within[i] ?? [], stepOf)) parts.set(id, own);
  });
  return drafts
    .flatMap((draft) => divided(draft, parts.get(draft.id) ?? [], fastenersOf))
    .sort((a, b) => compareText(a.id, b.id));
}

/**
 * The edges without those that a bundle is only threaded in for, where these make whole steps wait for each other: a
 * step of many boards is worth more than a bundle that is laid before one of them.
 */
export function withoutThreads(
  drafts: readonly Draft[],
  edges: readonly Precedence[],
): readonly Precedence[] {
  const stepOf = stepsOf(drafts);
  const knots = knotsOf(edges.flatMap((edge) => pairOf(edge, (id) => stepOf.get(id))));
  const knotOf = new Map(knots.flatMap((knot, i) => knot.map((id) => [id, i] as const)));
  return edges.filter((edge) => {
    const knot = knotOf.get(stepOf.get(edge.beforeId) ?? "");
    return !isThreaded(edge) || knot === undefined || knot !== knotOf.get(stepOf.get(edge.afterId) ?? "");
  });
}

type Pair = readonly [before: string, after: string];

/** An edge between what its ends are part of; nothing within one thing, or with something that is nowhere. */
function pairOf(edge: Precedence, nodeOf: (id: string) => string | undefined): readonly Pair[] {
  const before = nodeOf(edge.beforeId);
  const after = nodeOf(edge.afterId);
  return before === undefined || after === undefined || before === after ? [] : [[before, after]];
}

/** For each knot the edges between what is in its steps. */
function edgesWithin(
  knots: readonly (readonly string[])[],
  edges: readonly Precedence[],
  stepOf: ReadonlyMap<string, string>,
): readonly (readonly Precedence[])[] {
  const knotOf = new Map(knots.flatMap((knot, i) => knot.map((id) => [id, i] as const)));
  const within = knots.map((): Precedence[] => []);
  for (const edge of edges) {
    const knot = knotOf.get(stepOf.get(edge.beforeId) ?? "");
    if (knot !== undefined && knot === knotOf.get(stepOf.get(edge.afterId) ?? "")) within[knot]?.push(edge);
  }
  return within;
}

/** Steps that were made by putting alike things together. */
const isGroup = ({ kind, itemIds, fastenerIds }: Draft): boolean =>
  (kind === "devices" || kind === "boards" || kind === "join" || kind === "fixings") &&
  itemIds.length + (kind === "fixings" ? fastenerIds.length : 0) > 1;

const membersOf = (group: Draft): readonly string[] =>
  group.kind === "fixings" ? group.fastenerIds : group.itemIds;

/**
 * Members of each group by how many other steps they wait for, those that may go together in one part.
 * @param edges between what is in the steps of one knot
 */
function partsOf(
  groups: readonly Draft[],
  edges: readonly Precedence[],
  stepOf: ReadonlyMap<string, string>,
): ReadonlyMap<string, readonly (readonly string[])[]> {
  const split = new Set(groups.map((group) => group.id));
  /** A member of a group stands by itself, everything else with its step. */
  const node = (id: string): string | undefined => {
    const step = stepOf.get(id);
    return step !== undefined && split.has(step) && step !== id ? id : step;
  };
  const pairs = edges.flatMap((edge) => pairOf(edge, node));
  const ranks = ranksOf(pairs, (before, after) => (stepOf.get(before) === stepOf.get(after) ? 0 : 1));
  const pieces = new Pieces(pairs);
  // All groups are divided before the parts of any are joined: a part is checked against parts, not against members.
  const divided = groups.map((group) => ({ id: group.id, ranks: byRank(membersOf(group), ranks) }));
  for (const { ranks: own } of divided) for (const members of own) pieces.merge(members);
  return new Map(divided.map(({ id, ranks: own }) => [id, pieces.joined(own)]));
}

/** Members of each rank in code-point order, the lowest rank first. */
function byRank(
  members: readonly string[],
  ranks: ReadonlyMap<string, number>,
): readonly (readonly string[])[] {
  const own = new Map<number, string[]>();
  for (const id of [...members].sort(compareText)) {
    const rank = ranks.get(id) ?? 0;
    const known = own.get(rank);
    if (known === undefined) own.set(rank, [id]);
    else known.push(id);
  }
  return [...own].sort(([a], [b]) => a - b).map(([, ids]) => ids);
}

/** What waits for what, while members of groups are put together into parts. */
class Pieces {
  #links: readonly Pair[];

  constructor(pairs: readonly Pair[]) {
    this.#links = pairs;
  }

  /** Makes one piece of several, by the name of the first of them. */
  merge(members: readonly string[]): void {
    const [into = ""] = members;
    const own = new Set(members);
    const named = (id: string): string => (own.has(id) ? into : id);
    this.#links = this.#links
      .map(([before, after]): Pair => [named(before), named(after)])
      .filter(([before, after]) => before !== after);
  }

  /** Puts pieces that follow each other together as long as that makes no loop. */
  joined(ranks: readonly (readonly string[])[]): readonly (readonly string[])[] {
    const parts: string[][] = [];
    for (const members of ranks) {
      const part = parts.at(-1);
      const [last = ""] = part ?? [];
      const [first = ""] = members;
      if (part === undefined || isLooped(this.#links, last, first)) parts.push([...members]);
      else {
        this.merge([last, first]);
        part.push(...members);
      }
    }
    return parts;
  }
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
    const members = [...ids].sort(compareText);
    if (draft.kind === "fixings") return { ...draft, id, fastenerIds: members };
    const own = new Set(draft.fastenerIds);
    const fastenerIds = members.flatMap(fastenersOf).filter((fastener) => own.has(fastener));
    return { ...draft, id, itemIds: members, fastenerIds: fastenerIds.sort(compareText) };
  });
}
