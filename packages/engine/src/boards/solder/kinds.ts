import type { ShopNumbers } from "@pinwright/book";
import { compareText } from "@pinwright/kernel";
import { groupRows, type Machine, type SolderSession } from "../../model/index.ts";
import { jointsOf, type Placement } from "../joints.ts";
import { stuffingOrder } from "../stuffing/order.ts";
import { handJointSeconds, insertSeconds, withRest } from "../stuffing/seconds.ts";

/** What one board of a kind brings to a session. */
export interface BoardWork {
  readonly typeId: string;
  /** Joints of what goes in before a bath, hidden ones included. */
  readonly joints: number;
  readonly hidden: number;
  readonly masks: number;
  /** Boards in one carrier. */
  readonly carrier: number;
  /** Parts that go in before, and after: first of their kind, and after a like one. */
  readonly parts: PartCount;
  readonly lateParts: PartCount;
  readonly lateJoints: number;
}

interface PartCount {
  readonly first: number;
  readonly like: number;
}

/** What a board type brings, from its parts. */
export function boardWork(typeId: string, carrier: number, rows: readonly Placement[]): BoardWork {
  const order = stuffingOrder(rows);
  const early = order.filter((row) => !row.after_wash);
  const late = order.filter((row) => row.after_wash);
  return {
    typeId,
    joints: jointsOf(early),
    hidden: jointsOf(early.filter((row) => row.hidden)),
    masks: rows.reduce((sum, row) => sum + row.masks, 0),
    carrier,
    parts: countParts(early),
    lateParts: countParts(late),
    lateJoints: jointsOf(late),
  };
}

function countParts(rows: readonly Placement[]): PartCount {
  const like = rows.filter((row, i) => rows[i - 1]?.part === row.part).length;
  return { first: rows.length - like, like };
}

/** What each board type with parts brings, by type. */
export function boardWorks(machine: Machine): ReadonlyMap<string, BoardWork> {
  const { board_types, placements } = machine.book.tables;
  const rows = groupRows(placements, (row) => row.board_type);
  return new Map(
    board_types.flatMap((type) => {
      const own = rows.get(type.id);
      return own === undefined ? [] : [[type.id, boardWork(type.id, type.carrier, own)] as const];
    }),
  );
}

/** A kind of board in a session: minutes of each board, and of the kind, by hand and in the bath. */
export interface SessionKind {
  readonly typeId: string;
  /** Boards in the session as it is asked for, and in one machine. */
  readonly count: number;
  readonly perMachine: number;
  readonly hand: KindMinutes;
  readonly bath: KindMinutes;
  readonly carrier: number;
  /** Of one dip, all people together. */
  readonly dip: number;
}

/** Minutes of one kind: once, and for each board. */
export interface KindMinutes {
  readonly setup: number;
  readonly stuff: number;
  readonly solder: number;
  readonly mask: number;
  readonly wash: number;
  readonly mend: number;
  readonly afterWash: number;
}

const SECONDS = 60;

/** Minutes of a kind of board by hand: its bench once; of each board its parts and joints. */
export function handMinutes(work: BoardWork, numbers: ShopNumbers): KindMinutes {
  return {
    setup: numbers.hand_setup_min,
    stuff: insertMinutes(work.parts, numbers),
    solder: (work.joints * handJointSeconds(numbers)) / SECONDS,
    mask: 0,
    wash: 0,
    mend: 0,
    afterWash: lateMinutes(work, numbers),
  };
}

/**
 * Minutes of a kind of board in the bath: its carriers and first board once; of each board its parts, clipping of leads,
 * masks, wash, a share of its joints mended, each hidden joint looked at, and what goes in after the wash by hand. The
 * dips come on top, by carrier.
 */
export function bathMinutes(work: BoardWork, numbers: ShopNumbers): KindMinutes {
  const rest = withRest(numbers) / SECONDS;
  const open = work.joints - work.hidden;
  const mended = (open * numbers.bath_touch_up_pct) / 100;
  return {
    setup: numbers.bath_kind_min,
    stuff: insertMinutes(work.parts, numbers),
    solder: work.joints * numbers.clip_joint_s * rest,
    mask: work.masks * numbers.bath_mask_s * rest,
    wash: numbers.bath_wash_min,
    mend: (mended * numbers.hand_joint_s + work.hidden * numbers.bath_hidden_s) * rest,
    afterWash: lateMinutes(work, numbers),
  };
}

const insertMinutes = ({ first, like }: PartCount, numbers: ShopNumbers): number =>
  (first * insertSeconds(numbers, false) + like * insertSeconds(numbers, true)) / SECONDS;

const lateMinutes = (work: BoardWork, numbers: ShopNumbers): number =>
  insertMinutes(work.lateParts, numbers) + (work.lateJoints * handJointSeconds(numbers)) / SECONDS;

/** The kinds of a session that have parts to stuff, in code-point order, counts of one kind together. */
export function sessionKinds(
  machine: Machine,
  works: ReadonlyMap<string, BoardWork>,
  perMachine: ReadonlyMap<string, number>,
  session: SolderSession,
  numbers: ShopNumbers = machine.shop.numbers,
): readonly SessionKind[] {
  const counts = new Map<string, number>();
  for (const { typeId, count } of session.boards) {
    if (!Number.isInteger(count) || count < 0)
      throw new RangeError(`${typeId}: ${count} boards, expected a whole number from 0 up`);
    counts.set(typeId, (counts.get(typeId) ?? 0) + count);
  }
  return [...counts].toSorted(byKey).flatMap(([typeId, count]) => {
    const work = works.get(typeId);
    if (work === undefined || count === 0) return [];
    return [
      {
        typeId,
        count,
        perMachine: perMachine.get(typeId) ?? 0,
        hand: handMinutes(work, numbers),
        bath: bathMinutes(work, numbers),
        carrier: work.carrier,
        dip: numbers.bath_dip_min * numbers.bath_people,
      },
    ];
  });
}

const byKey = ([a]: readonly [string, number], [b]: readonly [string, number]): number => compareText(a, b);
