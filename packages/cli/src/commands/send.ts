import { writeFile } from "node:fs/promises";
import { resolve } from "node:path";
import { packZip } from "@pinwright/book/io";
import { type PackFault, resolveMachine, type SendOutPack, sendOutPack } from "@pinwright/engine";
import { USUAL_OPTIONS } from "@pinwright/sheets";
import { sendOutFiles } from "@pinwright/sheets/print";
import type { SheetLanguage } from "@pinwright/words";
import type { Command, CommandCall } from "../command.ts";
import { faultText } from "../fault-text.ts";
import { BOOK_OPTIONS, fatalFaults, type Loaded, loadBook } from "../load.ts";
import { isThere, sha256 } from "../manifest.ts";
import { countOption } from "../number-option.ts";
import { STATUS, type Status, type Terminal, UsageError } from "../terminal.ts";

const LANGUAGES: readonly SheetLanguage[] = ["en", "zh", "both"];

/** Why a pack does not go out, and what to do. */
const FAULT_TEXTS: Readonly<Record<PackFault["what"], (fault: PackFault) => string>> = {
  "part-unknown": ({ partId }) => `${partId}: the book has no such part`,
  "no-revision": ({ partId }) => `${partId}: it has no revision; say which one is made now`,
  "no-drawing": ({ partId }) => `${partId}: no drawing of its present revision; attach one`,
  missing: ({ partId, file }) => `${partId}: drawings/${file} is not there; put it back`,
  differs: ({ partId, file }) =>
    `${partId}: drawings/${file} has other bytes than its row says; put the right file back, or attach it as a new revision`,
};

function packOf(loaded: Loaded, parts: readonly string[], quantity: number) {
  const machine = resolveMachine(loaded.book, loaded.shop, loaded.options);
  const facts = new Map(
    [...loaded.drawings].map(([name, bytes]) => [name, { bytes: bytes.length, sha256: sha256(bytes) }]),
  );
  return {
    machine,
    pack: sendOutPack(
      machine,
      parts.map((partId) => ({ partId, quantity })),
      facts,
    ),
  };
}

/** A day as the option has it, year-month-day. */
function dayOption(call: CommandCall, name: string): string | undefined {
  const text = call.text(name);
  if (text !== undefined && !/^\d{4}-\d{2}-\d{2}$/.test(text))
    throw new UsageError(`--${name} ${text}: expected a day as year-month-day`);
  return text;
}

function refuse({ faults }: SendOutPack, terminal: Terminal): Status {
  for (const fault of faults) terminal.err(`${FAULT_TEXTS[fault.what](fault)}\n`);
  terminal.err("Nothing was written: a wrong drawing must not go out.\n");
  return STATUS.found;
}

/** Makes what a shop needs to make some parts: order sheet, drawings of the right revision, contents with hashes. */
export const sendCommand: Command = {
  name: "send",
  operands: "BOOK PART…",
  about:
    "make a send-out pack: one ZIP with order sheet, drawings of the right revision and contents with hashes",
  count: [2, 200],
  options: {
    ...BOOK_OPTIONS,
    quantity: { type: "string", value: "N", about: "how many of each part; else 1" },
    out: { type: "string", value: "FILE", about: "the ZIP; else PART.zip, or parts.zip of several" },
    date: { type: "string", value: "DATE", about: "date of issue as year-month-day; else the book's" },
    due: { type: "string", value: "DATE", about: "day on which the parts are wanted" },
    to: { type: "string", value: "SUPPLIER", about: "supplier of the shop that it goes to" },
    sample: { type: "boolean", about: "first articles only; the lot waits until they are approved" },
    remark: { type: "string", value: "TEXT", about: "what else the shop should know" },
    language: { type: "string", value: "en|zh|both", about: "language of the sheets; else both" },
    replace: { type: "boolean", about: "replace a file that is there" },
  },
  run: async (call, terminal) => {
    const [, ...parts] = call.positionals;
    const language = LANGUAGES.find((one) => one === (call.text("language") ?? "both"));
    if (language === undefined)
      throw new UsageError(`--language ${call.text("language")}: expected en, zh or both`);
    const quantity = countOption(call, "quantity") ?? 1;
    const [date, due] = [dayOption(call, "date"), dayOption(call, "due")];
    const out = resolve(call.text("out") ?? (parts.length === 1 ? `${parts[0]}.zip` : "parts.zip"));
    if ((await isThere(out)) && !call.flag("replace"))
      throw new UsageError(`${out} is there already; use --replace or another name`);
    const loaded = await loadBook(call);
    for (const fault of loaded.faults.slice(0, 20)) terminal.err(`${faultText(fault)}\n`);
    if (fatalFaults(loaded.faults).length > 0) return STATUS.failed;
    const { machine, pack } = packOf(loaded, parts, quantity);
    if (pack.faults.length > 0) return refuse(pack, terminal);
    const supplierId = call.text("to") ?? "";
    if (supplierId !== "" && !machine.shop.tables.suppliers.some(({ id }) => id === supplierId))
      throw new UsageError(`--to ${supplierId}: the shop has no such supplier`);
    const options = { ...USUAL_OPTIONS, language, date: date ?? machine.book.machine.date };
    const order = {
      due: due ?? "",
      supplierId,
      sample: call.flag("sample"),
      remark: call.texts("remark").join(", "),
    };
    const files = sendOutFiles(machine, pack, order, options, (file) => loaded.drawings.get(file));
    await writeFile(out, packZip(files), { flag: call.flag("replace") ? "w" : "wx" });
    for (const { partId, revision, blocked } of pack.parts) {
      const waits = blocked === null || order.sample ? "" : `; no approved first article (${blocked})`;
      terminal.out(`${partId} rev. ${revision}: ${quantity}${waits}\n`);
    }
    terminal.out(`${out}: ${files.size} files\n`);
    return STATUS.good;
  },
};
