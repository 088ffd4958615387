import { type Book, withRows } from "@pinwright/book";
import {
  compareHarness,
  type HarnessChange,
  Line,
  type LineResult,
  settle,
  unsettled,
} from "@pinwright/engine";
import type { Command, CommandCall } from "../command.ts";
import { faultText } from "../fault-text.ts";
import { BOOK_OPTIONS, type Loaded, loadBook, runLine, saveBook } from "../load.ts";
import { STATUS, type Status, type Terminal, UsageError } from "../terminal.ts";

function harnessesOf(call: CommandCall, result: LineResult): readonly string[] {
  const wanted = call.texts("harness");
  for (const id of wanted)
    if (!result.harnesses.has(id))
      throw new UsageError(`--harness ${id}: the book has ${[...result.harnesses.keys()].join(", ")}`);
  return wanted.length > 0 ? wanted : [...result.harnesses.keys()];
}

/** The symbols of the screws belong to no harness: they are meant when none is named. */
const moreOf = (call: CommandCall) => ({ symbols: call.texts("harness").length === 0 });

const count = (ids: readonly string[], what: string): string =>
  ids.length === 0 ? "" : `, ${ids.length} ${what}`;

function changeText(change: HarnessChange): string {
  const [minutes, minutesAfter] = change.minutes;
  const [metres, metresAfter] = change.metres;
  const changes = `${count(change.wiresNew, "wires new")}${count(change.wiresGone, "wires gone")}${count(change.recoloured, "recoloured")}${count(change.renumbered, "renumbered")}${count(change.relengthened, "of another length")}${change.pegsMoved > 0 ? `, ${change.pegsMoved} pegs moved` : ""}`;
  return `${change.harnessId}: ${minutes.toFixed(1)} → ${minutesAfter.toFixed(1)} min, ${metres.toFixed(1)} → ${metresAfter.toFixed(1)} m${changes === "" ? ", nothing changes" : changes}`;
}

async function keep(
  call: CommandCall,
  terminal: Terminal,
  loaded: Loaded,
  result: LineResult,
  book: Book,
): Promise<Status> {
  const settling = settle(
    { ...result, machine: { ...result.machine, book } },
    harnessesOf(call, result),
    moreOf(call),
  );
  terminal.out(`${settling.added} choices added, ${settling.changed} changed, ${settling.removed} removed\n`);
  if (!call.flag("write")) {
    terminal.out("Nothing was written; --write keeps this in the book.\n");
    return STATUS.good;
  }
  if (loaded.faults.length > 0) {
    for (const fault of loaded.faults) terminal.err(`${faultText(fault)}\n`);
    terminal.err(
      "The book has faults, and writing it would lose those cells: mend them first. Nothing was written.\n",
    );
    return STATUS.found;
  }
  await saveBook(loaded, withRows(loaded.book, "choices", settling.choices));
  terminal.out(`${loaded.path}: kept.\n`);
  return STATUS.good;
}

/** Keeps the present results, so that an unrelated change moves nothing; or shows what a fresh start would change. */
export const settleCommand: Command = {
  name: "settle",
  operands: "BOOK",
  about:
    "keep the present wires, routes, colours, pegs and screw symbols, or show what doing them anew would change",
  count: [1, 1],
  options: {
    ...BOOK_OPTIONS,
    harness: { type: "string", multiple: true, value: "ID", about: "only these harnesses; else all" },
    anew: { type: "boolean", about: "let go what was kept (not what is pinned), and show what would change" },
    write: { type: "boolean", about: "write the choices into the book" },
  },
  run: async (call, terminal) => {
    const loaded = await loadBook(call);
    const result = runLine(loaded);
    if (!call.flag("anew")) return keep(call, terminal, loaded, result, loaded.book);
    const ids = harnessesOf(call, result);
    const free = unsettled(result, ids, moreOf(call));
    const anew = new Line().run(free, loaded.shop, loaded.options);
    for (const id of ids) {
      const before = result.harnesses.get(id);
      const after = anew.harnesses.get(id);
      if (before !== undefined && after !== undefined)
        terminal.out(`${changeText(compareHarness(before, after))}\n`);
    }
    return keep(call, terminal, loaded, anew, loaded.book);
  },
};
