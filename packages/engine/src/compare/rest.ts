import { compareText } from "@pinwright/kernel";
import type { FactRow, MachineFacts, StepFact } from "./facts.ts";
import type { Groups } from "./groups.ts";

const keysOf = (p: object, q: object): readonly string[] =>
  [...new Set([...Object.keys(p), ...Object.keys(q)])].sort(compareText);

/** Whether two rows say the same: kept facts have their columns in another order than fresh ones. */
function isSameRow(a: FactRow | undefined, b: FactRow | undefined): boolean {
  if (a === undefined || b === undefined) return a === b;
  return keysOf(a, b).every((column) => a[column] === b[column]);
}

/** Decisions of people: what was pinned, accepted or taken back. What is settled shows in what it decides. */
export function compareChoices(before: MachineFacts, after: MachineFacts, groups: Groups): void {
  const [old, now] = [before.rows.choices ?? {}, after.rows.choices ?? {}];
  for (const key of keysOf(old, now)) {
    const [from, to] = [old[key], now[key]];
    const isSettled = (to ?? from)?.held === "settled" || (from?.held === "settled" && to === undefined);
    const kind = (to ?? from)?.kind ?? "";
    // An acceptance is told with the finding that it accepts.
    if (isSettled || kind === "accept" || isSameRow(from, to)) continue;
    const subject = (to ?? from)?.subject ?? "";
    groups.add(
      { table: "choices", id: key },
      to === undefined
        ? { what: "undecided", values: { kind, subject, from: from?.value ?? "" } }
        : {
            what: "decided",
            values: { kind, subject, from: from?.value ?? "", to: to.value ?? "", why: to.reason ?? "" },
          },
    );
  }
}

/** How often parts are in a machine, and which symbol stands for a screw. */
export function compareParts(before: MachineFacts, after: MachineFacts, groups: Groups): void {
  for (const id of keysOf(before.parts, after.parts)) {
    const [from, to] = [before.parts[id], after.parts[id]];
    if (from?.count === to?.count) continue;
    groups.add(
      { table: "bill", id },
      {
        what: "count",
        values: { from: from?.count ?? 0, to: to?.count ?? 0, unit: (to ?? from)?.unit ?? "each" },
      },
    );
  }
  for (const id of keysOf(before.symbols, after.symbols)) {
    const [from = "", to = ""] = [before.symbols[id], after.symbols[id]];
    if (from !== to) groups.add({ table: "fastener_types", id }, { what: "symbol", values: { from, to } });
  }
}

/** Steps of assembly: new ones, gone ones, others in order, content or time. */
export function compareSteps(before: MachineFacts, after: MachineFacts, groups: Groups): void {
  const moved = movedSteps(before, after);
  for (const id of keysOf(before.steps, after.steps)) {
    const [from, to] = [before.steps[id], after.steps[id]];
    const subject = { table: "steps", id };
    if (from === undefined || to === undefined) {
      groups.add(subject, {
        what: to === undefined ? "step-gone" : "step-new",
        values: { number: (to ?? from)?.number ?? 0 },
      });
      continue;
    }
    if (moved.has(id))
      groups.add(subject, { what: "step-order", values: { from: from.number, to: to.number } });
    if (contentOf(from) !== contentOf(to))
      groups.add(subject, { what: "step-content", values: contentChange(before, after, from, to) });
    if (from.minutes !== to.minutes)
      groups.add(subject, { what: "step-minutes", values: { from: from.minutes, to: to.minutes } });
  }
}

/**
 * Steps that come at another place: the fewest whose moving makes the one order out of the other. A step that only counts on
 * because another was put before it has kept its place.
 */
function movedSteps(before: MachineFacts, after: MachineFacts): ReadonlySet<string> {
  const common = Object.keys(before.steps)
    .filter((id) => after.steps[id] !== undefined)
    .sort((p, q) => (before.steps[p]?.number ?? 0) - (before.steps[q]?.number ?? 0));
  const stays = longestRising(common.map((id) => after.steps[id]?.number ?? 0));
  return new Set(common.filter((_, i) => !stays.has(i)));
}

/** Places of a longest rising subsequence (Fredman 1975: patience sorting, n log n). */
function longestRising(numbers: readonly number[]): ReadonlySet<number> {
  const tails: number[] = [];
  const before: number[] = [];
  numbers.forEach((number, i) => {
    let [low, high] = [0, tails.length];
    while (low < high) {
      const middle = (low + high) >> 1;
      if ((numbers[tails[middle] ?? 0] ?? 0) < number) low = middle + 1;
      else high = middle;
    }
    before[i] = low === 0 ? -1 : (tails[low - 1] ?? -1);
    tails[low] = i;
  });
  const stays = new Set<number>();
  for (let i = tails.at(-1) ?? -1; i >= 0; i = before[i] ?? -1) stays.add(i);
  return stays;
}

/** What a step takes in and no longer takes in: things by their ids, screws by their type as often as there are more. */
function contentChange(
  before: MachineFacts,
  after: MachineFacts,
  from: StepFact,
  to: StepFact,
): Readonly<Record<"in" | "out", readonly string[]>> {
  const [won, lost] = [minus(to.fasteners, from.fasteners), minus(from.fasteners, to.fasteners)];
  const typesOf = ({ items }: MachineFacts, ids: readonly string[]): readonly string[] =>
    ids.map((id) => items[id]?.type ?? id).sort(compareText);
  const [wonTypes, lostTypes] = [typesOf(after, won), typesOf(before, lost)];
  // Others of the same type can only be told by their ids.
  const isByType = !wonTypes.some((type) => lostTypes.includes(type));
  return {
    in: [...minus(to.items, from.items), ...(isByType ? wonTypes : won)],
    out: [...minus(from.items, to.items), ...(isByType ? lostTypes : lost)],
  };
}

const minus = (p: readonly string[], q: readonly string[]): readonly string[] =>
  p.filter((id) => !q.includes(id));
const contentOf = ({ items, fasteners }: StepFact): string => JSON.stringify([items, fasteners]);
