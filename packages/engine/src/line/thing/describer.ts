import { textOfDecimal } from "@pinwright/kernel";
import { type Item, type Languages, type LineResult, labelsOf } from "../../model/index.ts";
import { aboutId, type PointAbout, type WireAbout } from "../about.ts";
import type { NamedThing, ThingPart, ThingPin, ThingScrews, ThingWire } from "./thing.ts";

/** Tables whose rows are types of items. */
const TYPE_TABLES = ["device_types", "board_types", "mechanism_types", "fastener_types"] as const;

/** Printed number of a wire: number of its harness, a dash, its own. */
export const numberOf = ({ wire, harness }: WireAbout): string => `${harness.harness.number}-${wire.number}`;

/** Tells what ids of a line are called, and what hangs on them. */
export class Describer {
  readonly #line: LineResult;

  constructor(line: LineResult) {
    this.#line = line;
  }

  /** The name of an id: of an item, net, harness, supply, fuse, step, test, part or type, else the id itself. */
  named(id: string): NamedThing {
    const { machine, harnesses, parts, steps } = this.#line;
    const { tables } = machine.book;
    const item = machine.items.get(id);
    if (item !== undefined) return { id, labels: item.labels };
    const element = machine.elements.find((one) => one.id === id);
    if (element !== undefined) return { id, labels: this.named(element.itemId).labels };
    const landing = machine.landings.get(id);
    if (landing !== undefined) {
      const name = landing.half ?? landing.connector?.name ?? "";
      const { en, zh } = this.named(landing.itemId).labels;
      return { id, labels: { en: `${en} ${name}`.trim(), zh: `${zh} ${name}`.trim() } };
    }
    const row =
      machine.nets.get(id) ??
      tables.supplies.find((one) => one.id === id) ??
      tables.fuses.find((one) => one.id === id) ??
      tables.tests.find((one) => one.id === id) ??
      machine.panels.get(id);
    if (row !== undefined) return { id, labels: labelsOf(row, id) };
    const made: Languages | undefined =
      harnesses.get(id)?.labels ??
      steps.steps.find((step) => step.id === id)?.labels ??
      parts.bill.nodes.get(id)?.labels ??
      this.type(id)?.labels;
    return { id, labels: made ?? { en: id, zh: id } };
  }

  /** The name of an id, if there is one. */
  some(id: string | null): NamedThing | null {
    return id === null || id === "" ? null : this.named(id);
  }

  /** A type of items by its id; null: there is none. */
  type(id: string): NamedThing | null {
    const { tables } = this.#line.machine.book;
    for (const table of TYPE_TABLES) {
      const row = tables[table].find((one) => one.id === id);
      if (row !== undefined) return { id, labels: labelsOf(row, id) };
    }
    return null;
  }

  /** The type of an item. */
  typeOf(item: Item): NamedThing {
    return item.kind === "inline"
      ? { id: item.type.id, labels: { en: item.type.id, zh: item.type.id } }
      : { id: item.type.id, labels: labelsOf(item.type, item.type.id) };
  }

  /** Points by their ids, with what lands on them. */
  pinsOf(ids: readonly (string | null)[]): readonly ThingPin[] {
    return ids.flatMap((id) =>
      id === null ? [] : (aboutId(this.#line, id)?.points ?? []).map((point) => this.pin(point)),
    );
  }

  /** A point with its net and its wires. */
  pin({ point, netId, wires }: PointAbout): ThingPin {
    return {
      ...{ id: point.id, label: point.label, use: point.use, net: this.some(netId) },
      wires: wires.map((wire) => this.wire(wire, point.id)),
    };
  }

  /** A wire, seen from one of its ends or from neither. */
  wire(about: WireAbout, from: string | null): ThingWire {
    const { wire, harness } = about;
    const end = (id: string) => ({ id, item: this.some(this.#line.machine.points.get(id)?.itemId ?? null) });
    const [a, b] = from === wire.b ? [wire.b, wire.a] : [wire.a, wire.b];
    return {
      ...{
        id: wire.id,
        number: numberOf(about),
        harness: { id: harness.harness.id, labels: harness.labels },
      },
      ...{ netId: wire.netId, colour: wire.colour, areaMm2: wire.wireType.area_mm2 },
      ...{ lengthMm: wire.finishedMm, cutMm: wire.cutMm, a: end(a), b: end(b) },
    };
  }

  /** Parts that the bill has at some places, or in some assemblies. */
  partsAt(ids: readonly string[], parents: readonly string[]): readonly ThingPart[] {
    const found = this.#line.parts.bill.lines.filter(
      ({ at, parentId }) => parents.includes(parentId) || at.some((one) => ids.includes(one)),
    );
    return found.flatMap(({ childId, why, quantity, parentId, at }) =>
      this.part(childId, why, parents.includes(parentId) || at.length === 1 ? textOfDecimal(quantity) : ""),
    );
  }

  /** A part of the bill with its ordering number. */
  part(id: string, why: ThingPart["why"], quantity: string): readonly ThingPart[] {
    const node = this.#line.parts.bill.nodes.get(id);
    const partId = node?.partId ?? id;
    const row = this.#line.machine.book.tables.parts.find((one) => one.id === partId);
    if (row === undefined && node === undefined) return [];
    return [
      {
        ...{ id: row?.id ?? id, labels: node?.labels ?? this.named(partId).labels, why, quantity },
        ...{ unit: node?.unit ?? "each", orderNumber: row?.order_number ?? "" },
      },
    ];
  }

  /** Screws by their type. */
  grouped(fastenerIds: readonly string[]): readonly ThingScrews[] {
    const groups = new Map<string, string[]>();
    for (const id of fastenerIds) {
      const type = this.#line.machine.items.get(id)?.type.id;
      if (type !== undefined) groups.set(type, [...(groups.get(type) ?? []), id]);
    }
    return [...groups].map(([type, ids]) => ({ ...this.named(type), ids }));
  }
}
