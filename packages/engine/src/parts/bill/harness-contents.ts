import { decimal } from "@pinwright/kernel";
import { type HarnessPart, partsOfHarness } from "../../lists/index.ts";
import {
  type BillNode,
  type HarnessResult,
  type Languages,
  labelsOf,
  type Machine,
} from "../../model/index.ts";
import { type Contents, ContentsBuilder } from "./contents.ts";
import { derivedId, nodeOf, unnamedNode } from "./nodes.ts";
import type { PartIndex } from "./part-index.ts";

export const harnessNode = ({ harness, labels }: HarnessResult): BillNode => ({
  id: derivedId("harness", harness.id),
  kind: "harness",
  partId: null,
  labels,
  unit: "each",
});

/**
 * What one harness takes, from the list that its sheets are made of. Metres are exact to the millimetre. A soldered
 * end, a bare end under a screw and a socket that is pressed on need no contact.
 */
export function harnessContents(
  machine: Machine,
  index: PartIndex,
  harness: HarnessResult,
  keys: ReadonlyMap<string, readonly number[]>,
): Contents {
  const contents = new ContentsBuilder(harnessNode(harness));
  const bare = bareFamilies(machine);
  for (const part of partsOfHarness(machine, harness, keys)) {
    if (part.kind === "contact" && part.partId === null && bare.has(part.refId)) continue;
    contents.add({
      child: nodeOf(index, part.partId, () => unnamedPart(machine, part)),
      why: part.kind,
      colour: part.colour,
      quantity: decimal(part.quantity),
      at: harness.harness.id,
    });
  }
  return contents.build();
}

/** Families whose ends need nothing that is bought. */
const bareFamilies = (machine: Machine): ReadonlySet<string> =>
  new Set(
    machine.book.tables.connector_families
      .filter(({ kind }) => kind === "lug" || kind === "idc" || kind === "screw")
      .map(({ id }) => id),
  );

const unnamedPart = (machine: Machine, part: HarnessPart): BillNode =>
  unnamedNode(part.kind, part.refId, labelsOfPart(machine, part), part.unit);

function labelsOfPart({ book, shop }: Machine, { kind, refId }: HarnessPart): Languages {
  const t = book.tables;
  const rows: Readonly<Record<HarnessPart["kind"], readonly Named[]>> = {
    wire: t.wire_types,
    cable: t.cables,
    contact: t.connector_families,
    splice: t.connector_families,
    housing: t.connectors.map(({ id, label, name }) => ({ id, label: label || name, label_zh: "" })),
    key: t.connectors.map(({ id, label, name }) => ({ id, label: label || name, label_zh: "" })),
    tie: shop.tables.holders,
    sleeve: shop.tables.holders,
  };
  const row = rows[kind].find(({ id }) => id === refId);
  return row === undefined ? { en: refId, zh: refId } : labelsOf(row, refId);
}

interface Named {
  readonly id: string;
  readonly label: string;
  readonly label_zh: string;
}
