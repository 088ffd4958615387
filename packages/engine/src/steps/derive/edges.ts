import { compareText } from "@pinwright/kernel";
import type { Machine, OrderReason, Precedence } from "../../model/index.ts";
import type { Draft } from "./draft.ts";

/** Skill of those who test: a step with it, the end test, comes after all that is not told to come after it. */
const TEST_SKILL = "test";

/** The weightier reason of two stands for both. */
const WEIGHTS: Readonly<Record<OrderReason, number>> = {
  rule: 0,
  wired: 1,
  covers: 2,
  "hides-nut": 3,
  hides: 4,
  built: 5,
  stands: 6,
};

/** The step of everything that has an order: items, fasteners that hold nothing, harnesses, and steps themselves. */
export function stepsOf(drafts: readonly Draft[]): ReadonlyMap<string, string> {
  const stepOf = new Map<string, string>();
  for (const draft of drafts) {
    stepOf.set(draft.id, draft.id);
    for (const id of draft.itemIds) stepOf.set(id, draft.id);
    for (const id of draft.fastenerIds) stepOf.set(id, draft.id);
    if (draft.harnessId !== null) stepOf.set(draft.harnessId, draft.id);
  }
  return stepOf;
}

/**
 * What steps tell of each other beside their items: the designer's `after`, a mechanism built before it is mounted, and
 * what is checked again after burn-in.
 */
export function ruledEdges(machine: Machine, drafts: readonly Draft[]): readonly Precedence[] {
  const stepOf = stepsOf(drafts);
  const edges: Precedence[] = [];
  for (const row of machine.book.tables.steps)
    for (const before of row.after)
      if (stepOf.has(before)) edges.push({ beforeId: before, afterId: row.id, why: "rule", at: row.id });
  for (const draft of drafts) {
    for (const id of draft.itemIds) {
      const item = machine.items.get(id);
      if (item?.kind !== "mechanism") continue;
      const bench = `bench:${item.type.id}`;
      if (stepOf.has(bench)) edges.push({ beforeId: bench, afterId: draft.id, why: "built", at: id });
    }
    for (const id of draft.recheckIds) {
      const driven = stepOf.get(id);
      if (driven !== undefined) edges.push({ beforeId: driven, afterId: draft.id, why: "stands", at: id });
    }
  }
  return edges;
}

/** Precedence of things as precedence of their steps: one row for each pair with the weightiest reason, by ids. */
export function stepEdges(
  edges: readonly Precedence[],
  stepOf: ReadonlyMap<string, string>,
): readonly Precedence[] {
  const rows = new Map<string, Precedence>();
  for (const edge of edges) {
    const beforeId = stepOf.get(edge.beforeId);
    const afterId = stepOf.get(edge.afterId);
    if (beforeId === undefined || afterId === undefined || beforeId === afterId) continue;
    const key = `${beforeId}|${afterId}`;
    const known = rows.get(key);
    const row = { ...edge, beforeId, afterId };
    if (known === undefined || isBefore(row, known)) rows.set(key, row);
  }
  return [...rows.values()].sort(
    (a, b) => compareText(a.beforeId, b.beforeId) || compareText(a.afterId, b.afterId),
  );
}

const isBefore = (a: Precedence, b: Precedence): boolean =>
  WEIGHTS[a.why] > WEIGHTS[b.why] || (a.why === b.why && compareText(a.at, b.at) < 0);

/**
 * What the end of the line adds: tests come after every step that is not told to come after them, one after the other
 * as they are told, else as in the designer's table; what is checked again comes after all tests, and what follows the
 * last test follows that. Without a test it comes after everything else.
 */
export function endEdges(drafts: readonly Draft[], edges: readonly Precedence[]): readonly Precedence[] {
  const after = followersOf(edges);
  const rechecks = drafts.filter((draft) => draft.kind === "recheck").map((draft) => draft.id);
  const tests = testsInOrder(drafts, after);
  const found: Precedence[] = [];
  let open = new Set(drafts.filter(({ kind }) => kind !== "recheck").map(({ id }) => id));
  for (const test of tests) open.delete(test);
  /** Everything open comes before; what comes before other open steps does so through them. */
  const close = (ids: ReadonlySet<string>, afterId: string): void => {
    for (const beforeId of ids)
      if (!(after.get(beforeId) ?? []).some((id) => ids.has(id)))
        found.push({ beforeId, afterId, why: "rule", at: afterId });
  };
  let last: string | null = null;
  for (const test of tests) {
    const later = reached(after, test);
    close(new Set([...open].filter((id) => !later.has(id))), test);
    if (last !== null) found.push({ beforeId: last, afterId: test, why: "rule", at: test });
    open = new Set([...open].filter((id) => later.has(id)));
    last = test;
  }
  for (const recheck of rechecks) {
    if (last === null) close(open, recheck);
    else {
      found.push({ beforeId: last, afterId: recheck, why: "rule", at: last });
      for (const id of open) found.push({ beforeId: recheck, afterId: id, why: "rule", at: last });
    }
  }
  return found;
}

/** Tests, those that others are told to come after first; then as in the table. */
function testsInOrder(
  drafts: readonly Draft[],
  after: ReadonlyMap<string, readonly string[]>,
): readonly string[] {
  const tests = drafts.filter((draft) => draft.kind === "own" && draft.skill === TEST_SKILL);
  const waits = new Map(tests.map(({ id }) => [id, 0]));
  for (const { id: test } of tests)
    for (const id of reached(after, test)) waits.set(id, (waits.get(id) ?? 0) + 1);
  return [...tests]
    .sort((a, b) => (waits.get(a.id) ?? 0) - (waits.get(b.id) ?? 0) || a.rank - b.rank)
    .map(({ id }) => id);
}

function followersOf(edges: readonly Precedence[]): ReadonlyMap<string, readonly string[]> {
  const after = new Map<string, string[]>();
  for (const { beforeId, afterId } of edges) {
    const known = after.get(beforeId);
    if (known === undefined) after.set(beforeId, [afterId]);
    else known.push(afterId);
  }
  return after;
}

/** All that comes after a step. */
function reached(after: ReadonlyMap<string, readonly string[]>, from: string): ReadonlySet<string> {
  const seen = new Set<string>();
  const ask = [...(after.get(from) ?? [])];
  for (let id = ask.pop(); id !== undefined; id = ask.pop()) {
    if (seen.has(id)) continue;
    seen.add(id);
    ask.push(...(after.get(id) ?? []));
  }
  return seen;
}
