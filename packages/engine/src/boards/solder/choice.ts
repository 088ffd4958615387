import type { ShopNumbers } from "@pinwright/book";
import {
  appliesTo,
  type Machine,
  type SolderChoice,
  type SolderPoint,
  type SolderSession,
  type SolderShift,
} from "../../model/index.ts";
import { crossingMachines, savedAt } from "./crossing.ts";
import { boardWorks, type SessionKind, sessionKinds } from "./kinds.ts";
import { handTotal, savingOf, sessionMinutes } from "./minutes.ts";

/** Boards of each type in one machine. */
export function boardsInMachine(machine: Machine): ReadonlyMap<string, number> {
  const counts = new Map<string, number>();
  for (const row of machine.book.tables.boards)
    if (appliesTo(row, machine.options)) counts.set(row.type, (counts.get(row.type) ?? 0) + 1);
  return counts;
}

/**
 * The boards of so many machines that are stuffed in the own shop, as one session.
 * @param typeIds kinds that are soldered in it; absent: all
 */
export function sessionOf(machine: Machine, machines: number, typeIds?: readonly string[]): SolderSession {
  const stuffed = new Set(machine.book.tables.placements.map((row) => row.board_type));
  return {
    boards: [...boardsInMachine(machine)]
      .filter(([typeId]) => stuffed.has(typeId) && (typeIds?.includes(typeId) ?? true))
      .map(([typeId, count]) => ({ typeId, count: count * machines })),
  };
}

/** What lighting the bath takes once in a session, of all who work at it. */
const onceMinutes = (numbers: ShopNumbers): number => numbers.bath_setup_min * numbers.bath_people;

/** The kinds of a session; a kind that the machine does not have counts as one in each. */
function kindsOf(machine: Machine, session: SolderSession, numbers?: ShopNumbers): readonly SessionKind[] {
  const kinds = sessionKinds(machine, boardWorks(machine), boardsInMachine(machine), session, numbers);
  return kinds.map((kind) => ({ ...kind, perMachine: Math.max(1, kind.perMachine) }));
}

/**
 * Whether the boards of one session are better soldered by hand or in the bath: the minutes of work in both ways by
 * what they go into, and the quantity at which the better way changes. In the bath way the kinds that do not save time
 * there are soldered by hand. A type without parts takes no time. Times are the shop's (`shop_settings`); those in
 * seconds have the allowance for rest on top, those in minutes are of a whole job.
 *
 * A batch is the boards that are soldered in one session, of one kind or mixed, and the set-up of the bath is shared by
 * all of them. Common practice, no source: batches of 40 to 50 boards are soldered by hand, of about 100 in the bath.
 * @throws RangeError when a count is not a whole number from 0 up.
 */
export function solderChoice(machine: Machine, session: SolderSession): SolderChoice {
  const once = onceMinutes(machine.shop.numbers);
  const kinds = kindsOf(machine, session);
  const saving = kinds.filter((kind) => savingOf(kind, kind.count) > 0);
  const inBath = new Set((saving.length > 0 ? saving : kinds).map((kind) => kind.typeId));
  const hand = sessionMinutes(kinds, new Set(), once);
  const bath = sessionMinutes(kinds, inBath, once);
  const crossing = crossingMachines(kinds, once);
  const perMachine = kinds.reduce((sum, kind) => sum + kind.perMachine, 0);
  return {
    hand,
    bath,
    bathTypeIds: [...inBath],
    better: bath.total < hand.total ? "bath" : "hand",
    crossing,
    crossingBoards: crossing === null ? null : crossing * perMachine,
  };
}

/**
 * Minutes by hand and in the bath against the number of machines whose boards are soldered in one session.
 * @param session its kinds are soldered, whatever its counts
 * @param machines numbers of machines, each a whole number from 1 up
 */
export function solderCurve(
  machine: Machine,
  session: SolderSession,
  machines: readonly number[],
): readonly SolderPoint[] {
  const once = onceMinutes(machine.shop.numbers);
  const kinds = kindsOf(machine, session);
  return machines.map((n) => {
    const hand = kinds.reduce((sum, kind) => sum + handTotal(kind, kind.perMachine * n), 0);
    const saved = savedAt(kinds, n);
    // Without any kind that saves time all go into the bath, so that its minutes show what it would cost.
    const bath =
      saved > 0
        ? hand - saved
        : hand - kinds.reduce((sum, kind) => sum + savingOf(kind, kind.perMachine * n), 0);
    return {
      machines: n,
      boards: kinds.reduce((sum, kind) => sum + kind.perMachine * n, 0),
      handMinutes: hand,
      bathMinutes: bath + once,
    };
  });
}

/**
 * From how many boards of one kind on, soldered by themselves, the bath takes fewer minutes; null: never up to 10 000,
 * or the type has no parts.
 */
export function kindCrossing(machine: Machine, typeId: string): number | null {
  const kinds = kindsOf(machine, { boards: [{ typeId, count: 1 }] });
  return crossingMachines(
    kinds.map((kind) => ({ ...kind, perMachine: 1 })),
    onceMinutes(machine.shop.numbers),
  );
}

/** Settings that the answer hangs on; the first two lists are changed together, too. */
const HAND_TIMES = ["hand_joint_s", "hand_setup_min"] as const;
const BATH_TIMES = [
  "bath_setup_min",
  "bath_kind_min",
  "bath_dip_min",
  "bath_mask_s",
  "bath_wash_min",
  "bath_touch_up_pct",
  "bath_hidden_s",
] as const;

/**
 * How the crossing quantity moves, in machines, when times are shorter or longer: all times by hand together, all of the
 * bath together, then each by itself.
 * @param share of the times, 0.3 for 30 per cent
 */
export function solderShifts(machine: Machine, session: SolderSession, share = 0.3): readonly SolderShift[] {
  const { numbers } = machine.shop;
  const crossingWith = (settings: readonly (keyof ShopNumbers)[], factor: number): number | null => {
    const changed: Record<keyof ShopNumbers, number> = { ...numbers };
    for (const name of settings) changed[name] = numbers[name] * factor;
    return crossingMachines(kindsOf(machine, session, changed), onceMinutes(changed));
  };
  return [HAND_TIMES, BATH_TIMES, ...[...HAND_TIMES, ...BATH_TIMES].map((name) => [name])].map(
    (settings) => ({
      settings,
      share,
      shorter: crossingWith(settings, 1 - share),
      longer: crossingWith(settings, 1 + share),
    }),
  );
}
