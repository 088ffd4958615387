import { readFile, writeFile } from "node:fs/promises";
import { join, resolve } from "node:path";
import { faultFileOf, faultPageOf } from "@pinwright/engine";
import type { Command } from "../command.ts";
import { faultText } from "../fault-text.ts";
import { BOOK_OPTIONS, fatalFaults, loadBook, runLine } from "../load.ts";
import { STATUS, UsageError } from "../terminal.ts";

/** The empty page, where building the app puts it. */
const PAGE = join(import.meta.dirname, "../../../web/dist/service-page.html");

function languageOf(text: string | undefined): "en" | "zh" | "" {
  if (text === undefined) return "";
  if (text !== "en" && text !== "zh") throw new UsageError(`--language ${text}: expected en or zh`);
  return text;
}

/** Writes the page of fault finding that is shipped with a machine: one file that needs no network. */
export const faultPageCommand: Command = {
  name: "fault-page",
  operands: "BOOK",
  about: "write the page that an owner finds faults with: one HTML file that needs no network",
  count: [1, 1],
  options: {
    ...BOOK_OPTIONS,
    out: { type: "string", value: "FILE", about: "file to write; else faults.html" },
    language: { type: "string", value: "LANG", about: "en or zh; else the one of the reader's browser" },
    revision: { type: "string", value: "NAME", about: "name of the revision; else the book's own" },
    page: { type: "string", value: "FILE", about: "the empty page; else the one of the built app" },
    json: { type: "boolean", about: "write the fault file alone, as JSON" },
  },
  run: async (call, terminal) => {
    const language = languageOf(call.text("language"));
    const loaded = await loadBook(call);
    if (fatalFaults(loaded.faults).length > 0) {
      for (const fault of loaded.faults) terminal.err(`${faultText(fault)}\n`);
      return STATUS.failed;
    }
    const revision = call.text("revision");
    const file = faultFileOf(runLine(loaded), revision === undefined ? {} : { revision });
    const isJson = call.flag("json");
    const out = resolve(call.text("out") ?? (isJson ? "faults.json" : "faults.html"));
    if (isJson) await writeFile(out, JSON.stringify(file));
    else {
      const path = resolve(call.text("page") ?? PAGE);
      const page = await readFile(path, "utf8").catch(() => null);
      if (page === null)
        throw new Error(
          `${path} is not there: build the app first (npm run build:web), or name the page by --page`,
        );
      await writeFile(out, faultPageOf(page, file, language));
    }
    terminal.out(
      `${out}: ${file.functions.length} functions, ${file.suspects.length} things that can be wrong\n`,
    );
    return STATUS.good;
  },
};
