import { mkdir, rm } from "node:fs/promises";
import { join, resolve } from "node:path";
import type { LineResult } from "@pinwright/engine";
import {
  ASSEMBLY_SHEET_KINDS,
  composeSheets,
  HARNESS_SHEET_KINDS,
  MACHINE_SHEET_KINDS,
  MAKING_SHEET_KINDS,
  type MadeSheet,
  SHEET_KINDS,
  sheetNames,
  USUAL_OPTIONS,
} from "@pinwright/sheets";
import { formatsOf, renderDocument, SHEET_FORMATS, type SheetFormat } from "@pinwright/sheets/print";
import type { SheetLanguage } from "@pinwright/words";
import type { Command, CommandCall } from "../command.ts";
import { faultText } from "../fault-text.ts";
import { BOOK_OPTIONS, fatalFaults, loadBook, runLine } from "../load.ts";
import {
  isThere,
  MANIFEST,
  type Manifest,
  type ManifestEntry,
  readManifest,
  sha256,
  writeWhole,
} from "../manifest.ts";
import { countOption } from "../number-option.ts";
import { Progress, STATUS, type Terminal, UsageError } from "../terminal.ts";

/** The words of a list that an option names, each of them one of `known`. */
function chosen<T extends string>(call: CommandCall, option: string, known: readonly T[]): readonly T[] {
  return call.texts(option).map((text) => {
    const found = known.find((word) => word === text);
    if (found === undefined) throw new UsageError(`--${option} ${text}: expected one of ${known.join(", ")}`);
    return found;
  });
}

const LANGUAGES: readonly SheetLanguage[] = ["en", "zh", "both"];

/** Files of one sheet: written unless the same body is there already, in every format that is wanted. */
async function writeSheet(
  folder: string,
  { of, document }: MadeSheet,
  formats: readonly SheetFormat[],
  before: ReadonlyMap<string, ManifestEntry>,
): Promise<{ readonly entries: readonly ManifestEntry[]; readonly written: number }> {
  const entries: ManifestEntry[] = [];
  let written = 0;
  for (const format of formatsOf(document)) {
    if (!formats.includes(format)) continue;
    const file = `${of}/${document.fileName}.${format}`;
    const old = before.get(file);
    if (old !== undefined && old.body === document.bodyHash && (await isThere(join(folder, file)))) {
      entries.push(old);
      continue;
    }
    const bytes = await renderDocument(document, format);
    await writeWhole(join(folder, file), bytes);
    written++;
    entries.push({
      file,
      sheet: document.id,
      title: document.title,
      body: document.bodyHash,
      bytes: sha256(bytes),
    });
  }
  return { entries, written };
}

/** Files of an earlier run that this run, which made everything, no longer makes. */
async function removeStale(
  folder: string,
  before: Manifest | null,
  now: readonly ManifestEntry[],
): Promise<number> {
  const kept = new Set(now.map((entry) => entry.file));
  const stale = (before?.entries ?? []).filter((entry) => !kept.has(entry.file));
  for (const entry of stale) await rm(join(folder, entry.file), { force: true });
  return stale.length;
}

async function makeSheets(result: LineResult, call: CommandCall, terminal: Terminal): Promise<void> {
  const folder = resolve(call.text("out") ?? join("out", result.machine.book.machine.id));
  const kinds = chosen(call, "kind", SHEET_KINDS);
  const formats = chosen(call, "format", SHEET_FORMATS);
  const harnessIds = chosen(call, "harness", [...result.harnesses.keys()]);
  const [language = "both"] = chosen(call, "language", LANGUAGES);
  const all = kinds.length === 0 && formats.length === 0 && harnessIds.length === 0;
  const before = await readManifest(folder);
  const known = new Map((before?.entries ?? []).map((entry) => [entry.file, entry]));
  const options = {
    ...USUAL_OPTIONS,
    language,
    date: call.text("date") ?? result.machine.book.machine.date,
    creator: call.text("by") ?? USUAL_OPTIONS.creator,
    machines: countOption(call, "machines") ?? USUAL_OPTIONS.machines,
  };
  await mkdir(folder, { recursive: true });
  const choice = { kinds, harnessIds };
  const total = sheetNames(result, language, choice).length;
  const progress = new Progress(terminal);
  const entries: ManifestEntry[] = [];
  const wantedFormats = formats.length > 0 ? formats : SHEET_FORMATS;
  let written = 0;
  let done = 0;
  for (const sheet of composeSheets(result, options, choice)) {
    const made = await writeSheet(folder, sheet, wantedFormats, known);
    entries.push(...made.entries);
    written += made.written;
    done++;
    progress.show(done, total, sheet.document.fileName);
  }
  progress.end();
  const stale = all ? await removeStale(folder, before, entries) : 0;
  const made = new Set(entries.map((entry) => entry.file));
  const others = all ? [] : (before?.entries ?? []).filter((entry) => !made.has(entry.file));
  const { id, revision } = result.machine.book.machine;
  const listed = [...entries, ...others].sort((a, b) => (a.file < b.file ? -1 : 1));
  await writeWhole(
    join(folder, MANIFEST),
    `${JSON.stringify({ machine: id, revision, entries: listed }, null, 2)}\n`,
  );
  terminal.out(
    `${done} sheets in ${folder}: ${entries.length} files, ${written} written, ${entries.length - written} unchanged${stale > 0 ? `, ${stale} removed` : ""}\n`,
  );
}

/** Makes the sheets of the whole machine and of its harnesses from a book. */
export const sheetsCommand: Command = {
  name: "sheets",
  operands: "BOOK",
  about: "make the sheets of the whole machine, and those that its harnesses are built and tested from",
  count: [1, 1],
  options: {
    ...BOOK_OPTIONS,
    out: { type: "string", value: "DIR", about: "output folder; else out/MACHINE" },
    kind: {
      type: "string",
      multiple: true,
      value: "KIND",
      about: `only these: ${HARNESS_SHEET_KINDS.join(", ")}; of the whole machine: ${MACHINE_SHEET_KINDS.join(", ")}; of its assembly: ${ASSEMBLY_SHEET_KINDS.join(", ")}; of panels, boards and parts: ${MAKING_SHEET_KINDS.join(", ")}`,
    },
    harness: {
      type: "string",
      multiple: true,
      value: "ID",
      about: "only these harnesses, and nothing of the whole machine",
    },
    format: {
      type: "string",
      multiple: true,
      value: "FORMAT",
      about: `only these: ${SHEET_FORMATS.join(", ")}`,
    },
    language: { type: "string", value: "en|zh|both", about: "language of the sheets; else both" },
    date: { type: "string", value: "DATE", about: "date of issue as year-month-day; else the book's" },
    machines: {
      type: "string",
      value: "N",
      about: "machines that are made together: panels are cut and boards are kitted for so many; else 1",
    },
    by: { type: "string", value: "NAME", about: "who made them, for the title block" },
  },
  run: async (call, terminal) => {
    const loaded = await loadBook(call);
    for (const fault of loaded.faults.slice(0, 20)) terminal.err(`${faultText(fault)}\n`);
    if (loaded.faults.length > 20) terminal.err(`… and ${loaded.faults.length - 20} more faults\n`);
    if (fatalFaults(loaded.faults).length > 0) return STATUS.failed;
    const result = runLine(loaded);
    await makeSheets(result, call, terminal);
    const errors = result.findings.filter((f) => f.severity === "error" && f.accepted === null).length;
    if (loaded.faults.length + errors > 0) {
      terminal.err(
        `The book has ${loaded.faults.length} faults and ${errors} errors: see "pinwright check". Do not build from these sheets before they are mended.\n`,
      );
      return STATUS.found;
    }
    return STATUS.good;
  },
};
