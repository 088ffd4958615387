import type { BookRow } from "@pinwright/book";
import type { Machine } from "../model/index.ts";

type End = BookRow<"ends">;

/**
 * What the wires of one harness are computed from, as a list of objects to be compared by identity: its ends and
 * all other ends of their nets, the nets, the points with their items and places; and, in whole, the tables that
 * are small or seldom edited.
 */
export class WireInputs {
  readonly #machine: Machine;
  readonly #netsByHarness = new Map<string, Set<string>>();
  readonly #endsByNet = new Map<string, End[]>();

  constructor(machine: Machine) {
    this.#machine = machine;
    for (const end of machine.ends) {
      const nets = this.#netsByHarness.get(end.harness);
      if (nets === undefined) this.#netsByHarness.set(end.harness, new Set([end.net]));
      else nets.add(end.net);
      const ends = this.#endsByNet.get(end.net);
      if (ends === undefined) this.#endsByNet.set(end.net, [end]);
      else ends.push(end);
    }
  }

  of(harnessId: string): readonly unknown[] {
    const { points, items, nets, book, shop, harnesses } = this.#machine;
    const t = book.tables;
    const inputs: unknown[] = [
      harnesses.get(harnessId),
      shop,
      t.elements,
      t.supplies,
      t.cables,
      t.cable_cores,
      t.choices,
      t.wire_types,
      t.connector_families,
      t.panels,
      t.poses,
      t.pose_places,
    ];
    for (const netId of this.#netsByHarness.get(harnessId) ?? []) {
      inputs.push(nets.get(netId));
      for (const end of this.#endsByNet.get(netId) ?? []) {
        const point = points.get(end.point);
        inputs.push(end, point, point === undefined ? undefined : items.get(point.itemId));
      }
    }
    return inputs;
  }

  /** Nets that have an end in a harness. */
  nets(harnessId: string): ReadonlySet<string> {
    return this.#netsByHarness.get(harnessId) ?? new Set();
  }
}
