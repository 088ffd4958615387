import type { BookRow } from "@pinwright/book";
import type { HarnessResult, Item, Machine, Motion, MotionKind } from "../../model/index.ts";
import type { Drive, Driven } from "./drive.ts";

/** Numbers that times are made from. */
export type TimeNumbers = Machine["shop"]["numbers"];

/** A mechanism is taken in both hands and found its place: so many times the time of a small part. */
const MECHANISM_PLACES = 3;

/** Motions of one kind; none when it does not happen. */
export const motion = (
  kind: MotionKind,
  count: number,
  secondsEach: number,
  set = false,
): readonly Motion[] => (count === 0 ? [] : [{ kind, count, seconds: count * secondsEach, set }]);

/** Seconds of all motions with the allowance for rest on those that nobody has set, to a tenth. */
export const secondsOf = (motions: readonly Motion[], restPct: number): number =>
  Math.round(
    motions.reduce((sum, { seconds, set }) => sum + seconds * (set ? 1 : 1 + restPct / 100), 0) * 10,
  ) / 10;

/** Putting items in: a mechanism takes as long as three small parts, an in-line connector is plugged. */
export function placeMotions(items: readonly Item[], t: TimeNumbers): readonly Motion[] {
  let places = 0;
  let plugs = 0;
  for (const { kind } of items) {
    if (kind === "inline") plugs += 1;
    else if (kind !== "fastener") places += kind === "mechanism" ? MECHANISM_PLACES : 1;
  }
  return [...motion("place", places, t.place_s), ...motion("plug", plugs, t.plug_s)];
}

/** Driving fasteners, with what goes on and under them, the changes of bit and box, and the walk of the hand. */
export function driveMotions(drives: readonly Drive[], driven: Driven, t: TimeNumbers): readonly Motion[] {
  const fasteners = drives.map(({ fastener }) => fastener);
  const count = (is: (fastener: Drive["fastener"]) => boolean): number => fasteners.filter(is).length;
  const aligned = new Set(
    fasteners.filter(({ moments }) => moments.includes("align")).map(({ id, holds }) => holds ?? id),
  );
  return [
    ...motion("pick", fasteners.length, t.pick_s),
    ...motion(
      "washer",
      count(({ washer }) => washer !== null),
      t.washer_s,
    ),
    ...motion(
      "threadlock",
      count(({ type }) => type.threadlocker),
      t.threadlock_s,
    ),
    ...motion(
      "start",
      count(({ moments }) => moments.includes("start")),
      t.start_loose_s,
    ),
    ...motion("align", aligned.size, t.align_s),
    ...motion(
      "tighten",
      count(({ moments }) => moments.includes("tighten")),
      t.tighten_s,
    ),
    ...motion(
      "nut",
      count(({ nut }) => nut !== null),
      t.nut_s,
    ),
    ...changeMotions(driven, t),
  ];
}

/** Checking fasteners again: each once, with the changes of bit and the walk. */
export function recheckMotions(count: number, driven: Driven, t: TimeNumbers): readonly Motion[] {
  return [
    ...motion("recheck", count, t.recheck_s),
    ...motion("bit-change", Math.max(0, driven.bits.length - 1), t.bit_change_s),
    ...motion("walk", driven.walkMm, 1 / t.hand_mm_s),
  ];
}

const changeMotions = (driven: Driven, t: TimeNumbers): readonly Motion[] => [
  ...motion("bit-change", Math.max(0, driven.bits.length - 1), t.bit_change_s),
  ...motion("box-change", Math.max(0, driven.boxes.length - 1), t.box_change_s),
  ...motion("walk", driven.walkMm, 1 / t.hand_mm_s),
];

/** What a harness takes when it is put in: millimetres of bundle, ties, plugs, and wire ends at bare terminals. */
export interface HarnessWork {
  readonly layMm: number;
  readonly ties: number;
  readonly plugs: number;
  readonly solders: number;
}

/**
 * The work of one harness. Halves of in-line connectors are plugged when they are joined, so they do not count here;
 * at bare terminals each end of a wire does.
 */
export function harnessWork(machine: Machine, harness: HarnessResult): HarnessWork {
  const bare = new Set<string>();
  let plugs = 0;
  for (const id of harness.landingIds) {
    const landing = machine.landings.get(id);
    if (landing === undefined || landing.half !== null) continue;
    if (landing.connector === null) bare.add(id);
    else plugs += 1;
  }
  let solders = 0;
  for (const wire of harness.wires)
    for (const end of [wire.a, wire.b]) if (bare.has(machine.points.get(end)?.landingId ?? "")) solders += 1;
  return {
    layMm: Math.round(harness.branches.reduce((sum, branch) => sum + branch.lengthMm, 0)),
    ties: harness.pinboard.branches.reduce((sum, branch) => sum + branch.tiesMm.length, 0),
    plugs,
    solders,
  };
}

/**
 * Laying, tying and connecting a harness. It comes from its pinboard as one bundle, so a metre of bundle takes what the
 * shop gives for a metre of wire; it is tied down as often as it was tied there.
 */
export const harnessMotions = (work: HarnessWork, t: TimeNumbers): readonly Motion[] => [
  ...motion("lay", work.layMm, (t.lay_wire_m_min * 60) / 1000),
  ...motion("tie", work.ties, t.tie_min * 60),
  ...motion("plug", work.plugs, t.plug_s),
  ...motion("solder", work.solders, t.solder_s),
];

type BenchRow = BookRow<"mechanism_steps">;

/** What a mechanism type is made of, as far as its bench needs it. */
export interface BenchWork {
  readonly rows: readonly BenchRow[];
  readonly devices: number;
  readonly fasteners: number;
}

/** The book's steps for a mechanism type. */
export function benchWork({ book }: Machine, typeId: string): BenchWork {
  const { mechanism_steps, mechanism_devices, mechanism_fasteners } = book.tables;
  const isOfType = (row: { readonly mechanism_type: string }): boolean => row.mechanism_type === typeId;
  return {
    rows: mechanism_steps.filter(isOfType).sort((a, b) => a.order - b.order),
    devices: mechanism_devices.filter(isOfType).length,
    fasteners: mechanism_fasteners.filter(isOfType).length,
  };
}

const BENCH_MOTIONS: Readonly<Record<BenchRow["kind"], MotionKind>> = {
  build: "build",
  adjust: "gauge",
  cycle: "cycle",
  retighten: "retighten",
};

/**
 * The bench work of all mechanisms of a type in one machine. A row with minutes takes those; without, a row that builds
 * takes the time to place a small part, one that tightens again the time to drive the type's fasteners, and others that
 * of one gauge. A type without rows is put together from its devices and its frame.
 * @param times how many of the type the machine has
 */
export function benchMotions(work: BenchWork, times: number, t: TimeNumbers): readonly Motion[] {
  if (work.rows.length === 0) return motion("build", (work.devices + 1) * times, t.place_s);
  const usual: Readonly<Record<BenchRow["kind"], number>> = {
    build: t.place_s,
    adjust: t.gauge_s,
    cycle: t.gauge_s,
    retighten: Math.max(1, work.fasteners) * t.tighten_s,
  };
  const motions: Motion[] = [];
  for (const kind of ["build", "adjust", "cycle", "retighten"] as const) {
    const rows = work.rows.filter((row) => row.kind === kind);
    const free = rows.filter((row) => row.minutes === null);
    const set = rows.reduce((sum, row) => sum + (row.minutes ?? 0) * 60, 0);
    motions.push(...motion(BENCH_MOTIONS[kind], free.length * times, usual[kind]));
    const count = (rows.length - free.length) * times;
    if (count > 0) motions.push({ kind: BENCH_MOTIONS[kind], count, seconds: set * times, set: true });
  }
  return motions;
}
