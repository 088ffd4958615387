import { mkdir } from "node:fs/promises";
import { join, resolve } from "node:path";
import {
  type Comparison,
  compareFacts,
  type FactNames,
  factNames,
  type LineResult,
  type MachineFacts,
  machineFacts,
  type SheetFact,
} from "@pinwright/engine";
import {
  changeNote,
  composeChangeNote,
  composeRetrofitKit,
  composeSheets,
  retrofitKit,
  sheetFactOf,
  sheetNames,
  USUAL_OPTIONS,
} from "@pinwright/sheets";
import { renderDocument } from "@pinwright/sheets/print";
import { changeSentence, type Language, sheetWords, subjectName } from "@pinwright/words";
import type { Command, CommandCall } from "../command.ts";
import { faultText } from "../fault-text.ts";
import { BOOK_OPTIONS, fatalFaults, type Loaded, loadBook, runLine } from "../load.ts";
import { writeWhole } from "../manifest.ts";
import { Progress, STATUS, type Terminal, UsageError } from "../terminal.ts";

const ALL = { kinds: [], harnessIds: [] } as const;

function languageOf(text: string | undefined): Language {
  if (text === undefined || text === "en") return "en";
  if (text === "zh") return "zh";
  throw new UsageError(`--language ${text}: expected en or zh`);
}

/** What tells whether sheets are others, each composed in English. */
function sheetsOf(line: LineResult, terminal: Terminal): readonly SheetFact[] {
  const total = sheetNames(line, "en", ALL).length;
  const progress = new Progress(terminal);
  const facts: SheetFact[] = [];
  const options = { ...USUAL_OPTIONS, date: line.machine.book.machine.date };
  for (const { of, kind, document } of composeSheets(line, options, ALL)) {
    facts.push(sheetFactOf(of, kind, document));
    progress.show(facts.length, total, document.fileName);
  }
  progress.end();
  return facts;
}

const indented = (lines: readonly string[]): readonly string[] => lines.map((line) => `  ${line}`);

/** Changes in sentences by what they are about, then what they reach. */
function comparisonText(
  { groups, sheets, harnesses, tools }: Comparison,
  names: FactNames,
  language: Language,
): string {
  const { note } = sheetWords(language).change;
  const count = groups.reduce((sum, { changes }) => sum + changes.length, 0);
  const part = (title: string, lines: readonly string[]): readonly string[] =>
    lines.length === 0 ? [] : ["", title, ...indented(lines)];
  const toolText: Readonly<Record<string, (name: string) => string>> = note.tool;
  return [
    ...groups.flatMap(({ subject, changes }) => [
      subjectName(language, subject),
      ...indented(changes.map((change) => changeSentence(language, subject, change, names))),
    ]),
    note.changes(count),
    ...part(
      note.sheets,
      sheets.map(({ title, number, what, pages }) =>
        [
          `${number}  ${title}: ${note.state[what]}`,
          ...(what === "changed" ? [note.pages(pages.join(", "))] : []),
        ].join(", "),
      ),
    ),
    ...part(
      note.stock,
      harnesses.map(
        ({ number, labels, does, mostMm }) =>
          `H${number} ${labels[language]}: ${does === "longer-tails" ? note.does["longer-tails"](String(Math.ceil(mostMm))) : note.does[does]}`,
      ),
    ),
    ...part(
      note.tools,
      tools.map(({ kind, title, what }) => `${toolText[kind]?.(title) ?? title}: ${note.state[what]}`),
    ),
    "",
  ].join("\n");
}

/** Writes the two sheets of the change. */
async function writeSheets(
  folder: string,
  before: MachineFacts,
  after: MachineFacts,
  comparison: Comparison,
  names: FactNames,
  language: Language,
): Promise<readonly string[]> {
  const [from, to] = [before.machine.revision || "before", after.machine.revision || "after"];
  // Two states of one revision: what comes after is a draft of the next.
  const revisions = { from, to: from === to ? null : to };
  const options = { ...USUAL_OPTIONS, language, date: String(after.rows.machine?.machine?.date ?? "") };
  const documents = [
    composeChangeNote(changeNote(after, comparison, revisions, [], new Map(), "", names), options),
    composeRetrofitKit(retrofitKit(before, after, revisions, ""), options),
  ];
  await mkdir(folder, { recursive: true });
  const files: string[] = [];
  for (const document of documents) {
    const file = join(folder, `${document.fileName}.pdf`);
    await writeWhole(file, await renderDocument(document, "pdf"));
    files.push(file);
  }
  return files;
}

/** The two books; null when one of them cannot be read. */
async function loadBoth(call: CommandCall, terminal: Terminal): Promise<readonly [Loaded, Loaded] | null> {
  const [first = ".", second = "."] = call.positionals;
  const before = await loadBook({ ...call, positionals: [first] });
  const after = await loadBook({ ...call, positionals: [second] });
  const fatal = [...fatalFaults(before.faults), ...fatalFaults(after.faults)];
  for (const fault of fatal) terminal.err(`${faultText(fault)}\n`);
  return fatal.length > 0 ? null : [before, after];
}

/** Tells what differs between two books in the language of the machine, and makes the sheets of the change. */
export const compareCommand: Command = {
  name: "compare",
  operands: "BEFORE AFTER",
  about: "tell what differs between two books of a machine in sentences, and what that reaches",
  count: [2, 2],
  options: {
    ...BOOK_OPTIONS,
    sheets: { type: "boolean", about: "compose the sheets of both, and tell which of them change" },
    out: { type: "string", value: "DIR", about: "write the change note and the retrofit kit there" },
    language: { type: "string", value: "en|zh", about: "language of sentences and sheets; else en" },
    json: { type: "boolean", about: "write the comparison as JSON" },
  },
  run: async (call, terminal) => {
    const language = languageOf(call.text("language"));
    const both = await loadBoth(call, terminal);
    if (both === null) return STATUS.failed;
    const factsOf = (loaded: Loaded): MachineFacts => {
      const line = runLine(loaded);
      return machineFacts(line, call.flag("sheets") ? sheetsOf(line, terminal) : []);
    };
    const [before, after] = [factsOf(both[0]), factsOf(both[1])];
    const comparison = compareFacts(before, after);
    const names = factNames(before, after);
    if (call.flag("json")) terminal.out(`${JSON.stringify(comparison, null, 2)}\n`);
    else terminal.out(comparisonText(comparison, names, language));
    const out = call.text("out");
    if (out !== undefined)
      for (const file of await writeSheets(resolve(out), before, after, comparison, names, language))
        terminal.err(`${file}\n`);
    return STATUS.good;
  },
};
