import type { ContactRating, FuseRating, LineResult, LoadVolts, WireRating } from "@pinwright/engine";
import type { Command } from "../command.ts";
import { faultText } from "../fault-text.ts";
import { BOOK_OPTIONS, fatalFaults, loadBook, runLine } from "../load.ts";
import { STATUS } from "../terminal.ts";
import { textTable } from "../text-table.ts";

/** Rows of a list that is not asked for whole. */
const FIRST = 10;

const amps = (value: number): string => value.toFixed(2);
const volts = (value: number): string => value.toFixed(1);
const percent = (share: number): string => `${(100 * share).toFixed(0)} %`;

/** Columns of figures stand right: all but the first. */
const figures = (count: number): ReadonlySet<number> =>
  new Set(Array.from({ length: count }, (_, i) => i + 1));

/** The tightest first; equal ones by their ids. */
function tightest<T>(list: Iterable<T>, share: (one: T) => number, id: (one: T) => string): readonly T[] {
  return [...list].sort((a, b) => share(b) - share(a) || (id(a) < id(b) ? -1 : 1));
}

/** Part of its rating that a fuse's steady current asks for, with its temperature. */
const fuseShare = ({ steadyA, ratedA }: FuseRating): number => (ratedA > 0 ? steadyA / ratedA : 0);
/** Part of the volts that a load is made for which never arrives. */
const lostShare = ({ worstV, nominalV }: LoadVolts): number =>
  nominalV > 0 ? 1 - worstV.least / nominalV : 0;

function suppliesText({ electric, ratings, machine }: LineResult): string {
  const rows = machine.book.tables.supplies.flatMap((supply) => {
    const budget = electric.supplies.get(supply.id);
    if (budget === undefined) return [];
    const own = [
      supply.id,
      volts(supply.volts),
      amps(budget.ratedA),
      amps(budget.steadyA.most),
      amps(budget.rmsA.most),
      amps(budget.holdA.most),
      amps(budget.worstA.most),
      amps(ratings.supplies.get(supply.id)?.headroomA ?? 0),
    ];
    return [own];
  });
  const heads = ["supply", "V", "rated A", "steady A", "rms A", "hold A", "worst A", "head-room A"];
  return textTable([heads, ...rows], figures(heads.length));
}

/** What draws in the worst moment of each supply, the largest part first. */
function momentsText({ electric }: LineResult, most: number): string {
  const lines = [...electric.supplies.values()].map(({ supplyId, worstA, parts }) => {
    const own = parts.slice(0, most).map(({ loadId, amps: a }) => `${loadId} ${amps(a)}`);
    const rest = parts.length - own.length;
    return `${supplyId} ${amps(worstA.most)} A: ${own.join(", ")}${rest > 0 ? `, and ${rest} more` : ""}`;
  });
  return lines.join("\n");
}

function wiresText(line: LineResult, wires: readonly WireRating[]): string {
  const numbers = new Map(
    [...line.harnesses.values()].flatMap(({ harness, wires: own }) =>
      own.map((wire) => [wire.id, `${harness.number}-${wire.number}`] as const),
    ),
  );
  const heads = ["wire", "rms A", "limit A", "share", "alone A", "in bundle", "in its air"];
  const rows = wires.map((w) => [
    `${numbers.get(w.wireId) ?? ""} ${w.wireId}`,
    amps(w.rmsA),
    amps(w.limitA),
    percent(w.share),
    amps(w.singleA),
    percent(w.bundleShare),
    percent(w.ambientShare),
  ]);
  return textTable([heads, ...rows], figures(heads.length));
}

function contactsText(contacts: readonly ContactRating[]): string {
  const heads = ["contact", "rms A", "limit A", "share", "rated A", "loaded"];
  const rows = contacts.map((c) => [
    c.pointId,
    amps(c.rmsA),
    amps(c.limitA),
    percent(c.share),
    amps(c.ratedA),
    `${c.loaded.toFixed(1)} of ${c.ways}`,
  ]);
  return textTable([heads, ...rows], figures(heads.length));
}

function fusesText(fuses: readonly FuseRating[]): string {
  const heads = ["fuse", "rated A", "speed", "rms A", "asks for A", "share", "peak A", "I²t of pulses"];
  const rows = fuses.map((f) => [
    f.fuseId ?? f.elementId,
    amps(f.ratedA),
    f.speed,
    amps(f.rmsA),
    amps(f.steadyA),
    percent(fuseShare(f)),
    amps(f.peakA),
    f.neededA2s === null || f.meltingA2s === null ? "-" : percent(f.neededA2s / f.meltingA2s),
  ]);
  return textTable([heads, ...rows], figures(heads.length));
}

function loadsText(loads: readonly LoadVolts[]): string {
  const heads = ["load", "V", "alone V", "together V", "least V", "arrives", "A", "moment"];
  const rows = loads.map((l) => [
    l.loadId,
    volts(l.nominalV),
    volts(l.aloneV.nominal),
    volts(l.worstV.nominal),
    volts(l.worstV.least),
    percent(1 - lostShare(l)),
    amps(l.amps.most),
    l.momentId,
  ]);
  return textTable([heads, ...rows], new Set([1, 2, 3, 4, 5, 6]));
}

function report(line: LineResult, most: number): string {
  const { ratings } = line;
  const wires = tightest(
    ratings.wires.values(),
    (w) => w.share,
    (w) => w.wireId,
  );
  const contacts = tightest(
    ratings.contacts.values(),
    (c) => c.share,
    (c) => c.pointId,
  );
  const fuses = tightest(ratings.fuses.values(), fuseShare, (f) => f.elementId);
  const loads = tightest(line.electric.loads.values(), lostShare, (l) => l.loadId);
  const part = (title: string, of: number, text: string): string =>
    `${title}${of > most ? `, the first ${most} of ${of}` : ""}\n${text}\n`;
  return [
    part("Supplies, at their worst corners", 0, suppliesText(line)),
    part("Worst moment of each supply", 0, momentsText(line, most)),
    part("Wires, tightest first", wires.length, wiresText(line, wires.slice(0, most))),
    part("Contacts, tightest first", contacts.length, contactsText(contacts.slice(0, most))),
    part("Fuses, tightest first", fuses.length, fusesText(fuses.slice(0, most))),
    part("Loads, those that get least of their volts first", loads.length, loadsText(loads.slice(0, most))),
  ].join("\n");
}

/** Endless times are told as null: JSON has no number for them. */
const finite = (_: string, value: unknown): unknown =>
  typeof value === "number" && !Number.isFinite(value) ? null : value;

function asJson({ machine, electric, ratings }: LineResult): string {
  const { id, revision } = machine.book.machine;
  const all = {
    machine: id,
    revision,
    supplies: [...electric.supplies.values()],
    moments: [...electric.moments.values()],
    wires: [...ratings.wires.values()],
    contacts: [...ratings.contacts.values()],
    fuses: [...ratings.fuses.values()],
    coils: [...ratings.coils.values()],
    loads: [...electric.loads.values()],
    unfedIds: electric.unfedIds,
    worst: electric.worst,
  };
  return `${JSON.stringify(all, finite, 2)}\n`;
}

/** Tells what flows: supplies with their worst moments, the tightest wires, contacts and fuses, loads by their drop. */
export const currentsCommand: Command = {
  name: "currents",
  operands: "BOOK",
  about:
    "tell what supplies give, which wires, contacts and fuses are tightest, and what arrives at each load",
  count: [1, 1],
  options: {
    ...BOOK_OPTIONS,
    all: { type: "boolean", about: `list everything, not only the first ${FIRST}` },
    json: { type: "boolean", about: "write all of it as JSON" },
  },
  run: async (call, terminal) => {
    const loaded = await loadBook(call);
    for (const fault of loaded.faults) terminal.err(`${faultText(fault)}\n`);
    if (fatalFaults(loaded.faults).length > 0) return STATUS.failed;
    const line = runLine(loaded);
    if (call.flag("json")) terminal.out(asJson(line));
    else terminal.out(report(line, call.flag("all") ? Number.POSITIVE_INFINITY : FIRST));
    return STATUS.good;
  },
};
