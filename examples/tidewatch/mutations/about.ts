import type { BookRow } from "@pinwright/book";
import type { Finding, LineResult, SizedWire } from "@pinwright/engine";
import type { Consequence } from "./mutation.ts";

/** A set of ids, told by a predicate. */
export type Ids = (id: string) => boolean;

/** These ids and no others. */
export const ids = (...list: readonly string[]): Ids => {
  const set = new Set(list);
  return (id) => set.has(id);
};

export const anyOf =
  (...sets: readonly Ids[]): Ids =>
  (id) =>
    sets.some((set) => set(id));

/** A net with its points and wires, also those that a mutation makes. */
export function ofNet({ machine }: LineResult, netId: string): Ids {
  const points = ids(...machine.ends.filter(({ net }) => net === netId).map(({ point }) => point));
  return (id) => id === netId || id.startsWith(`${netId}|`) || points(id);
}

/** A supply with the nets that it feeds, their points and wires. */
export function ofSupply(sound: LineResult, supplyId: string): Ids {
  const nets = [...sound.machine.nets.values()].filter(({ supply }) => supply === supplyId);
  return anyOf(ids(supplyId), ...nets.map(({ id }) => ofNet(sound, id)));
}

/** Wires that lie in a harness with wires of a supply: what those carry takes from what these may carry. */
export function besideSupply(sound: LineResult, supplyId: string): Ids {
  const own = ofSupply(sound, supplyId);
  const shared = [...sound.harnesses.values()].filter(({ wires }) => wires.some(({ netId }) => own(netId)));
  return ids(...shared.flatMap(({ wires }) => wires.map(({ id }) => id)));
}

/** Items, other than this, that some net of its points leads to. */
export function wiredTo(sound: LineResult, itemId: string): Ids {
  const { ends, points } = sound.machine;
  const nets = new Set(
    ends.filter(({ point }) => points.get(point)?.itemId === itemId).map(({ net }) => net),
  );
  const items = ends.filter(({ net }) => nets.has(net)).map(({ point }) => points.get(point)?.itemId ?? "");
  return ids(...items.filter((id) => id !== itemId));
}

/** Nets of the points of an item. */
export function netsAt({ machine }: LineResult, itemId: string): Ids {
  return ids(
    ...machine.ends.flatMap(({ point, net }) => (machine.points.get(point)?.itemId === itemId ? [net] : [])),
  );
}

/** Consequence: the rule tells of one of these first of all. */
export const first = (rule: string, of: Ids): Consequence => ({
  rule,
  where: ({ subjects: [id = ""] }) => of(id),
});

/** Consequence: the rule tells of these alone. */
export const only = (rule: string, of: Ids): Consequence => ({
  rule,
  where: ({ subjects }) => subjects.every(of),
});

/** Consequence: the rule tells of one of these among others. */
export const some = (rule: string, of: Ids): Consequence => ({
  rule,
  where: ({ subjects }) => subjects.some(of),
});

const PLACE_RULES = [
  "solids-clash",
  "board-over",
  "bundle-blocked",
  "pose-clash",
  "off-panel",
  "no-opening",
  "order-loop",
] as const;

/** Consequence: these stand where nobody made room or a hole for them. */
export const misplaced = (of: Ids): readonly Consequence[] => PLACE_RULES.map((rule) => some(rule, of));

/** The element with the largest value; the first of several. There has to be one. */
export function most<T>(list: Iterable<T>, value: (one: T) => number): T {
  let best: { readonly one: T; readonly value: number } | null = null;
  for (const one of list) {
    const now = value(one);
    if (best === null || now > best.value) best = { one, value: now };
  }
  if (best === null) throw new Error("The machine has no such thing to harm.");
  return best.one;
}

/** The element with the least value; the first of several. */
export const least = <T>(list: Iterable<T>, value: (one: T) => number): T => most(list, (one) => -value(one));

/** Whether no finding of a rule in the sound machine names an id. */
export const isFreeOf =
  ({ findings }: LineResult, rule: string): Ids =>
  (id) =>
    !findings.some((finding: Finding) => finding.rule === rule && finding.subjects.includes(id));

/** Every wire of the machine. */
export const wiresOf = ({ harnesses }: LineResult): readonly SizedWire[] =>
  [...harnesses.values()].flatMap(({ wires }) => wires);

/** Wires of the nets that have one wire in all. */
export function loneWires(sound: LineResult): readonly SizedWire[] {
  const all = wiresOf(sound);
  const counts = new Map<string, number>();
  for (const { netId } of all) counts.set(netId, (counts.get(netId) ?? 0) + 1);
  return all.filter(({ netId }) => counts.get(netId) === 1);
}

/** What is at a point: its item, landing and, of a housing, its connector. */
export function at({ machine }: LineResult, pointId: string) {
  const point = machine.points.get(pointId);
  const landing = machine.landings.get(point?.landingId ?? "");
  return {
    family: point?.family ?? null,
    pin: point?.pin ?? null,
    localId: point?.localId ?? "",
    item: machine.items.get(point?.itemId ?? "") ?? null,
    landing: landing ?? null,
    connector: landing?.connector ?? null,
  };
}

/** Board types of which the machine has one board, so that a change of the type harms nobody else. */
export function singleBoards({ machine }: LineResult): readonly BookRow<"boards">[] {
  const { boards } = machine.book.tables;
  return boards.filter(({ type }) => boards.filter((other) => other.type === type).length === 1);
}
