import { type Finding, makeFinding } from "../../model/index.ts";
import { type ElectricFacts, rounded } from "./facts.ts";

/** Enamelled wire and winding tension keep a coil within this of its computed resistance. Common practice, no source. */
const TOLERANCE = 0.1;

/** `coil-winding`: turns, wire and bobbin make another resistance than the coil's: one of them is wrong. */
export function coilWinding({ ratings, machine }: ElectricFacts): readonly Finding[] {
  const rows = new Map(machine.elements.map((element) => [element.id, element.row.id]));
  const found = new Map<string, Finding>();
  for (const coil of ratings.coils.values()) {
    const rowId = rows.get(coil.elementId) ?? "";
    const { windingOhm, ohm20C } = coil;
    if (windingOhm === null || Math.abs(windingOhm / ohm20C - 1) <= TOLERANCE || found.has(rowId)) continue;
    const numbers = { ohm: ohm20C, winding_ohm: rounded(windingOhm), tolerance_pct: TOLERANCE * 100 };
    found.set(rowId, makeFinding("coil-winding", "warning", [coil.itemId, coil.elementId], numbers));
  }
  return [...found.values()];
}
