import type { Plan } from "./plan.ts";

/**
 * Joins what is not yet joined and gives every end a wire, changing as little as possible: an end that still
 * takes a wire, then a splice that is there, then a wire that is split at a contact or at a new splice.
 * @param keep wires that must not be split, such as the cores of a cable
 */
export function complete(plan: Plan, keep: ReadonlySet<string> = new Set()): void {
  joinParts(plan, keep);
  pairBareEnds(plan);
  for (let node = 0; node < plan.task.ends.length; node++) {
    if (plan.degree(node) === 0) attach(plan, [node], (other) => other !== node, keep);
  }
}

/** Name of a wire within a plan, as in `keep`. */
export const edgeName = (a: number, b: number): string => (a < b ? `${a}|${b}` : `${b}|${a}`);

function joinParts(plan: Plan, keep: ReadonlySet<string>): void {
  const refused = new Set<number>();
  for (;;) {
    const parts = plan.parts();
    const main = mainPart(plan, parts);
    const loose = parts.findIndex((part, node) => plan.isEnd(node) && part !== main && !refused.has(part));
    if (loose < 0) return;
    const part = parts[loose] ?? loose;
    const own = plan.task.ends.flatMap((_, node) => (parts[node] === part ? [node] : []));
    if (!attach(plan, own, (node) => parts[node] === main, keep)) refused.add(part);
  }
}

/** The part that holds the source; before any wire is laid that is the source's group alone. */
function mainPart(plan: Plan, parts: readonly number[]): number {
  const source = plan.task.groups[plan.task.sourceGroup]?.[0] ?? 0;
  return parts[source] ?? 0;
}

interface Way {
  readonly splices: number;
  readonly mm: number;
  readonly lay: () => void;
}

/** Joins one of the nodes `own` to a node that `may` allows, in the cheapest way: fewest new splices, then shortest. */
function attach(
  plan: Plan,
  own: readonly number[],
  may: (node: number) => boolean,
  keep: ReadonlySet<string>,
): boolean {
  let best: Way | null = null;
  const offer = (splices: number, mm: number, lay: () => void): void => {
    if (best === null || splices < best.splices || (splices === best.splices && mm < best.mm - 1e-6)) {
      best = { splices, mm, lay };
    }
  };
  const bareFirst = [...own]
    .filter((node) => plan.free(node) > 0)
    .sort((a, b) => Math.min(1, plan.degree(a)) - Math.min(1, plan.degree(b)) || a - b);
  const head = bareFirst[0];
  if (head === undefined) return false;
  const heads = bareFirst.filter((node) => (plan.degree(node) === 0) === (plan.degree(head) === 0));
  for (const from of heads) {
    for (let to = 0; to < plan.nodeCount; to++) {
      if (!may(to) || plan.free(to) < 1 || plan.has(from, to) || own.includes(to)) continue;
      if (!plan.isEnd(to) && plan.degree(to) === 0) continue;
      offer(0, plan.distanceMm(from, to), () => plan.add(from, to));
    }
  }
  for (const [a, b] of plan.edges) {
    if (!may(a) || own.includes(a) || own.includes(b) || keep.has(edgeName(a, b))) continue;
    for (const from of heads) {
      for (const [x, y] of [
        [a, b],
        [b, a],
      ] as const) {
        const out = plan.free(from) > 1 ? from : bareFirst.find((node) => node !== from);
        if (out !== undefined) {
          const mm = plan.distanceMm(x, from) + plan.distanceMm(out, y) - plan.distanceMm(a, b);
          offer(0, mm, () => {
            plan.remove(a, b);
            plan.add(x, from);
            plan.add(out, y);
          });
        }
        offer(1, plan.distanceMm(from, x), () => {
          const splice = plan.addSplice(plan.anchor(x));
          plan.remove(a, b);
          for (const node of [a, b, from]) plan.add(node, splice);
        });
      }
    }
  }
  const way: Way | null = best;
  if (way === null) return false;
  (way as Way).lay();
  return true;
}

/** Pairs ends that have no wire yet: parallel contacts get parallel wires, beside an existing wire first. */
function pairBareEnds(plan: Plan): void {
  const groupOf = (node: number): number => plan.task.ends[node]?.group ?? -1;
  const neighbours = new Set(plan.edges.map(([a, b]) => edgeName(groupOf(a), groupOf(b))));
  const bare = plan.task.ends.flatMap((_, node) => (plan.degree(node) === 0 ? [node] : []));
  const pairs = bare.flatMap((a) =>
    bare.flatMap((b) =>
      a < b && groupOf(a) !== groupOf(b)
        ? [
            {
              a,
              b,
              beside: neighbours.has(edgeName(groupOf(a), groupOf(b))) ? 0 : 1,
              mm: plan.distanceMm(a, b),
            },
          ]
        : [],
    ),
  );
  pairs.sort((p, q) => p.beside - q.beside || p.mm - q.mm || p.a - q.a || p.b - q.b);
  for (const { a, b } of pairs) if (plan.degree(a) === 0 && plan.degree(b) === 0) plan.add(a, b);
  if (plan.task.groups.length > 1) return;
  const left = plan.task.ends.flatMap((_, node) => (plan.degree(node) === 0 ? [node] : []));
  for (let i = 0; i + 1 < left.length; i += 2) plan.add(left[i] ?? 0, left[i + 1] ?? 0);
}
