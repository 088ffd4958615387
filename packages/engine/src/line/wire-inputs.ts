import type { BookRow } from "@pinwright/book";
import { NestedQuery, Query } from "@pinwright/kernel";
import { choicesOfKinds, groupRows, type Machine } from "../model/index.ts";

type End = BookRow<"ends">;

/** Which nets and harnesses meet, and which points stand for the items that a net touches. */
interface Structure {
  readonly netsByHarness: ReadonlyMap<string, ReadonlySet<string>>;
  /** The same list for as long as the net has the same ends. */
  readonly endsByNet: ReadonlyMap<string, readonly End[]>;
  /** One point of each item that has an end of the net: all points of an item are made anew together. */
  readonly pointsByNet: ReadonlyMap<string, readonly string[]>;
}

/** An object that is another one whenever something that it stands for is. */
type Token = Readonly<Record<never, never>>;

/**
 * What the wires of one net or one harness are computed from, as a list of objects to be compared by identity: the
 * ends of a net, the net, the items with their points; and, in whole, the tables that are small or seldom edited.
 */
export class WireInputs {
  readonly #structures = new Query<Structure>(Object.is);
  readonly #ends = new NestedQuery<Structure["endsByNet"], readonly End[]>(Object.is, Object.is);
  readonly #nets = new Query<Token>(Object.is);
  readonly #tables = new Query<Token>(Object.is);
  #structure: Structure = { netsByHarness: new Map(), endsByNet: new Map(), pointsByNet: new Map() };
  #common: Token = {};
  #machine: Machine | null = null;
  #tokens = new Map<string, readonly unknown[]>();
  #ofHarness = new Map<string, readonly unknown[]>();

  /** Turns to another machine. */
  use(machine: Machine): void {
    const t = machine.book.tables;
    this.#machine = machine;
    const { ends, elements } = machine;
    this.#structure = this.#structures.ask("all", [ends, elements], () => ({
      ...structure(machine),
      endsByNet: this.#ends.ask("all", [ends], (parts) => {
        const lists = groupRows(ends, (end) => end.net);
        return new Map([...lists].map(([netId, list]) => [netId, parts.ask(netId, list, () => list)]));
      }),
    }));
    this.#common = this.#tables.ask(
      "all",
      [
        machine.shop,
        t.elements,
        t.supplies,
        t.cables,
        t.cable_cores,
        ...choicesOfKinds(machine, ["chain", "wire-number", "wire-type"]),
        t.wire_types,
        t.connector_families,
        machine.panels,
        t.poses,
        t.pose_places,
      ],
      () => ({}),
    );
    this.#tokens = new Map();
    this.#ofHarness = new Map();
  }

  /** What the wires of a net within any harness depend on. */
  ofNet(netId: string): readonly unknown[] {
    const known = this.#tokens.get(netId);
    if (known !== undefined) return known;
    const inputs: unknown[] = [this.#machine?.nets.get(netId), this.#structure.endsByNet.get(netId)];
    for (const id of this.#structure.pointsByNet.get(netId) ?? []) inputs.push(this.#machine?.points.get(id));
    const made = [this.#common, this.#nets.ask(netId, inputs, () => ({}))];
    this.#tokens.set(netId, made);
    return made;
  }

  /** What the wires of a harness depend on. */
  of(harnessId: string): readonly unknown[] {
    const known = this.#ofHarness.get(harnessId);
    if (known !== undefined) return known;
    const made: unknown[] = [this.#machine?.harnesses.get(harnessId), this.#common];
    for (const netId of this.nets(harnessId)) made.push(this.ofNet(netId)[1]);
    this.#ofHarness.set(harnessId, made);
    return made;
  }

  /** Nets that have an end in a harness. */
  nets(harnessId: string): ReadonlySet<string> {
    return this.#structure.netsByHarness.get(harnessId) ?? new Set();
  }

  /** Forgets what the last run did not ask for. */
  sweep(): void {
    this.#nets.sweep();
  }
}

function structure(machine: Machine): Omit<Structure, "endsByNet"> {
  const netsByHarness = new Map<string, Set<string>>();
  const pointsByNet = new Map<string, string[]>();
  const itemsByNet = new Map<string, Set<string>>();
  for (const end of machine.ends) {
    const nets = netsByHarness.get(end.harness);
    if (nets === undefined) netsByHarness.set(end.harness, new Set([end.net]));
    else nets.add(end.net);
    const itemId = machine.points.get(end.point)?.itemId;
    if (itemId === undefined) continue;
    const items = itemsByNet.get(end.net) ?? new Set();
    itemsByNet.set(end.net, items);
    if (items.has(itemId)) continue;
    items.add(itemId);
    const points = pointsByNet.get(end.net);
    if (points === undefined) pointsByNet.set(end.net, [end.point]);
    else points.push(end.point);
  }
  return { netsByHarness, pointsByNet };
}
