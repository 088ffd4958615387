import { compareText } from "@pinwright/kernel";
import type { MachineFacts } from "./facts.ts";
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
  const byPoint = new Map<string, { from: Set<string>; to: Set<string> }>();
  for (const key of new Set([...Object.keys(old), ...Object.keys(now)])) {
    const [from, to] = [old[key], now[key]];
    if (from?.net === to?.net && from?.options === to?.options) continue;
    const point = (to ?? from)?.point ?? "";
    const both = byPoint.get(point) ?? { from: new Set(), to: new Set() };
    byPoint.set(point, both);
    if (from !== undefined) both.from.add(endText(from));
    if (to !== undefined) both.to.add(endText(to));
  }
  for (const [point, { from, to }] of byPoint) {
    const id = point.split(":")[0] ?? "";
    const subject = itemSubject(after.items[id] === undefined ? before : after, id);
    if (told.has(point) || groups.isWhole(subject)) continue;
    groups.add(subject, {
      what: "joined",
      values: {
        pin: point.slice(id.length + 1),
        from: [...from].sort(compareText),
        to: [...to].sort(compareText),
      },
    });
  }
}

const endText = ({ net = "", harness = "", options = "" }: Readonly<Record<string, string>>): string =>
  [`${net} (${harness})`, options].filter((text) => text !== "").join(" ");
