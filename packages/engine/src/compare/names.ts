import type { Languages } from "../model/index.ts";
import type { MachineFacts } from "./facts.ts";

/** What ids of two revisions are called. */
export type FactNames = (id: string) => Languages;

/** Names of things by their ids, as they are after, else as they were; an id that has no name stands for itself. */
export function factNames(before: MachineFacts, after: MachineFacts): FactNames {
  const labels = new Map<string, Languages>();
  for (const facts of [before, after]) for (const [id, name] of namesOf(facts)) labels.set(id, name);
  const elements = { ...before.rows.elements, ...after.rows.elements };
  const pinName = (id: string): Languages | null => {
    const at = id.indexOf(":");
    const item = labels.get(id.slice(0, at));
    if (at < 0 || item === undefined) return null;
    const own = id.slice(at + 1);
    // What is inside a device has no name of its own.
    if (elements[own] !== undefined) return item;
    const pin = own.replace(".", "-").toUpperCase();
    return { en: `${pin} of ${item.en}`, zh: `${item.zh}的 ${pin}` };
  };
  const spliceName = (id: string): Languages | null => {
    const [, net = "", count = ""] = /^splice:(.+):[^:]+:(\d+)$/u.exec(id) ?? [];
    const of = labels.get(net);
    return of === undefined ? null : { en: `splice ${count} of ${of.en}`, zh: `${of.zh}的接点 ${count}` };
  };
  const named = (id: string): Languages | null => labels.get(id) ?? pinName(id) ?? spliceName(id);
  // A landing is told as what it is at.
  const placed = (id: string): Languages | null => {
    const [, kind = "", at = ""] = /^(landing|tail):(.+)$/u.exec(id) ?? [];
    const of = kind === "" ? null : named(at);
    if (of === null || kind === "landing") return of;
    return { en: `tail to ${of.en}`, zh: `到${of.zh}的引出线` };
  };
  return (id) => named(id) ?? placed(id) ?? { en: id, zh: id };
}

/** Tables of what has no name, with what stands before the id. */
const UNNAMED: Readonly<Record<string, Languages>> = {
  waypoints: { en: "waypoint", zh: "路径点" },
  lanes: { en: "lane", zh: "线道" },
  crossings: { en: "crossing", zh: "跨越段" },
};

function namesOf({ rows, items, steps, wires }: MachineFacts): ReadonlyMap<string, Languages> {
  const labels = new Map<string, Languages>();
  for (const [table, own] of Object.entries(rows))
    for (const { id, label, label_zh } of Object.values(own)) {
      const en = label ?? label_zh;
      const what = UNNAMED[table];
      if (id !== undefined && en !== undefined) labels.set(id, { en, zh: label_zh ?? en });
      else if (id !== undefined && what !== undefined)
        labels.set(id, { en: `${what.en} ${id}`, zh: `${what.zh} ${id}` });
    }
  // There are many screws of one type.
  for (const [id, { kind, labels: own, parent }] of Object.entries(items))
    if (kind === "fastener") labels.set(id, { en: `${own.en} (${id})`, zh: `${own.zh}（${id}）` });
    else if (parent !== "") labels.set(id, own);
  for (const [id, { labels: own }] of Object.entries(steps)) labels.set(id, own);
  for (const [id, { number }] of Object.entries(wires))
    labels.set(id, { en: `wire ${number}`, zh: `导线 ${number}` });
  return labels;
}
