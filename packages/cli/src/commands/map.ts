import {
  checkMatrixAndProgram,
  type Finding,
  type ProgramPoint,
  programMap,
  programMapText,
  resolveMachine,
} from "@pinwright/engine";
import { gridCsv } from "@pinwright/sheets/print";
import { findingWords } from "@pinwright/words";
import type { Command } from "../command.ts";
import { faultText } from "../fault-text.ts";
import { BOOK_OPTIONS, fatalFaults, loadBook } from "../load.ts";
import { sha256, writeWhole } from "../manifest.ts";
import { STATUS } from "../terminal.ts";

/** Columns of the CSV, in their order. */
const COLUMNS: readonly (readonly [string, (point: ProgramPoint) => string | number | boolean | null])[] = [
  ["device", (p) => p.deviceId],
  ["label", (p) => p.labels.en],
  ["label_zh", (p) => p.labels.zh],
  ["number", (p) => p.number],
  ["element", (p) => p.elementId.slice(p.deviceId.length + 1)],
  ["board", (p) => p.boardId],
  ["address", (p) => p.address],
  ["terminated", (p) => p.terminated],
  ["connector", (p) => p.connector],
  ["pin", (p) => p.pin],
  ["kind", (p) => p.kind],
  ["point", (p) => p.control],
  ["polarity", (p) => p.polarity],
  ["closed_at_rest", (p) => p.closedAtRest],
  ["acts", (p) => p.acts],
  ["pulse_ms", (p) => p.pulseMs],
  ["repeat_ms", (p) => p.repeatMs],
  ["hold_ms", (p) => p.holdMs],
  ["hold_duty_pct", (p) => p.holdDutyPct],
  ["timeout_ms", (p) => p.timeoutMs],
  ["supply_v", (p) => p.supplyV],
  ["through", (p) => p.through.join(" ")],
];

/** The map as CSV; every row carries the version, so that no part of it is taken for another one's. */
function asCsv(points: readonly ProgramPoint[], version: string): string {
  const cell = (value: string | number | boolean | null): string | number =>
    value === null ? "" : typeof value === "boolean" ? (value ? "yes" : "no") : value;
  return gridCsv({
    header: [...COLUMNS.map(([name]) => name), "map_version"],
    rows: points.map((point) => [...COLUMNS.map(([, of]) => cell(of(point))), version]),
  });
}

const findingText = (finding: Finding): string =>
  `${finding.severity} ${finding.rule}: ${findingWords("en", finding.rule).say(finding)}\n`;

/** Writes which point of which board every device hangs on, for the game program. */
export const mapCommand: Command = {
  name: "map",
  operands: "BOOK",
  about: "write the map for the game program: device, board, address, point, polarity, pulse, hold; as CSV",
  count: [1, 1],
  options: {
    ...BOOK_OPTIONS,
    json: { type: "boolean", about: "write it as JSON" },
    out: { type: "string", value: "FILE", about: "write it into a file; else to the terminal" },
  },
  run: async (call, terminal) => {
    const loaded = await loadBook(call);
    for (const fault of loaded.faults) terminal.err(`${faultText(fault)}\n`);
    if (fatalFaults(loaded.faults).length > 0) return STATUS.failed;
    const machine = resolveMachine(loaded.book, loaded.shop, loaded.options);
    const points = programMap(machine);
    const version = sha256(programMapText(points));
    const findings = checkMatrixAndProgram(machine);
    const { id, revision } = loaded.book.machine;
    const text = call.flag("json")
      ? `${JSON.stringify({ machine: id, revision, version, points }, null, 2)}\n`
      : asCsv(points, version);
    const out = call.text("out");
    if (out === undefined) terminal.out(text);
    else await writeWhole(out, text);
    for (const finding of findings) terminal.err(findingText(finding));
    const devices = new Set(points.map((point) => point.deviceId)).size;
    terminal.err(`${points.length} points of ${devices} devices, version ${version}\n`);
    return loaded.faults.length > 0 || findings.some((f) => f.severity === "error")
      ? STATUS.found
      : STATUS.good;
  },
};
