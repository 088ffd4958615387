import type { Corner, ElectricSolution, HarnessResult, Machine } from "../../model/index.ts";
import { islandCircuit } from "../network/island-circuit.ts";
import { electricNetwork, returnsOf } from "../network/network.ts";
import type { Part } from "../network/parts.ts";
import { behaviourOf, cornerCelsius } from "../network/values.ts";
import { CORNERS } from "./corners.ts";
import { lengthsOf } from "./solve-electric.ts";
import { SolvedIsland } from "./solved-island.ts";

/** How a part's resistance is found. */
export type WorkedOhm =
  | {
      readonly kind: "wire";
      readonly lengthMm: number;
      readonly areaMm2: number;
      readonly strandLay: number;
      readonly celsius: number;
      readonly ohm: number;
    }
  | { readonly kind: "contact"; readonly newOhm: number; readonly wear: number; readonly ohm: number }
  | { readonly kind: "element"; readonly ohm: number };

/** An island solved again, to lay out what one of its parts or loads carries. */
export interface WorkedIsland {
  readonly solved: SolvedIsland;
  /** Number of the corner. */
  readonly corner: number;
}

/** Solves the island that a part or load is in; null when it is in none, and so carries nothing. */
export function workedIsland(
  machine: Machine,
  harnesses: ReadonlyMap<string, Pick<HarnessResult, "wires">>,
  partId: string,
  corner: Corner | null,
): WorkedIsland | null {
  const all = [...harnesses.values()];
  const network = electricNetwork(
    machine,
    all.flatMap(({ wires }) => wires),
  );
  const island = network.islands.find(({ parts }) => parts.some((part) => part.id === partId));
  if (island === undefined) return null;
  const circuit = islandCircuit(island, network.units);
  const solved = new SolvedIsland({
    network: circuit,
    returns: returnsOf(machine, circuit),
    numbers: machine.shop.numbers,
    lengthsMm: lengthsOf(all),
  });
  return { solved, corner: cornerNumber(corner) };
}

function cornerNumber(corner: Corner | null): number {
  const at = CORNERS.findIndex(
    ({ contacts, supply, temperature }) =>
      contacts === corner?.contacts && supply === corner.supply && temperature === corner.temperature,
  );
  return Math.max(0, at);
}

/** Units of an island, by place, that are on in a moment of the solution. */
export function unitsIn(
  { solved }: WorkedIsland,
  { moments }: ElectricSolution,
  momentId: string,
): readonly number[] {
  const on = new Set(moments.get(momentId)?.loadIds ?? []);
  return solved.task.network.units.flatMap(({ unit }, u) =>
    unit.loads.some(({ load }) => on.has(load.id)) ? [u] : [],
  );
}

/** Resistance of a part at the corner, with what it is found from. */
export function workedOhm({ solved, corner }: WorkedIsland, part: Part): WorkedOhm {
  const { network, numbers, lengthsMm } = solved.task;
  const resistor = network.resistorOf.get(part.id);
  const nominal = resistor === undefined ? 0 : (solved.ohms[resistor] ?? 0);
  const factor = solved.factors[corner]?.[behaviourOf(part)] ?? 1;
  const ohm = nominal * factor;
  const at = CORNERS[corner];
  if (part.kind === "wire" && at !== undefined)
    return {
      kind: "wire",
      lengthMm: lengthsMm.get(part.id) ?? 0,
      areaMm2: part.wire.wireType.area_mm2,
      strandLay: numbers.strand_lay,
      celsius: cornerCelsius(at, numbers),
      ohm,
    };
  if (part.kind === "contact") return { kind: "contact", newOhm: nominal, wear: factor, ohm };
  return { kind: "element", ohm };
}
