import { compareText } from "@pinwright/kernel";
import { type Finding, makeFinding, type UnfusedWire } from "../../model/index.ts";
import { type ElectricFacts, rounded } from "./facts.ts";

/** `wire-unprotected`: wires between a supply and its first fuse that the supply's own limit does not protect. */
export function wireUnprotected({ ratings }: ElectricFacts): readonly Finding[] {
  const bySupply = new Map<string, UnfusedWire[]>();
  for (const wire of ratings.unfused)
    bySupply.set(wire.supplyId, [...(bySupply.get(wire.supplyId) ?? []), wire]);
  return [...bySupply].map(([supplyId, wires]) => {
    const ids = wires.map(({ wireId }) => wireId).sort(compareText);
    return makeFinding("wire-unprotected", "warning", [supplyId, ...ids], {
      wires: wires.length,
      length_mm: wires.reduce((sum, { lengthMm }) => sum + lengthMm, 0),
      held_a: rounded(Math.max(...wires.map(({ heldA }) => heldA))),
      limit_a: rounded(Math.min(...wires.map(({ limitA }) => limitA))),
    });
  });
}
