import type { Languages } from "../model/index.ts";
import type { MachineFacts } from "./facts.ts";

/** What ids of two revisions are called. */
export type FactNames = (id: string) => Languages;

/** Names of things by their ids, as they are after, else as they were; an id that has no name stands for itself. */
export function factNames(before: MachineFacts, after: MachineFacts): FactNames {
  const labels = new Map<string, Languages>();
  for (const { rows, items, steps } of [before, after]) {
    for (const table of Object.values(rows))
      for (const { id, label, label_zh } of Object.values(table)) {
        const en = label ?? label_zh;
        if (id !== undefined && en !== undefined) labels.set(id, { en, zh: label_zh ?? en });
      }
    for (const [id, { labels: own, parent }] of Object.entries(items)) {
      if (parent === "") continue;
      const of = items[parent]?.labels ?? { en: parent, zh: parent };
      labels.set(id, { en: `${of.en}, ${own.en}`, zh: `${of.zh}，${own.zh}` });
    }
    for (const [id, { labels: own }] of Object.entries(steps)) labels.set(id, own);
  }
  const pinName = (id: string): Languages | null => {
    const at = id.indexOf(":");
    const item = labels.get(id.slice(0, at));
    if (at < 0 || item === undefined) return null;
    const pin = id
      .slice(at + 1)
      .replace(".", "-")
      .toUpperCase();
    return { en: `${pin} of ${item.en}`, zh: `${item.zh}的 ${pin}` };
  };
  const named = (id: string): Languages | null => labels.get(id) ?? pinName(id);
  // A landing is told as what it is at.
  return (id) => named(id) ?? named(id.replace(/^(?:landing|tail):/u, "")) ?? { en: id, zh: id };
}
