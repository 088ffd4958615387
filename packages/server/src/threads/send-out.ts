import { createHash } from "node:crypto";
import { writeFile } from "node:fs/promises";
import { rawBookOf, rawShopOf, readRawBook, readRawShop } from "@pinwright/book";
import { packZip } from "@pinwright/book/io";
import { type PackFault, resolveMachine, sendOutPack } from "@pinwright/engine";
import { USUAL_OPTIONS } from "@pinwright/sheets";
import { sendOutFiles } from "@pinwright/sheets/print";
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

/** Makes the ZIP of a pack that is sent out; refuses with all that forbids it. */
export async function makeSendOut(task: Extract<Task, { kind: "send-out" }>): Promise<void> {
  const { book } = readRawBook(rawBookOf(cellsOfJson(task.tables)).raw);
  const { shop } = readRawShop(rawShopOf(cellsOfJson(task.shop)).raw, new Set());
  const machine = resolveMachine(book, shop);
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
