import {
  type BoardRegisterRow,
  BoardsSolver,
  boardKit,
  boardTests,
  kindCrossing,
  type Machine,
  resolveMachine,
  type SolderWay,
  type StuffingPlan,
  sessionOf,
  solderChoice,
  solderCurve,
  solderShifts,
  stuffingPlan,
  usefulBenches,
} from "@pinwright/engine";
import type { Command, CommandCall } from "../command.ts";
import { faultText } from "../fault-text.ts";
import { BOOK_OPTIONS, fatalFaults, loadBook } from "../load.ts";
import { countOption } from "../number-option.ts";
import { STATUS, UsageError } from "../terminal.ts";
import { textTable } from "../text-table.ts";

/** Numbers of machines at which the minutes of both ways are told. */
const CURVE = [1, 2, 3, 5, 10, 25, 50, 100];
/** By how much times are changed for the sensitivity. */
const SHARE = 0.3;

const shown = (minutes: number): string => minutes.toFixed(minutes < 100 ? 1 : 0);
const crossingText = (count: number | null): string => (count === null ? "never" : String(count));

/** What is asked about, found before anything is told. */
interface Asked {
  readonly machine: Machine;
  readonly register: readonly BoardRegisterRow[];
  readonly machines: number;
  readonly typeId: string | undefined;
  readonly benches: number | undefined;
  readonly way: SolderWay | undefined;
  readonly kit: number | undefined;
}

function askedOf(call: CommandCall, machine: Machine): Asked {
  const { register } = new BoardsSolver().solve(machine).boards;
  const typeId = call.text("type");
  const known = register.map((row) => row.typeId);
  if (typeId !== undefined && !known.includes(typeId))
    throw new UsageError(`--type ${typeId}: the book has no such board type; it has ${known.join(", ")}`);
  const way = call.text("way");
  if (way !== undefined && way !== "hand" && way !== "bath")
    throw new UsageError(`--way ${way}: expected hand or bath`);
  const kit = countOption(call, "kit");
  if (kit !== undefined && typeId === undefined)
    throw new UsageError("--kit: expected --type with the board that it is for");
  return {
    machine,
    register,
    machines: countOption(call, "machines") ?? 1,
    typeId,
    benches: countOption(call, "benches"),
    way,
    kit,
  };
}

function registerText({ machine, register }: Asked): string {
  const rows = register.map((row) => [
    row.typeId,
    row.revision,
    String(row.boardIds.length),
    row.comes === "stuffed" ? String(row.placements) : "-",
    row.comes === "stuffed" ? String(row.joints) : "-",
    row.comes,
    String(boardTests(machine, row.typeId).length),
    row.comes === "stuffed" ? crossingText(kindCrossing(machine, row.typeId)) : "-",
    row.labels.en,
  ]);
  const boards = register.reduce((sum, row) => sum + row.boardIds.length, 0);
  const heads = ["type", "rev", "boards", "parts", "joints", "comes", "tests", "bath from", "name"];
  return [
    textTable([heads, ...rows], new Set([2, 3, 4, 6, 7])),
    "",
    `${boards} boards of ${register.filter((row) => row.boardIds.length > 0).length} types in a machine`,
    "bath from: boards of this type alone in one session from which the solder bath takes fewer minutes",
  ].join("\n");
}

/** The way that is asked for, or the better one when the boards of so many machines are soldered in one session. */
function wayOf({ machine, machines, way }: Asked, typeId: string): SolderWay {
  if (way !== undefined) return way;
  const choice = solderChoice(machine, sessionOf(machine, machines));
  return choice.better === "bath" && choice.bathTypeIds.includes(typeId) ? "bath" : "hand";
}

function planOf(asked: Asked, typeId: string): StuffingPlan {
  const way = wayOf(asked, typeId);
  const benches = asked.benches ?? usefulBenches(asked.machine, typeId, way);
  return stuffingPlan(asked.machine, typeId, benches, way);
}

function stuffingText(asked: Asked, typeId: string): string {
  const plan = planOf(asked, typeId);
  const rows = plan.stages.map((stage) => [
    String(stage.number),
    String(stage.bench),
    stage.when,
    stage.upToMm === null ? "any" : `${stage.upToMm}`,
    stage.seconds.toFixed(0),
    stage.references.join(" "),
  ]);
  const gap =
    plan.busiestBound > 0 ? (100 * (plan.busiestSeconds - plan.busiestBound)) / plan.busiestBound : 0;
  const heads = ["stage", "bench", "when", "up to mm", "s", "references in their order"];
  return [
    `${typeId}: ${plan.order.length} parts, soldered ${plan.way === "hand" ? "by hand" : "in the bath"}`,
    textTable([heads, ...rows], new Set([0, 1, 3, 4])),
    "",
    `benches: ${plan.benches}; busiest ${plan.busiestSeconds.toFixed(1)} s a board; no split is below ${plan.busiestBound.toFixed(1)} s (${gap.toFixed(1)} % less)`,
  ].join("\n");
}

function kitText({ machine }: Asked, typeId: string, boards: number): string {
  const { lines } = boardKit(machine, typeId, boards);
  const rows = lines.map((line) => [
    line.box === 0 ? "-" : String(line.box),
    String(line.total),
    line.partId,
    line.value,
    String(line.perBoard),
    String(line.needed),
    String(line.extra),
    line.pack === null ? "no price known" : `${line.pack.packs} x ${line.pack.size} ${line.pack.supplierId}`,
    line.references.join(" "),
  ]);
  const heads = ["box", "lay out", "part", "value", "a board", "needed", "extra", "packs", "references"];
  return `${typeId}: kit of ${boards} boards\n${textTable([heads, ...rows], new Set([0, 1, 4, 5, 6]))}`;
}

function solderText({ machine, machines, typeId }: Asked): string {
  const session = sessionOf(machine, machines, typeId === undefined ? undefined : [typeId]);
  const choice = solderChoice(machine, session);
  const boards = session.boards.reduce((sum, { count }) => sum + count, 0);
  const parts = ["setup", "stuff", "solder", "mask", "wash", "mend", "afterWash", "total"] as const;
  const minutes = parts.map((part) => [part, shown(choice.hand[part]), shown(choice.bath[part])]);
  const curve = solderCurve(machine, session, CURVE).map((point) => [
    String(point.machines),
    String(point.boards),
    shown(point.handMinutes),
    shown(point.bathMinutes),
  ]);
  const shifts = solderShifts(machine, session, SHARE).map((shift) => [
    shift.settings.join(" + "),
    crossingText(shift.shorter),
    crossingText(shift.longer),
  ]);
  const percent = (SHARE * 100).toFixed(0);
  const from =
    choice.crossing === null
      ? "the bath pays at no quantity up to 10 000 machines"
      : `the bath pays from ${choice.crossing} machines (${choice.crossingBoards} boards) on`;
  return [
    `${boards} boards of ${machines} machines in one session: better ${choice.better === "hand" ? "by hand" : "in the bath"}; ${from}`,
    `into the bath: ${choice.bathTypeIds.join(" ")}`,
    "",
    textTable([["minutes of work", "hand", "bath"], ...minutes], new Set([1, 2])),
    "",
    textTable([["machines", "boards", "hand min", "bath min"], ...curve], new Set([0, 1, 2, 3])),
    "",
    textTable(
      [[`machines at the crossing, times ${percent} %`, "shorter", "longer"], ...shifts],
      new Set([1, 2]),
    ),
  ].join("\n");
}

function asJson(asked: Asked, isSolder: boolean): string {
  const { machine, register, machines, typeId, kit } = asked;
  const session = sessionOf(machine, machines, typeId === undefined ? undefined : [typeId]);
  const told = {
    machine: machine.book.machine.id,
    revision: machine.book.machine.revision,
    register: typeId === undefined ? register : register.filter((row) => row.typeId === typeId),
    ...(typeId === undefined ? {} : { plan: planOf(asked, typeId) }),
    ...(typeId === undefined || kit === undefined ? {} : { kit: boardKit(machine, typeId, kit) }),
    ...(isSolder
      ? {
          session,
          choice: solderChoice(machine, session),
          curve: solderCurve(machine, session, CURVE),
          shifts: solderShifts(machine, session, SHARE),
        }
      : {}),
  };
  return `${JSON.stringify(told, null, 2)}\n`;
}

/** Tells the register of boards, how one is stuffed and kitted, and whether boards go into the solder bath. */
export const boardsCommand: Command = {
  name: "boards",
  operands: "BOOK",
  about: "list the boards; stuffing order and kit of one; by hand or in the solder bath",
  count: [1, 1],
  options: {
    ...BOOK_OPTIONS,
    type: { type: "string", value: "ID", about: "tell how this board type is stuffed" },
    benches: {
      type: "string",
      value: "N",
      about: "people who stuff it in line; else those of the board benches who have a minute of work on it",
    },
    way: {
      type: "string",
      value: "hand|bath",
      about: "how it is soldered; else the better way for --machines",
    },
    kit: { type: "string", value: "N", about: "tell what is laid out for so many boards of --type" },
    solder: {
      type: "boolean",
      about: "compare hand and bath for the boards of --machines, or those of --type",
    },
    machines: {
      type: "string",
      value: "N",
      about: "machines whose boards are soldered in one session; else 1",
    },
    json: { type: "boolean", about: "write all of it as JSON" },
  },
  run: async (call, terminal) => {
    const loaded = await loadBook(call);
    for (const fault of loaded.faults) terminal.err(`${faultText(fault)}\n`);
    if (fatalFaults(loaded.faults).length > 0) return STATUS.failed;
    const asked = askedOf(call, resolveMachine(loaded.book, loaded.shop, loaded.options));
    const { typeId, kit } = asked;
    if (call.flag("json")) terminal.out(asJson(asked, call.flag("solder")));
    else if (call.flag("solder")) terminal.out(`${solderText(asked)}\n`);
    else if (typeId === undefined) terminal.out(`${registerText(asked)}\n`);
    else if (kit === undefined) terminal.out(`${stuffingText(asked, typeId)}\n`);
    else terminal.out(`${kitText(asked, typeId, kit)}\n`);
    return STATUS.good;
  },
};
