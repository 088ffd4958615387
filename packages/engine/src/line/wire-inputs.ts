import type { BookRow } from "@pinwright/book";
import { Query } from "@pinwright/kernel";
import type { Machine } from "../model/index.ts";

/** Which nets and harnesses meet, and which points stand for the items that a net touches. */
interface Structure {
  readonly netsByHarness: ReadonlyMap<string, ReadonlySet<string>>;
  readonly endsByNet: ReadonlyMap<string, readonly BookRow<"ends">[]>;
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
  readonly #nets = new Query<Token>(Object.is);
  readonly #tables = new Query<Token>(Object.is);
  #structure: Structure = { netsByHarness: new Map(), endsByNet: new Map(), pointsByNet: new Map() };
  #common: Token = {};
  #machine: Machine | null = null;
  #tokens = new Map<string, Token>();

  /** Turns to another machine. */
  use(machine: Machine): void {
    const t = machine.book.tables;
    this.#machine = machine;
    this.#structure = this.#structures.ask("all", [machine.ends, machine.elements], () => structure(machine));
    this.#common = this.#tables.ask(
      "all",
      [
        machine.shop,
        t.elements,
        t.supplies,
        t.cables,
        t.cable_cores,
        t.choices,
        t.wire_types,
        t.connector_families,
        machine.panels,
        t.poses,
        t.pose_places,
      ],
      () => ({}),
    );
    this.#tokens = new Map();
  }

  /** What the wires of a net within any harness depend on. */
  ofNet(netId: string): readonly unknown[] {
    const known = this.#tokens.get(netId);
    if (known !== undefined) return [this.#common, known];
    const inputs: unknown[] = [
      this.#machine?.nets.get(netId),
      ...(this.#structure.endsByNet.get(netId) ?? []),
      ...(this.#structure.pointsByNet.get(netId) ?? []).map((id) => this.#machine?.points.get(id)),
    ];
    const token = this.#nets.ask(netId, inputs, () => ({}));
    this.#tokens.set(netId, token);
    return [this.#common, token];
  }

  /** What the wires of a harness depend on. */
  of(harnessId: string): readonly unknown[] {
    const inputs: unknown[] = [this.#machine?.harnesses.get(harnessId), this.#common];
    for (const netId of this.nets(harnessId)) inputs.push(netId, this.ofNet(netId)[1]);
    return inputs;
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

function structure(machine: Machine): Structure {
  const netsByHarness = new Map<string, Set<string>>();
  const endsByNet = new Map<string, BookRow<"ends">[]>();
  const pointsByNet = new Map<string, string[]>();
  const itemsByNet = new Map<string, Set<string>>();
  for (const end of machine.ends) {
    const nets = netsByHarness.get(end.harness);
    if (nets === undefined) netsByHarness.set(end.harness, new Set([end.net]));
    else nets.add(end.net);
    const ends = endsByNet.get(end.net);
    if (ends === undefined) endsByNet.set(end.net, [end]);
    else ends.push(end);
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
  return { netsByHarness, endsByNet, pointsByNet };
}
