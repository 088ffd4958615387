import { createHash } from "node:crypto";
import { writeFile } from "node:fs/promises";
import { rawBookOf, rawShopOf, readRawBook, readRawShop } from "@pinwright/book";
import { packZip } from "@pinwright/book/io";
import { type Machine, type PackFault, resolveMachine, sendOutPack } from "@pinwright/engine";
import { composeCheckSheet, USUAL_OPTIONS } from "@pinwright/sheets";
import { renderDocument, sendOutFiles } from "@pinwright/sheets/print";
import { cellsOfJson } from "./cells-json.ts";
import type { Task } from "./messages.ts";
import { Refusal } from "./refusal.ts";

/** Why a pack does not go out, and what to do. */
const FAULT_TEXTS: Readonly<Record<PackFault["what"], (fault: PackFault) => string>> = {
  "part-unknown": ({ partId }) => `The book has no part "${partId}".`,
  "no-revision": ({ partId }) => `${partId} has no revision: say which one is made now.`,
  "no-drawing": ({ partId }) => `${partId} has no drawing of its present revision: attach one.`,
  missing: ({ partId, file }) => `The file ${file} of ${partId} is not there: upload it.`,
  differs: ({ partId, file }) =>
    `The file ${file} of ${partId} is not the one that was attached: put the right one back.`,
};

function machineOf({ tables, shop }: Pick<Extract<Task, { kind: "send-out" }>, "tables" | "shop">): Machine {
  const { book } = readRawBook(rawBookOf(cellsOfJson(tables)).raw);
  return resolveMachine(book, readRawShop(rawShopOf(cellsOfJson(shop)).raw, new Set()).shop);
}

/** Makes a first-article check as a PDF. */
export async function makeCheckSheet(task: Extract<Task, { kind: "check-sheet" }>): Promise<void> {
  const { part, sample, date, language } = task.sheet;
  const creator = task.creator === "" ? USUAL_OPTIONS.creator : task.creator;
  const options = { ...USUAL_OPTIONS, language, date, creator };
  const sheet = composeCheckSheet(machineOf(task), part, sample ?? null, options);
  if (sheet === null) throw new Refusal(`There is no part "${part}", or no such sample of it.`);
  await writeFile(task.path, await renderDocument(sheet, "pdf"), { flag: "wx", mode: 0o600 });
}

/** Makes the ZIP of a pack that is sent out; refuses with all that forbids it. */
export async function makeSendOut(task: Extract<Task, { kind: "send-out" }>): Promise<void> {
  const machine = machineOf(task);
  const bytesOf = new Map(task.drawings.map(({ name, bytes }) => [name, bytes]));
  const facts = new Map(
    task.drawings.map(({ name, bytes }) => [
      name,
      { bytes: bytes.byteLength, sha256: createHash("sha256").update(bytes).digest("hex") },
    ]),
  );
  const { parts, date, due, supplier, sample, remark, language } = task.order;
  const pack = sendOutPack(
    machine,
    parts.map(({ part, quantity }) => ({ partId: part, quantity })),
    facts,
  );
  if (pack.faults.length > 0)
    throw new Refusal(pack.faults.map((fault) => FAULT_TEXTS[fault.what](fault)).join(" "));
  const options = {
    ...USUAL_OPTIONS,
    language,
    date,
    creator: task.creator === "" ? USUAL_OPTIONS.creator : task.creator,
  };
  const order = { due, supplierId: supplier, sample, remark };
  const files = sendOutFiles(machine, pack, order, options, (file) => bytesOf.get(file));
  await writeFile(task.path, packZip(files), { flag: "wx", mode: 0o600 });
}
