import { compareText } from "@pinwright/kernel";
import { type Bill, type BillNode, type Finding, type Machine, makeFinding } from "../../model/index.ts";
import { derivedOf, unnamedOf } from "../bill/nodes.ts";
import { priceBook } from "../prices/price-book.ts";
import { checkPrices } from "./check-prices.ts";
import { checkSources } from "./check-sources.ts";
import { needsParts } from "./needed.ts";

/**
 * Whether everything in a bill has a part, a source and a price, whether the prices can be used, and what depends on
 * one supplier or comes late. What comes within something that is only bought is not asked about. Quantities and places
 * have no say, so that nothing is looked at again because a wire has become longer.
 */
export function checkParts(machine: Machine, bill: Bill): readonly Finding[] {
  const prices = priceBook(machine);
  const needed = needsParts(bill, prices);
  const parts = [...needed].flatMap((id) => {
    const partId = bill.nodes.get(id)?.partId ?? null;
    return partId === null ? [] : [partId];
  });
  return [
    ...checkCircles(bill),
    ...checkUnnamed(bill, needed),
    ...checkUnits(bill, needed),
    ...checkSources(machine, bill, prices, needed),
    ...checkPrices(machine, prices, new Set(parts)),
  ].sort((a, b) => compareText(a.rule, b.rule) || compareText(a.subjects.join(" "), b.subjects.join(" ")));
}

function checkCircles({ circles }: Bill): readonly Finding[] {
  return circles.map((ids) => makeFinding("bill-circle", "error", ids.map(idOf), { parts: ids.length }));
}

/** Name of a node as the book has it. */
const idOf = (nodeId: string): string => derivedOf(nodeId)?.ref ?? unnamedOf(nodeId)?.ref ?? nodeId;

/** What is used but has no part; a mechanism or board of which nothing is known at all is such a thing as well. */
function checkUnnamed(bill: Bill, needed: ReadonlySet<string>): readonly Finding[] {
  const containing = new Set(bill.lines.map(({ parentId }) => parentId));
  return [...needed].flatMap((id): readonly Finding[] => {
    const node = bill.nodes.get(id);
    const kind = node === undefined ? null : kindWithoutPart(node, containing);
    return kind === null ? [] : [makeFinding("part-unnamed", "warning", [idOf(id)], { kind })];
  });
}

function kindWithoutPart(node: BillNode, containing: ReadonlySet<string>): string | null {
  if (node.kind === "unnamed") return unnamedOf(node.id)?.kind ?? null;
  if (node.kind !== "mechanism" && node.kind !== "board") return null;
  return node.partId === null && !containing.has(node.id) ? node.kind : null;
}

/** Metres are bought in metres, and square metres in those. */
function checkUnits(bill: Bill, needed: ReadonlySet<string>): readonly Finding[] {
  const found = new Map<string, Finding>();
  for (const { childId, why } of bill.lines) {
    const node = bill.nodes.get(childId);
    if (node?.kind !== "part" || !needed.has(childId)) continue;
    const metres = why === "wire" || why === "cable" || why === "sleeve";
    const fits = metres ? node.unit === "m" : why === "bom" || why === "sheet" || node.unit === "each";
    if (fits) continue;
    found.set(
      childId,
      makeFinding("part-unit", "error", [childId], { unit: node.unit, wanted: metres ? "m" : "each" }),
    );
  }
  return [...found.values()];
}
