import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { rawBookOf, rawShopOf, readRawBook, readRawShop } from "@pinwright/book";
import { canonicalJson } from "@pinwright/contract";
import {
  compareFacts,
  effectsOn,
  factNames,
  Line,
  type MachineFacts,
  machineFacts,
  readMachineFacts,
  type SheetFact,
} from "@pinwright/engine";
import {
  changeNote,
  composeChangeNote,
  composeRetrofitKit,
  composeSheets,
  keptUnits,
  retrofitKit,
  type SheetDocument,
  sheetFactOf,
  sheetNames,
  USUAL_OPTIONS,
} from "@pinwright/sheets";
import { renderDocument } from "@pinwright/sheets/print";
import { cellsOfJson } from "./cells-json.ts";
import type { Progress, Task } from "./messages.ts";
import { ZipFile } from "./zip-file.ts";

type CompareTask = Extract<Task, { kind: "compare" }>;
type Tell = (progress: Progress) => void;

const decoder = new TextDecoder();

/** Facts of the draft that was looked at last: whoever asks which sheets change asks for the change note next. */
let known: { readonly key: string; readonly facts: MachineFacts } | null = null;

/** Facts of the book as it is now, with its sheets in English, as a release keeps them. */
function draftFacts({ tables, shop: shopTables, compare: { key } }: CompareTask, tell: Tell): MachineFacts {
  if (known?.key === key) return known.facts;
  tell({ type: "progress", done: 0, total: 0, now: "book" });
  const { book } = readRawBook(rawBookOf(cellsOfJson(tables)).raw);
  const { shop } = readRawShop(rawShopOf(cellsOfJson(shopTables)).raw, new Set());
  const line = new Line().run(book, shop);
  const all = { kinds: [], harnessIds: [] };
  const total = sheetNames(line, "en", all).length;
  const sheets: SheetFact[] = [];
  const options = { ...USUAL_OPTIONS, language: "en" as const, date: book.machine.date };
  for (const { of, kind, document } of composeSheets(line, options, all)) {
    sheets.push(sheetFactOf(of, kind, document));
    tell({ type: "progress", done: sheets.length, total, now: document.fileName });
  }
  const facts = machineFacts(line, sheets);
  known = { key, facts };
  return facts;
}

/** Makes what is asked of a comparison, each file under a number, and tells of every one. */
export async function makeCompare(task: CompareTask, tell: Tell): Promise<void> {
  const { compare, language } = task;
  const read = (bytes: Uint8Array): MachineFacts => readMachineFacts(JSON.parse(decoder.decode(bytes)));
  const before = read(compare.from.facts);
  const after = compare.to === null ? draftFacts(task, tell) : read(compare.to.facts);
  const zip = new ZipFile(join(task.folder, "all.zip"));
  const total = compare.make.length;
  let made = 0;
  const keep = (name: string, title: string, body: string, bytes: Uint8Array): void => {
    const path = String(++made);
    writeFileSync(join(task.folder, path), bytes, { flag: "wx", mode: 0o600 });
    zip.add(name, bytes);
    const file = { name, title, bytes: bytes.byteLength, body, path };
    tell({ type: "progress", done: made, total, now: name, file });
  };
  const print = async (document: SheetDocument): Promise<void> =>
    keep(
      `${document.fileName}.pdf`,
      document.title,
      document.bodyHash,
      await renderDocument(document, "pdf"),
    );
  const names = { from: compare.from.name, to: compare.to?.name ?? null };
  const options = {
    ...USUAL_OPTIONS,
    language,
    date: compare.today,
    creator: task.creator === "" ? USUAL_OPTIONS.creator : task.creator,
    revision: names.to ?? "",
  };
  const comparison = compareFacts(before, after);
  const affected = effectsOn(comparison, names.to, compare.units);
  const revisionOf = new Map(compare.units.map(({ unit, revision }) => [unit, revision]));
  const machines = affected.filter(({ what }) => what === "machine");
  const ofFrom = keptUnits(machines, revisionOf).find(({ revision }) => revision === names.from);
  for (const what of compare.make) {
    if (what === "facts")
      keep("facts.json", "facts.json", "", new TextEncoder().encode(canonicalJson(after)));
    else if (what === "change-note")
      await print(
        composeChangeNote(
          changeNote(
            after,
            comparison,
            names,
            affected,
            revisionOf,
            compare.to?.note ?? "",
            factNames(before, after),
          ),
          options,
        ),
      );
    else await print(composeRetrofitKit(retrofitKit(before, after, names, ofFrom?.list ?? ""), options));
  }
  zip.end();
  tell({ type: "progress", done: total, total, now: "" });
}
