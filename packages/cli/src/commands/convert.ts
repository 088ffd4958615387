import { existsSync, statSync } from "node:fs";
import { resolve } from "node:path";
import { formatOf, readBook, writeBook } from "@pinwright/book/io";
import type { Command } from "../command.ts";
import { faultText } from "../fault-text.ts";
import { fatalFaults } from "../load.ts";
import { STATUS, UsageError } from "../terminal.ts";

/** Writes a book in another form: a folder, one `.zip` or one `.xlsx`, by the ending of the second path. */
export const convertCommand: Command = {
  name: "convert",
  operands: "FROM TO",
  about: "write a book as a folder, a .zip or an .xlsx",
  count: [2, 2],
  options: {
    replace: { type: "boolean", about: "replace a file or book that is there" },
    "with-faults": {
      type: "boolean",
      about: "write it although cells are faulty; what could not be read is left blank",
    },
  },
  run: async (call, terminal) => {
    const [from = "", to = ""] = call.positionals.map((path) => resolve(path));
    if (existsSync(to) && !call.flag("replace"))
      throw new UsageError(`${to} is there already; use --replace or another name`);
    if (existsSync(to) && from === to) throw new UsageError("FROM and TO are the same");
    const read = await readBook(from);
    for (const fault of read.faults) terminal.err(`${faultText(fault)}\n`);
    if (fatalFaults(read.faults).length > 0) return STATUS.failed;
    if (read.faults.length > 0 && !call.flag("with-faults")) {
      terminal.err(
        `${read.faults.length} faults; nothing was written. Mend them, or use --with-faults and lose those cells.\n`,
      );
      return STATUS.found;
    }
    const format = formatOf(to);
    await writeBook(to, read.book, read.shop, format, read.drawings);
    if (format === "xlsx" && read.drawings.size > 0)
      terminal.err(`${read.drawings.size} drawings were left out: a workbook holds none; use a .zip.\n`);
    const rows = Object.values(read.book.tables).reduce((sum, table) => sum + table.length, 0);
    terminal.out(
      `${to}: ${rows} rows${statSync(to).isFile() ? `, ${Math.ceil(statSync(to).size / 1024)} KiB` : ""}\n`,
    );
    return STATUS.good;
  },
};
