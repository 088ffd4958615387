import {
  boardsInMachine,
  kindCrossing,
  type Machine,
  type SolderChoice,
  type SolderPoint,
  type SolderShift,
  solderChoice,
  solderCurve,
  solderShifts,
} from "@pinwright/engine";
import type { Model } from "../model.ts";

/** Times of the shop that the choice hangs on. */
export const SOLDER_TIMES = [
  "hand_joint_s",
  "hand_setup_min",
  "bath_setup_min",
  "bath_kind_min",
  "bath_dip_min",
  "bath_mask_s",
  "bath_wash_min",
  "bath_touch_up_pct",
  "bath_hidden_s",
  "bath_people",
] as const;
export type SolderTime = (typeof SOLDER_TIMES)[number];

/** A kind of board that is soldered in the own shop. */
interface SolderKind {
  readonly typeId: string;
  readonly perMachine: number;
  /** Boards of this kind alone from which the bath pays; null: never. */
  readonly aloneFrom: number | null;
}

/** By hand or in the bath, with what the answer hangs on. */
export interface Soldering {
  readonly choice: SolderChoice;
  readonly curve: readonly SolderPoint[];
  readonly shifts: readonly SolderShift[];
  readonly kinds: readonly SolderKind[];
}

interface SolderQuestion {
  readonly machines: number;
  /** Boards of each kind in the session. */
  readonly counts: readonly { readonly typeId: string; readonly count: number }[];
  /** Times that are tried in place of the shop's. */
  readonly times: Partial<Record<SolderTime, number>>;
}

const POINTS = 48;
const MOST_MACHINES = 10_000;
/** Times are tried this much shorter and longer. */
const SHIFT_SHARE = 0.3;

const withTimes = (machine: Machine, times: SolderQuestion["times"]): Machine => ({
  ...machine,
  shop: { ...machine.shop, numbers: { ...machine.shop.numbers, ...times } },
});

/** Numbers of machines, from 1 to beyond whatever matters, at most so many of them. */
function stepsTo(top: number): readonly number[] {
  const last = Math.min(Math.max(Math.ceil(top), 10), MOST_MACHINES);
  const step = Math.max(1, Math.ceil(last / POINTS));
  return [1, ...Array.from({ length: Math.ceil(last / step) }, (_, i) => (i + 1) * step)].filter(
    (machines, i, all) => machines !== all[i - 1],
  );
}

/** Compares the two ways of soldering for one session, with the shop's times or with others. */
export function soldering({ line }: Model, { machines, counts, times }: SolderQuestion): Soldering {
  const machine = withTimes(line.machine, times);
  const session = { boards: counts.filter(({ count }) => count > 0) };
  const choice = solderChoice(machine, session);
  const placed = new Set(machine.book.tables.placements.map((row) => row.board_type));
  return {
    choice,
    curve: solderCurve(machine, session, stepsTo(2 * Math.max(machines, choice.crossing ?? 0))),
    shifts: solderShifts(machine, session, SHIFT_SHARE),
    kinds: [...boardsInMachine(machine)]
      .filter(([typeId]) => placed.has(typeId))
      .map(([typeId, perMachine]) => ({ typeId, perMachine, aloneFrom: kindCrossing(machine, typeId) })),
  };
}
