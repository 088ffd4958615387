import { compareText } from "@pinwright/kernel";
import type { MachineChange } from "./change.ts";
import type { MachineFacts, WireFact } from "./facts.ts";
import type { Groups } from "./groups.ts";
import { itemSubject, type SubjectId } from "./subjects.ts";

/** A wire before and after. */
export interface WirePair {
  readonly id: string;
  readonly from: WireFact | null;
  readonly to: WireFact | null;
}

/** Wires that differ. One that was moved to another point is the same wire of its net, with another end. */
export function changedWires(before: MachineFacts, after: MachineFacts): readonly WirePair[] {
  const pairs: WirePair[] = [];
  const gone: [string, WireFact][] = [];
  for (const [id, from] of Object.entries(before.wires)) {
    const to = after.wires[id];
    if (to === undefined) gone.push([id, from]);
    else if (differs(from, to)) pairs.push({ id, from, to });
  }
  const added = Object.entries(after.wires).filter(([id]) => before.wires[id] === undefined);
  for (const [id, to] of added) {
    const at = gone.findIndex(([, from]) => sharesEnd(from, to));
    const [, from = null] = at < 0 ? [] : (gone.splice(at, 1)[0] ?? []);
    pairs.push({ id, from, to });
  }
  for (const [id, from] of gone) pairs.push({ id, from, to: null });
  return pairs.sort((p, q) => compareText(p.id, q.id));
}

const differs = (p: WireFact, q: WireFact): boolean =>
  p.number !== q.number ||
  p.colour !== q.colour ||
  p.type !== q.type ||
  p.finishedMm !== q.finishedMm ||
  p.cutMm !== q.cutMm ||
  p.a.part !== q.a.part ||
  p.b.part !== q.b.part ||
  p.netClass !== q.netClass ||
  p.supply !== q.supply;

const sharesEnd = (p: WireFact, q: WireFact): boolean =>
  p.harness === q.harness &&
  (p.net === q.net || p.number === q.number) &&
  [p.a.point, p.b.point].some((point) => point === q.a.point || point === q.b.point);

/** Tells what became of wires: at the item that it comes from, else at the harness, these together. */
export function compareWires(before: MachineFacts, after: MachineFacts, groups: Groups): void {
  const rest = new Map<string, WirePair[]>();
  for (const pair of changedWires(before, after)) {
    const cause = causeOf(before, after, pair, groups);
    const harness = (pair.to ?? pair.from)?.harness ?? "";
    if (cause !== null) for (const change of changesOf(pair)) groups.add(cause, change);
    else rest.set(harness, [...(rest.get(harness) ?? []), pair]);
  }
  for (const [harness, pairs] of rest) {
    const subject = { table: "harnesses", id: harness };
    const lengths = pairs.filter(isLengthOnly);
    if (lengths.length === 1) for (const change of changesOf(lengths[0])) groups.add(subject, change);
    else if (lengths.length > 1) groups.add(subject, togetherOf(lengths));
    for (const pair of pairs)
      if (!lengths.includes(pair)) for (const change of changesOf(pair)) groups.add(subject, change);
  }
}

/** The item that was changed and has the wire; null: none, or it is not clear which. */
function causeOf(
  before: MachineFacts,
  after: MachineFacts,
  { from, to }: WirePair,
  groups: Groups,
): SubjectId | null {
  const ids = [to?.a.item, to?.b.item, from?.a.item, from?.b.item].filter(
    (id): id is string => id !== undefined && id !== "",
  );
  for (const id of ids) {
    const subject = itemSubject(after.items[id] === undefined ? before : after, id);
    if (groups.has(subject)) return subject;
    const parent = (after.items[id] ?? before.items[id])?.parent ?? "";
    if (parent !== "" && groups.has({ table: "mechanisms", id: parent }))
      return { table: "mechanisms", id: parent };
  }
  return null;
}

const isLengthOnly = (pair: WirePair): boolean => {
  const changes = changesOf(pair);
  return changes.length > 0 && changes.every(({ what }) => what === "wire-length");
};

function changesOf(pair: WirePair | undefined): readonly MachineChange[] {
  const { from = null, to = null } = pair ?? {};
  if (from === null && to === null) return [];
  if (to === null) return [{ what: "wire-gone", values: { wire: from?.number ?? "" } }];
  const wire = to.number;
  if (from === null)
    return [
      {
        what: "wire-new",
        values: {
          wire,
          colour: to.colour,
          type: to.type,
          mm: to.finishedMm,
          from: to.a.point,
          to: to.b.point,
        },
      },
    ];
  const changes: MachineChange[] = [];
  const was = new Set([from.a.point, from.b.point]);
  const is = new Set([to.a.point, to.b.point]);
  const lost = [...was].filter((point) => !is.has(point));
  const won = [...is].filter((point) => !was.has(point));
  if (from.number !== to.number)
    changes.push({ what: "wire-number", values: { from: from.number, to: to.number } });
  if (lost.length > 0 || won.length > 0)
    changes.push({ what: "wire-end", values: { wire, from: lost, to: won } });
  if (from.net !== to.net) changes.push({ what: "wire-net", values: { wire, from: from.net, to: to.net } });
  if (from.colour !== to.colour)
    changes.push({ what: "wire-colour", values: { wire, from: from.colour, to: to.colour } });
  if (from.type !== to.type)
    changes.push({ what: "wire-type", values: { wire, from: from.type, to: to.type } });
  const contacts = contactChange(from, to);
  if (lost.length === 0 && won.length === 0 && contacts !== null)
    changes.push({ what: "wire-contact", values: { wire, ...contacts } });
  // The net says its class and supply itself; the cut length follows the finished one but for trim and strip.
  const mm = to.finishedMm === from.finishedMm ? to.cutMm - from.cutMm : to.finishedMm - from.finishedMm;
  if (mm !== 0) changes.push({ what: "wire-length", values: { wire, mm, toMm: to.finishedMm } });
  return changes;
}

/** Wires of a harness of which only the lengths are others, in one sentence. */
function togetherOf(pairs: readonly WirePair[]): MachineChange {
  const changes = pairs.flatMap(changesOf).map(({ values }) => values);
  const by = changes.map(({ mm }) => Number(mm));
  return {
    what: "wires",
    values: {
      ...{ wires: changes.map(({ wire }) => String(wire)), mms: by.map(String) },
      ...{ leastMm: Math.min(...by), mostMm: Math.max(...by) },
    },
  };
}

/** Contacts that a wire no longer has at its ends, and those it has instead; null: the same. */
function contactChange(
  from: WireFact,
  to: WireFact,
): { readonly from: readonly string[]; readonly to: readonly string[] } | null {
  const [old, now] = [from, to].map(({ a, b }) => [a.part, b.part].sort(compareText));
  if (old === undefined || now === undefined || old.join(" ") === now.join(" ")) return null;
  const [at] = old.filter((part) => now.includes(part));
  const others = (parts: readonly string[]): readonly string[] =>
    (at === undefined ? parts : parts.toSpliced(parts.indexOf(at), 1)).filter((part) => part !== "");
  return { from: others(old), to: others(now) };
}
