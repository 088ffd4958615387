import { readFile } from "node:fs/promises";
import { resolve } from "node:path";
import { composeServiceBook, type ServiceUnit, USUAL_OPTIONS } from "@pinwright/sheets";
import { renderDocument } from "@pinwright/sheets/print";
import type { Command } from "../command.ts";
import { faultText } from "../fault-text.ts";
import { BOOK_OPTIONS, fatalFaults, loadBook, runLine } from "../load.ts";
import { writeWhole } from "../manifest.ts";
import { STATUS, UsageError } from "../terminal.ts";

const text = (value: unknown): string => (typeof value === "string" ? value : "");

/** One machine's own differences from a file of JSON: `{ serial, alternates: [{ part, instead, allowed, why }] }`. */
async function readUnit(path: string): Promise<ServiceUnit> {
  const wrong = (what: string): UsageError => new UsageError(`--unit ${path}: ${what}`);
  let json: unknown;
  try {
    json = JSON.parse(await readFile(resolve(path), "utf8"));
  } catch (error) {
    throw wrong(error instanceof Error ? error.message : String(error));
  }
  if (typeof json !== "object" || json === null || !("serial" in json) || text(json.serial) === "")
    throw wrong("expected an object with a text “serial”");
  const list: unknown = "alternates" in json ? json.alternates : [];
  if (!Array.isArray(list)) throw wrong("expected “alternates” to be a list");
  return {
    serial: text(json.serial),
    address: "address" in json ? text(json.address) : "",
    alternates: list.map((one: unknown, i) => {
      if (typeof one !== "object" || one === null || !("part" in one) || !("instead" in one))
        throw wrong(`alternate ${i + 1}: expected an object with “part” and “instead”`);
      return {
        part: text(one.part),
        instead: text(one.instead),
        allowed: "allowed" in one && one.allowed === "book" ? ("book" as const) : ("concession" as const),
        why: "why" in one ? text(one.why) : "",
      };
    }),
  };
}

/** Makes the service book of a machine, or of one that was built. */
export const serviceBookCommand: Command = {
  name: "service-book",
  operands: "BOOK",
  about: "make the service book of the machine for its owner, as PDF; or that of one serial number",
  count: [1, 1],
  options: {
    ...BOOK_OPTIONS,
    out: { type: "string", value: "FILE", about: "file to write; else MACHINE-service-book.pdf" },
    language: { type: "string", value: "en|zh", about: "language of the book; else en" },
    unit: {
      type: "string",
      value: "FILE",
      about: "JSON of one machine: its serial number, and what it has instead of what the drawings say",
    },
    date: { type: "string", value: "DATE", about: "date of issue as year-month-day; else the book's" },
    by: { type: "string", value: "NAME", about: "who made it, for the title block" },
  },
  run: async (call, terminal) => {
    const language = call.text("language") ?? "en";
    if (language !== "en" && language !== "zh")
      throw new UsageError(`--language ${language}: expected one of en, zh`);
    const unitPath = call.text("unit");
    const unit = unitPath === undefined ? null : await readUnit(unitPath);
    const loaded = await loadBook(call);
    for (const fault of loaded.faults.slice(0, 20)) terminal.err(`${faultText(fault)}\n`);
    if (fatalFaults(loaded.faults).length > 0) return STATUS.failed;
    const line = runLine(loaded);
    const document = composeServiceBook(line, {
      ...USUAL_OPTIONS,
      language,
      unit,
      date: call.text("date") ?? line.machine.book.machine.date,
      creator: call.text("by") ?? USUAL_OPTIONS.creator,
    });
    const file = resolve(call.text("out") ?? `${line.machine.book.machine.id}-service-book.pdf`);
    await writeWhole(file, await renderDocument(document, "pdf"));
    terminal.out(`${document.title}: ${document.pages.length} pages in ${file}\n`);
    return loaded.faults.length > 0 ? STATUS.found : STATUS.good;
  },
};
