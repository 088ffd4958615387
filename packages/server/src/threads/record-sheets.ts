import { writeFile } from "node:fs/promises";
import { rawBookOf, rawShopOf, readRawBook, readRawShop } from "@pinwright/book";
import { foldUnits, type Machine, resolveMachine } from "@pinwright/engine";
import {
  composeCrateChecklist,
  composeTestCertificate,
  composeTransportList,
  composeUnitLabels,
  type LabelPaper,
  type SheetDocument,
  type SheetOptions,
  USUAL_OPTIONS,
  USUAL_ROLL,
} from "@pinwright/sheets";
import { renderDocument } from "@pinwright/sheets/print";
import { cellsOfJson } from "./cells-json.ts";
import type { ResultOf, Task } from "./messages.ts";
import { Refusal } from "./refusal.ts";
import { judgeUnit } from "./unit-gate.ts";

type SheetTask = Extract<Task, { kind: "record-sheet" }>;
type Order<S extends SheetTask["order"]["sheet"]> = Extract<SheetTask["order"], { sheet: S }>;

/** The machine of a book without its line: names are all that labels and lists need. */
function machineOf({ tables, shop }: Order<"labels" | "transport">): Machine {
  const { book } = readRawBook(rawBookOf(cellsOfJson(tables)).raw);
  return resolveMachine(book, readRawShop(rawShopOf(cellsOfJson(shop)).raw, new Set()).shop);
}

function paperOf({ paper, start, widthMm, heightMm }: Order<"labels">): LabelPaper {
  if (paper === "a4") return { kind: "a4", start };
  if (USUAL_ROLL.kind !== "roll") return USUAL_ROLL;
  const { size } = USUAL_ROLL;
  return { kind: "roll", size: { widthMm: widthMm ?? size.widthMm, heightMm: heightMm ?? size.heightMm } };
}

/** The certificate or the checklist of a unit; or keys of lines whose tables must be given. */
function ofUnit(
  task: SheetTask,
  order: Order<"certificate" | "crate">,
  options: SheetOptions,
): SheetDocument | readonly string[] {
  const judged = judgeUnit(order.given);
  if ("cold" in judged) return judged.cold;
  const { unit } = order.given;
  const { units, blocks, line } = judged;
  const begun = units.get(unit)?.begun ?? null;
  if (begun === null)
    throw new Refusal(`${unit} was never given a serial number: there is nothing to say of it.`);
  if (line === null) throw new Refusal(`The book ${begun.book}, which ${unit} was built to, is not here.`);
  const input = { line, bookId: begun.book, units, blocks, options, people: new Map(task.people) };
  const document =
    order.sheet === "crate"
      ? composeCrateChecklist(input, unit)
      : composeTestCertificate(
          { ...input, heads: order.heads, instruments: new Map(order.instruments) },
          unit,
        );
  if (document === null) throw new Refusal(`No record names ${unit}.`);
  return document;
}

function documentOf(task: SheetTask): SheetDocument | readonly string[] {
  const { order, language, date, creator } = task;
  const options: SheetOptions = {
    ...USUAL_OPTIONS,
    language,
    date,
    creator: creator === "" ? USUAL_OPTIONS.creator : creator,
    // A label and a list say what is, and no more: nobody releases them.
    state: "released",
  };
  if (order.sheet === "certificate" || order.sheet === "crate") return ofUnit(task, order, options);
  const input = { line: { machine: machineOf(order) }, bookId: order.book, options };
  if (order.sheet === "labels") return composeUnitLabels(input, paperOf(order), order.units);
  const people = new Map(task.people);
  return composeTransportList({ ...input, units: foldUnits(order.facts), people }, order.transport);
}

/** Makes a sheet of the floor's records as a PDF. */
export async function makeRecordSheet(task: SheetTask): Promise<ResultOf<"record-sheet">> {
  const document = documentOf(task);
  if (!("pages" in document)) return { cold: [...document], name: "" };
  await writeFile(task.path, await renderDocument(document, "pdf"), { flag: "wx", mode: 0o600 });
  return { cold: [], name: `${document.fileName}.pdf` };
}
