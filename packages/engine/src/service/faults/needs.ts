import type { ServiceNetwork } from "./network.ts";

/** What an item needs to do its work. */
export interface Needs {
  readonly itemId: string;
  /** Joints of loads that have to be fed. */
  readonly loads: readonly number[];
  /** Message inputs, each with the drivers of other boards that it can hear. */
  readonly hears: readonly (readonly [input: number, drivers: readonly number[]])[];
}

/**
 * What items need in a sound machine: loads that another item's source feeds, messages that another board sends. Whatever
 * makes a supply, and every board, is among them, since it can be dead.
 * @param sets number of the set of joined nodes that each node is in
 */
export function needsInSound(
  { joints, sources, messages }: ServiceNetwork,
  sets: Int32Array,
): readonly Needs[] {
  const needs = new Map<string, { loads: number[]; hears: [number, number[]][] }>();
  const of = (itemId: string): { loads: number[]; hears: [number, number[]][] } => {
    const made = needs.get(itemId) ?? { loads: [], hears: [] };
    needs.set(itemId, made);
    return made;
  };
  const isFed = (itemId: string, a: number, b: number): boolean =>
    sources.some((source) => {
      const [plus, minus] = [sets[source.plus], sets[source.minus]];
      const [p, q] = [sets[a], sets[b]];
      return source.itemId !== itemId && ((p === plus && q === minus) || (p === minus && q === plus));
    });
  for (const { itemId } of sources) of(itemId);
  joints.forEach(({ element, a, b }, n) => {
    if (element === null) return;
    if (element.row.board_type !== null) of(element.itemId);
    if (element.row.kind === "load" && isFed(element.itemId, a, b)) of(element.itemId).loads.push(n);
  });
  for (const input of messages) {
    const own = joints[input];
    if (own?.element === undefined || own.element === null) continue;
    const { itemId } = own.element;
    const drivers = joints.flatMap(({ element, a, b }, n) =>
      element?.row.kind === "driver" &&
      element.itemId !== itemId &&
      sets[a] === sets[own.a] &&
      sets[b] === sets[own.b]
        ? [n]
        : [],
    );
    if (drivers.length > 0) of(itemId).hears.push([input, drivers]);
  }
  return [...needs].map(([itemId, { loads, hears }]) => ({ itemId, loads, hears }));
}
