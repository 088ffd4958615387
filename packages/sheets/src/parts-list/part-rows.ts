import {
  type BillLine,
  type BillNode,
  coloursOf,
  type LineResult,
  MACHINE_NODE,
  unnamedOf,
} from "@pinwright/engine";
import { type Decimal, decimal, textOfDecimal, timesDecimal } from "@pinwright/kernel";
import type { SheetLanguage } from "@pinwright/words";
import { label, say } from "../compose/say.ts";
import { badgeOf } from "../identity.ts";

/** Something in a machine, and how much of it. */
export interface PartRow {
  readonly node: BillNode;
  /** Colour of a wire; blank for anything else. */
  readonly colour: string;
  readonly quantity: Decimal;
}

/** Kinds of things, in the order of the list. */
export const LISTED_KINDS = ["mechanism", "board", "harness", "panel", "part", "unnamed"] as const;
export type ListedKind = (typeof LISTED_KINDS)[number];

/** What of a kind is in one machine, by id; of a wire each colour by itself. */
export function rowsOfKind({ parts: { bill } }: LineResult, kind: ListedKind): readonly PartRow[] {
  const colours = coloursOf(bill);
  return [...bill.totals].flatMap(([id, quantity]): readonly PartRow[] => {
    const node = bill.nodes.get(id);
    if (node === undefined || node.kind !== kind) return [];
    const own = [...(colours.get(id) ?? [])].sort(([a], [b]) => (a < b ? -1 : 1));
    const coloured = own.reduce((sum, [, metres]) => sum + metres, 0n);
    return [
      ...own.map(([colour, metres]) => ({ node, colour, quantity: metres })),
      ...(quantity > coloured ? [{ node, colour: "", quantity: quantity - coloured }] : []),
    ];
  });
}

/** Assemblies with what is directly in one of each: the machine first, then kind by kind. */
export function assemblies({ parts: { bill } }: LineResult): readonly {
  readonly node: BillNode;
  readonly lines: readonly BillLine[];
}[] {
  const byParent = new Map<string, BillLine[]>();
  for (const line of bill.lines) {
    const own = byParent.get(line.parentId);
    if (own === undefined) byParent.set(line.parentId, [line]);
    else own.push(line);
  }
  const all = [...byParent].flatMap(([id, lines]) => {
    const node = bill.nodes.get(id);
    return node === undefined ? [] : [{ node, lines }];
  });
  const kinds = ["machine", ...LISTED_KINDS];
  return all.sort((a, b) => kinds.indexOf(a.node.kind) - kinds.indexOf(b.node.kind));
}

/** Name by which the shop knows it: a part number, or what the book calls it. */
export function nodeName({ id, partId }: BillNode): string {
  if (partId !== null) return partId;
  return unnamedOf(id)?.ref ?? id.slice(id.indexOf(":") + 1);
}

/** Name in words, with a harness's number and a wire's colour. */
export function nodeLabel(line: LineResult, node: BillNode, colour: string, language: SheetLanguage): string {
  const harness = node.kind === "harness" ? line.harnesses.get(nodeName(node)) : undefined;
  const named = label(language, node.labels, node.id, " · ");
  const numbered = harness === undefined ? named : `${badgeOf(harness)} ${named}`;
  return colour === "" ? numbered : `${numbered}, ${colour}`;
}

/** A quantity as printed: metres to the millimetre. */
export const quantityText = (quantity: Decimal): string => textOfDecimal(quantity, 3).replace(/\.?0+$/u, "");

/** The same with its unit; pieces have none. */
export const amountText = (quantity: Decimal, node: BillNode, language: SheetLanguage): string =>
  `${quantityText(quantity)} ${unitText(node, language)}`.trim();

export const timesMachines = (quantity: Decimal, machines: number): Decimal =>
  timesDecimal(quantity, decimal(machines));

export const unitText = ({ unit }: BillNode, language: SheetLanguage): string =>
  say(language, (w) => w.parts.units[unit], " · ");

/** How the book says that a part comes; nothing for an assembly without a part number. */
export function sourceText(line: LineResult, { partId }: BillNode, language: SheetLanguage): string {
  const part = line.machine.book.tables.parts.find(({ id }) => id === partId);
  return part === undefined ? "" : say(language, (w) => w.parts.sources[part.source], " · ");
}

/** Revision, material, thickness and finish of a part, as a shop is told. */
export function madeText(line: LineResult, { partId }: BillNode): string {
  const part = line.machine.book.tables.parts.find(({ id }) => id === partId);
  if (part === undefined) return "";
  const thickness = part.thickness_mm === null ? "" : `${part.thickness_mm} mm`;
  return [part.revision, part.material, thickness, part.finish].filter((text) => text !== "").join(", ");
}

/** Reasons whose places are worth a column: names printed on boards, fuses, devices within a mechanism. */
const PLACED: ReadonlySet<BillLine["why"]> = new Set(["placement", "fuse", "device", "board", "mechanism"]);

/** Where a line's things are, where names tell more than a count. */
export const placesText = ({ why, at, parentId }: BillLine): string =>
  PLACED.has(why) && (parentId !== MACHINE_NODE || why === "fuse") ? at.join(" ") : "";
