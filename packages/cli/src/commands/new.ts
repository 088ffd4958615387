import { existsSync } from "node:fs";
import { basename, join, resolve } from "node:path";
import { readBook, writeBook } from "@pinwright/book/io";
import type { Command } from "../command.ts";
import { STATUS, UsageError } from "../terminal.ts";

const ID = /^[a-z0-9]+(?:[.-][a-z0-9]+)*$/;

/** Starts a new book as a copy of the small example under a name of its own. */
export const newCommand: Command = {
  name: "new",
  operands: "FOLDER",
  about: "start a new book from the small example",
  count: [1, 1],
  options: {
    id: { type: "string", value: "ID", about: "id of the machine; else made from the folder's name" },
    label: { type: "string", value: "TEXT", about: "name of the machine; else the id" },
  },
  run: async (call, terminal) => {
    const folder = resolve(call.positionals[0] ?? "");
    if (existsSync(folder)) throw new UsageError(`${folder} is there already; choose a folder that is not`);
    const id =
      call.text("id") ??
      basename(folder)
        .toLowerCase()
        .replaceAll(/[^a-z0-9]+/g, "-")
        .replaceAll(/^-|-$/g, "");
    if (!ID.test(id))
      throw new UsageError(
        `"${id}" can't be the machine's id: lower-case letters and digits, joined by dots or dashes. Use --id`,
      );
    const example = await readBook(join(import.meta.dirname, "../../../../examples/first-light"));
    const machine = {
      ...example.book.machine,
      id,
      label: call.text("label") ?? id,
      label_zh: "",
      owner: "",
      approved: "",
    };
    await writeBook(folder, { ...example.book, machine }, example.shop);
    terminal.out(
      `${folder}: a new book "${machine.label}", a copy of the small example. Next: pinwright check ${folder}\n`,
    );
    return STATUS.good;
  },
};
