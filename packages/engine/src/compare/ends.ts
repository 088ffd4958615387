import { compareText } from "@pinwright/kernel";
import type { FactRow, MachineFacts } from "./facts.ts";
import type { Groups } from "./groups.ts";
import { itemSubject } from "./subjects.ts";

/**
 * Tells which points belong to another net. A device whose signals reach other pins of boards is told so, and the same is
 * not told again at the board.
 */
export function compareEnds(before: MachineFacts, after: MachineFacts, groups: Groups): void {
  const told = new Set<string>();
  const all = new Set([...Object.keys(before.items), ...Object.keys(after.items)]);
  for (const id of [...all].sort(compareText)) {
    const [old, now] = [before.items[id], after.items[id]];
    if (old === undefined || now === undefined) continue;
    const lost = old.uses.filter((pin) => !now.uses.includes(pin));
    const won = now.uses.filter((pin) => !old.uses.includes(pin));
    if (lost.length === 0 && won.length === 0) continue;
    groups.add(itemSubject(after, id), { what: "uses", values: { from: lost, to: won } });
    for (const pin of [...lost, ...won]) told.add(pin);
  }
  const [old, now] = [before.rows.ends ?? {}, after.rows.ends ?? {}];
  const byPoint = new Map<string, { readonly from: FactRow[]; readonly to: FactRow[] }>();
  for (const key of new Set([...Object.keys(old), ...Object.keys(now)])) {
    const [from, to] = [old[key], now[key]];
    if (from?.net === to?.net && from?.options === to?.options) continue;
    const point = (to ?? from)?.point ?? "";
    const both = byPoint.get(point) ?? { from: [], to: [] };
    byPoint.set(point, both);
    if (from !== undefined) both.from.push(from);
    if (to !== undefined) both.to.push(to);
  }
  for (const [point, { from, to }] of byPoint) {
    const id = point.split(":")[0] ?? "";
    const subject = itemSubject(after.items[id] === undefined ? before : after, id);
    if (told.has(point) || groups.isWhole(subject)) continue;
    const pin = point.slice(id.length + 1);
    const differ = (column: string): boolean => !isSame(valuesOf(from, column), valuesOf(to, column));
    const what = differ("net") ? "joined" : differ("harness") ? "pin-harness" : "pin-options";
    const column = what === "joined" ? "net" : what === "pin-harness" ? "harness" : "options";
    groups.add(subject, {
      what,
      values: { pin, from: valuesOf(from, column), to: valuesOf(to, column) },
    });
  }
}

/** What the ends of a point have in a column; each once, in code-point order. */
const valuesOf = (ends: readonly FactRow[], column: string): readonly string[] =>
  [...new Set(ends.flatMap((end) => end[column] ?? []))].sort(compareText);

const isSame = (p: readonly string[], q: readonly string[]): boolean => p.join("|") === q.join("|");
