import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { rawBookOf, rawShopOf, readRawBook, readRawShop } from "@pinwright/book";
import { canonicalJson } from "@pinwright/contract";
import { type Finding, Line, type LineResult, type SheetFact } from "@pinwright/engine";
import {
  composeSheets,
  keepSheet,
  type SheetDocument,
  sheetFactOf,
  sheetNames,
  USUAL_OPTIONS,
} from "@pinwright/sheets";
import { cellsText } from "../releases/cells-text.ts";
import { EXTRAS } from "../releases/extras.ts";
import { keptShop } from "../releases/kept-shop.ts";
import { cellsOfJson } from "./cells-json.ts";
import type { Progress, ResultOf, Task } from "./messages.ts";
import { Refusal } from "./refusal.ts";

type ReleaseTask = Extract<Task, { kind: "release" }>;
type Made = ResultOf<"release">;

const LANGUAGES = ["en", "zh"] as const;
/** Findings that a refusal names; the rest is counted. */
const NAMED = 5;

const ALL = { kinds: [], harnessIds: [] } as const;

/** Open errors: nothing is released over them. */
function mustBeSound(line: LineResult): void {
  const errors = line.findings.filter(({ severity, accepted }) => severity === "error" && accepted === null);
  if (errors.length === 0) return;
  const named = errors.slice(0, NAMED).map(({ rule, subjects }) => `${rule} (${subjects.join(", ")})`);
  const more = errors.length > NAMED ? ` and ${errors.length - NAMED} more` : "";
  throw new Refusal(
    `${errors.length} ${errors.length === 1 ? "error stands" : "errors stand"} in the way: ${named.join("; ")}${more}. Mend or accept them in Findings, then release again.`,
  );
}

const countOf = (findings: readonly Finding[]): Made["findings"] => {
  const open = (of: Finding["severity"]): number =>
    findings.filter(({ severity, accepted }) => severity === of && accepted === null).length;
  return { error: open("error"), warning: open("warning"), note: open("note") };
};

const acceptedOf = (findings: readonly Finding[]): Made["accepted"] =>
  findings.flatMap(({ rule, severity, subjects, accepted }) =>
    accepted === null
      ? []
      : [{ rule, severity, subjects: [...subjects], by: accepted.by, reason: accepted.reason }],
  );

/** Writes what a release holds into numbered files. */
class Items {
  readonly made: Made["items"] = [];
  readonly #folder: string;

  constructor(folder: string) {
    this.#folder = folder;
  }

  add(item: Omit<Made["items"][number], "path">, text: string | Uint8Array): void {
    const path = String(this.made.length + 1);
    writeFileSync(join(this.#folder, path), text, { flag: "wx", mode: 0o600 });
    this.made.push({ ...item, path });
  }

  sheet(of: string, kind: string, language: string, document: SheetDocument): void {
    const { body, frame } = keepSheet(document);
    this.add({ kind: "body", id: document.id, about: {} }, JSON.stringify(body));
    const about = {
      ...{ of, kind, language, title: document.title, number: document.identity.number },
      ...{ pages: String(document.pages.length), bodyHash: document.bodyHash },
    };
    this.add({ kind: "frame", id: document.id, about }, JSON.stringify(frame));
  }
}

/** Makes all that a release holds: the book, what of the shop it uses, results, and every sheet in both languages. */
export async function makeRelease(task: ReleaseTask, tell: (progress: Progress) => void): Promise<Made> {
  tell({ type: "progress", done: 0, total: 0, now: "book" });
  const tables = cellsOfJson(task.tables);
  const shopTables = cellsOfJson(task.shop);
  const { book, faults } = readRawBook(rawBookOf(tables).raw);
  if (faults.length > 0) {
    const [first] = faults;
    throw new Refusal(
      `The book has ${faults.length} ${faults.length === 1 ? "fault" : "faults"} (the first in ${first?.file ?? ""}, row ${first?.row ?? "–"}, column ${first?.column ?? "–"}). Mend them in Findings, then release again.`,
    );
  }
  const { shop } = readRawShop(rawShopOf(shopTables).raw, new Set());
  const line = new Line().run(book, shop);
  mustBeSound(line);
  const items = new Items(task.folder);
  items.add({ kind: "tables", id: "book", about: {} }, cellsText(tables));
  items.add({ kind: "shop", id: "shop", about: {} }, cellsText(keptShop(shopTables)));
  items.add({ kind: "results", id: "findings", about: {} }, canonicalJson(line.findings));
  const total = LANGUAGES.reduce((sum, language) => sum + sheetNames(line, language, ALL).length, 0);
  const sheets: SheetFact[] = [];
  let done = 0;
  for (const language of LANGUAGES) {
    const options = {
      ...USUAL_OPTIONS,
      ...{ language, revision: task.name, state: "released" as const, address: task.address },
      date: task.date,
      creator: task.creator === "" ? USUAL_OPTIONS.creator : task.creator,
    };
    for (const { of, kind, document } of composeSheets(line, options, ALL)) {
      tell({ type: "progress", done, total, now: document.fileName });
      items.sheet(of, kind, language, document);
      if (language === "en") sheets.push(sheetFactOf(of, kind, document));
      done++;
    }
    for (const extra of EXTRAS)
      for (const { id, of, kind, document } of extra.sheets?.(line, options) ?? []) {
        tell({ type: "progress", done, total, now: id });
        items.sheet(of, kind, language, document);
        if (language === "en") sheets.push(sheetFactOf(of, kind, document));
      }
  }
  for (const extra of EXTRAS)
    for (const { kind, id, about, text } of extra.items?.({
      line,
      sheets,
      revision: task.name,
      built: task.built,
    }) ?? []) {
      tell({ type: "progress", done, total, now: id });
      items.add({ kind, id, about }, text);
    }
  tell({ type: "progress", done: total, total, now: "" });
  return { items: items.made, findings: countOf(line.findings), accepted: acceptedOf(line.findings) };
}
