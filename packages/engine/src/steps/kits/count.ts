import { compareText } from "@pinwright/kernel";
import {
  type FastenerItem,
  type LineResult,
  labelsOf,
  type Machine,
  type ScrewSymbol,
} from "../../model/index.ts";
import type { FastenerCount } from "./kit.ts";

type Symbols = ReadonlyMap<string, ScrewSymbol>;
type TypeRow = FastenerItem["type"];

/**
 * How many of each fastener type these fasteners take, washers and nuts included: by the letter of the symbol, then
 * those without a symbol by type.
 */
export function countFasteners(
  fasteners: Iterable<FastenerItem>,
  symbols: Symbols,
): readonly FastenerCount[] {
  const counts = new Map<string, { type: TypeRow; driven: number; washers: number; nuts: number }>();
  const add = (type: TypeRow | null, as: "driven" | "washers" | "nuts"): void => {
    if (type === null) return;
    const known = counts.get(type.id) ?? { type, driven: 0, washers: 0, nuts: 0 };
    known[as] += 1;
    counts.set(type.id, known);
  };
  for (const fastener of fasteners) {
    add(fastener.type, "driven");
    add(fastener.washer, "washers");
    add(fastener.nut, "nuts");
  }
  return [...counts.values()]
    .map(({ type, driven, washers, nuts }) => ({
      typeId: type.id,
      labels: labelsOf(type, type.id),
      partId: type.part,
      symbol: symbols.get(type.id) ?? null,
      driven,
      washers,
      nuts,
      count: driven + washers + nuts,
    }))
    .sort(byLetter);
}

const byLetter = (a: FastenerCount, b: FastenerCount): number => {
  if (a.symbol !== null && b.symbol !== null)
    return (
      a.symbol.letter.length - b.symbol.letter.length ||
      compareText(a.symbol.letter, b.symbol.letter) ||
      compareText(a.typeId, b.typeId)
    );
  if (a.symbol !== null) return -1;
  return b.symbol !== null ? 1 : compareText(a.typeId, b.typeId);
};

/** The fasteners of the whole machine. */
export function fastenerBill({
  machine,
  fastening,
}: Pick<LineResult, "machine" | "fastening">): readonly FastenerCount[] {
  return countFasteners(fastenersOf(machine, machine.items.keys()), fastening.symbols);
}

/** Those of these items that are fasteners. */
export function fastenersOf(machine: Machine, ids: Iterable<string>): readonly FastenerItem[] {
  return [...ids].flatMap((id) => {
    const item = machine.items.get(id);
    return item?.kind === "fastener" ? [item] : [];
  });
}
