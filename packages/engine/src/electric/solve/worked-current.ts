import type { Corner, ElectricSolution, HarnessResult, Machine } from "../../model/index.ts";
import type { Usage } from "../network/usage.ts";
import { rmsAt } from "./heating.ts";
import { baseAt, partAt, type Rows, resistorRows } from "./rows.ts";
import { unitsIn, type WorkedOhm, workedIsland, workedOhm } from "./worked.ts";
import { valueAt } from "./worst.ts";

/** What one unit adds to a conductor's current, counted the way that its largest current flows. */
export interface WorkedUnit {
  readonly itemIds: readonly string[];
  readonly loadIds: readonly string[];
  /** While it is on by itself. */
  readonly aloneA: number;
  readonly usage: Usage;
  /** Its mean over a minute of hard play, and its mean square. */
  readonly meanA: number;
  readonly meanSquareA2: number;
  readonly inMoment: boolean;
}

/** How the currents of a wire, contact, fuse, link or shunt come about. */
export interface WorkedCurrent {
  readonly partId: string;
  readonly resistance: WorkedOhm;
  /** What always flows. */
  readonly steadyA: number;
  /** Units with a part in it, largest first. */
  readonly units: readonly WorkedUnit[];
  readonly momentId: string;
  /** Steady and every unit of the moment as if by itself; and the moment as solved with true resistances. */
  readonly superposedA: number;
  readonly solvedA: number;
  readonly dropV: number;
  /** √((steady + Σ means)² + Σ (mean squares − means²)). */
  readonly rmsA: number;
}

/**
 * The peak and rms current of a conductor, laid out unit by unit. Null when it carries nothing or is not known.
 * @param corner null for the nominal one
 */
export function workedCurrent(
  machine: Machine,
  harnesses: ReadonlyMap<string, Pick<HarnessResult, "wires">>,
  solution: ElectricSolution,
  partId: string,
  corner: Corner | null = null,
): WorkedCurrent | null {
  const worked = workedIsland(machine, harnesses, partId, corner);
  const { wires, contacts, elements } = solution;
  const carried = wires.get(partId) ?? contacts.get(partId) ?? elements.get(partId);
  if (worked === null || carried === undefined) return null;
  const { solved, corner: c } = worked;
  const { network } = solved.task;
  const part = network.island.parts.find(({ id }) => id === partId);
  const resistor = network.resistorOf.get(partId);
  const rows: Rows | undefined =
    resistor === undefined
      ? solved.joinRows[network.joins.findIndex(({ id }) => id === partId)]
      : resistorRows(solved.states, resistor);
  if (part === undefined || rows === undefined) return null;
  const on = unitsIn(worked, solution, carried.momentId);
  const solvedA = valueAt(rows, c, solved.worst.setOf(on));
  const sign = solvedA < 0 ? -1 : 1;
  const currents = solved.currents[c] ?? [];
  const units = currents.flatMap(({ usage, pulse, held }, u): readonly WorkedUnit[] => {
    const unit = network.units[u]?.unit;
    const aloneA = sign * partAt(rows, c, pulse);
    if (unit === undefined || aloneA === 0) return [];
    const heldA = held === null ? 0 : sign * partAt(rows, c, held);
    const { pulseShare, holdShare, holdDuty } = usage;
    return [
      {
        itemIds: unit.itemIds,
        loadIds: unit.loads.map(({ load }) => load.id),
        aloneA,
        usage,
        meanA: pulseShare * aloneA + holdShare * holdDuty ** 2 * heldA,
        meanSquareA2: pulseShare * aloneA ** 2 + holdShare * holdDuty ** 3 * heldA ** 2,
        inMoment: on.includes(u),
      },
    ];
  });
  const steadyA = sign * baseAt(rows, c);
  const resistance = workedOhm(worked, part);
  return {
    partId,
    resistance,
    steadyA,
    units: units.sort((p, q) => Math.abs(q.aloneA) - Math.abs(p.aloneA)),
    momentId: carried.momentId,
    superposedA: units.reduce((sum, unit) => sum + (unit.inMoment ? unit.aloneA : 0), steadyA),
    solvedA: sign * solvedA,
    dropV: sign * solvedA * resistance.ohm,
    rmsA: rmsAt(rows, c, currents),
  };
}
