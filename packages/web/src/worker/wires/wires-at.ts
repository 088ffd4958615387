import type { HarnessResult, LineResult, SizedWire } from "@pinwright/engine";

type WiresAt = ReadonlyMap<string, readonly SizedWire[]>;

const known = new WeakMap<readonly SizedWire[], WiresAt>();

function indexed(wires: readonly SizedWire[]): WiresAt {
  const before = known.get(wires);
  if (before !== undefined) return before;
  const map = new Map<string, SizedWire[]>();
  for (const wire of [...wires].sort((a, b) => a.number - b.number)) {
    for (const end of [wire.a, wire.b]) {
      const list = map.get(end);
      if (list === undefined) map.set(end, [wire]);
      else list.push(wire);
    }
  }
  known.set(wires, map);
  return map;
}

/** A wire with the harness that it is in. */
export interface WireIn {
  readonly wire: SizedWire;
  readonly harness: HarnessResult;
}

/** All wires that end on a point or splice, harness by harness, in the order of their numbers. */
export function wiresAt(line: LineResult, end: string): readonly WireIn[] {
  return [...line.harnesses.values()].flatMap((harness) =>
    (indexed(harness.wires).get(end) ?? []).map((wire) => ({ wire, harness })),
  );
}

/** `4-6`: harness and number, as on its label. */
export const printedNo = ({ harness }: HarnessResult, wire: SizedWire): string =>
  `${harness.number}-${wire.number}`;

/** A wire by its id, or by the number on its label. */
export function findWire(line: LineResult, id: string): WireIn | null {
  const printed = /^H?(\d+)-(\d+)$/i.exec(id);
  const harnessId = id.split("|")[1];
  for (const harness of line.harnesses.values()) {
    if (printed === null && harness.harness.id !== harnessId) continue;
    if (printed !== null && harness.harness.number !== Number(printed[1])) continue;
    const wire = harness.wires.find((w) =>
      printed === null ? w.id === id : w.number === Number(printed[2]),
    );
    if (wire !== undefined) return { wire, harness };
  }
  return null;
}

/** A text in both languages; structured clone wants plain data. */
export interface Both {
  readonly en: string;
  readonly zh: string;
}

/** Names of a row of the book; blank where it has none. */
export const bothOf = (row: { readonly label: string; readonly label_zh: string } | undefined): Both => ({
  en: row?.label ?? "",
  zh: row?.label_zh ?? "",
});

/** `AWG 22`, or `0.75 mm²` for a wire that is not sold by gauge. */
export const gaugeOf = (type: SizedWire["wireType"]): string =>
  type.awg === null ? `${type.area_mm2} mm²` : `AWG ${type.awg}`;

/** Where an end of a wire is. */
export interface EndPlace {
  /** Point or splice id. */
  readonly id: string;
  /** Landing of the point; null for a splice. */
  readonly landingId: string | null;
  readonly itemId: string | null;
  /** Cavity number, name of a terminal, or number of a splice. */
  readonly cavity: string;
  readonly isSplice: boolean;
  /** Name of the item. */
  readonly label: Both;
  /** What the contact carries, as its type says. */
  readonly use: string;
}

export function endPlace({ machine }: LineResult, id: string): EndPlace {
  const point = machine.points.get(id);
  if (point === undefined)
    return {
      id,
      landingId: null,
      itemId: null,
      cavity: id.slice(id.lastIndexOf(":") + 1),
      isSplice: id.startsWith("splice:"),
      label: { en: "", zh: "" },
      use: "",
    };
  const item = machine.items.get(point.itemId);
  return {
    id,
    landingId: point.landingId,
    itemId: point.itemId,
    cavity: point.pin === null ? point.localId : String(point.pin),
    isSplice: false,
    label: item === undefined ? { en: "", zh: "" } : item.labels,
    use: point.label,
  };
}
