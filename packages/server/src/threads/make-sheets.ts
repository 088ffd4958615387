import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { type Book, rawBookOf, rawShopOf, readRawBook, readRawShop, type Shop } from "@pinwright/book";
import { Line, type RunsPlan } from "@pinwright/engine";
import {
  composeRunSheets,
  composeSheets,
  type RunSheetsChoice,
  runSheetNames,
  type SheetDocument,
  sheetNames,
  USUAL_OPTIONS,
} from "@pinwright/sheets";
import { formatsOf, renderDocument } from "@pinwright/sheets/print";
import { cellsOfJson } from "./cells-json.ts";
import type { Progress, Task } from "./messages.ts";
import { Refusal } from "./refusal.ts";
import { runsPlan } from "./runs-plan.ts";
import { ZipFile } from "./zip-file.ts";

type SheetsTask = Extract<Task, { kind: "sheets" }>;

/** A name that unpacks beside its neighbours on every system: ids of a faulty book may hold anything. */
const fileName = (text: string): string =>
  text
    .replace(/[^\p{L}\p{N}._-]/gu, "_")
    .replace(/^\.+/, "_")
    .slice(0, 150);

interface RunSheets {
  readonly plan: RunsPlan;
  readonly choice: RunSheetsChoice;
  readonly today: string;
}

/** The plan whose sheets are wanted; null: none of runs are. */
function runSheetsOf({ runs }: SheetsTask, book: Book, shop: Shop): RunSheets | null {
  if (runs === null) return null;
  const { kinds, run, today } = runs;
  const plan = runsPlan(book, shop, today);
  if (run !== null && !plan.runs.some(({ runId }) => runId === run))
    throw new Refusal(`There is no run "${run}" of this book.`);
  return {
    plan,
    today,
    choice: { ...(kinds.length === 0 ? {} : { kinds }), ...(run === null ? {} : { runId: run }) },
  };
}

/** Makes the sheets of a task, each file under a number, and tells of every one. */
export async function makeSheets(task: SheetsTask, tell: (progress: Progress) => void): Promise<void> {
  tell({ type: "progress", done: 0, total: 0, now: "book" });
  const { book } = readRawBook(rawBookOf(cellsOfJson(task.tables)).raw);
  const { shop } = readRawShop(rawShopOf(cellsOfJson(task.shop)).raw, new Set());
  const line = new Line().run(book, shop);
  const unknown = task.harnessIds.find((id) => !line.harnesses.has(id));
  if (unknown !== undefined) throw new Refusal(`The book has no harness "${unknown}".`);
  const choice = { kinds: task.kinds, harnessIds: task.harnessIds };
  const runs = runSheetsOf(task, book, shop);
  const isOfRunsOnly = runs !== null && task.kinds.length === 0;
  const total =
    (isOfRunsOnly ? 0 : sheetNames(line, task.language, choice).length) +
    (runs === null ? 0 : runSheetNames(runs.plan, task.language, runs.choice).length);
  const options = {
    ...USUAL_OPTIONS,
    language: task.language,
    machines: task.machines,
    revision: task.revision,
    address: task.address,
    date: line.machine.book.machine.date,
    creator: task.creator === "" ? USUAL_OPTIONS.creator : task.creator,
  };
  const zip = new ZipFile(join(task.folder, "all.zip"));
  const names = new Set<string>();
  let bytesLeft = task.mostBytes;
  let done = 0;
  const documents = function* (): Generator<SheetDocument, void> {
    if (!isOfRunsOnly) for (const { document } of composeSheets(line, options, choice)) yield document;
    if (runs !== null)
      yield* composeRunSheets(runs.plan, line, { ...options, date: runs.today }, runs.choice);
  };
  for (const document of documents()) {
    tell({ type: "progress", done, total, now: document.fileName });
    for (const format of formatsOf(document)) {
      if (task.formats.length > 0 && !task.formats.includes(format)) continue;
      const bytes = await renderDocument(document, format);
      bytesLeft -= bytes.byteLength;
      if (bytesLeft < 0) throw new Refusal("These are too many sheets at once. Make them in several parts.");
      const path = String(names.size + 1);
      let name = `${fileName(document.fileName)}.${format}`;
      for (let n = 2; names.has(name); n++) name = `${fileName(document.fileName)}-${n}.${format}`;
      names.add(name);
      writeFileSync(join(task.folder, path), bytes, { flag: "wx", mode: 0o600 });
      zip.add(name, bytes);
      const file = { name, title: document.title, bytes: bytes.byteLength, body: document.bodyHash, path };
      tell({ type: "progress", done, total, now: document.fileName, file });
    }
    done++;
  }
  zip.end();
  tell({ type: "progress", done, total, now: "" });
}
