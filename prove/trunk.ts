/**
 * The trunks of Tidewatch that its designer drew beside those that the line finds: minutes, metres and their total,
 * to `results/trunk.csv`. A drawn trunk is a pinned `trunk` choice of the book; where the book has none, a row of a
 * table with the columns harness, lanes.
 *
 *     npx tsx prove/trunk.ts [table]
 */
import { existsSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import type { Book } from "@pinwright/book";
import { readBook, readShop } from "@pinwright/book/io";
import { laneGraph, resolveMachine, routeHarness, trunkWork, wireHarness } from "@pinwright/engine";
import { cells, percent, writeResults } from "./write-results.ts";

const FOLDER = fileURLToPath(new URL("../examples/tidewatch", import.meta.url));

/** Lanes of each drawn trunk by harness. */
function drawnTrunks(book: Book, table: string): ReadonlyMap<string, readonly string[]> {
  const ids = (text: string): readonly string[] => text.split(/\s+/).filter((id) => id !== "");
  const pinned = book.tables.choices.filter((c) => c.kind === "trunk" && c.held === "pinned");
  if (pinned.length > 0) return new Map(pinned.map((c) => [c.subject, ids(c.value)]));
  if (!existsSync(table)) return new Map();
  return new Map(
    cells(readFileSync(table, "utf8")).map(([harness = "", lanes = ""]) => [harness, ids(lanes)]),
  );
}

async function prove(): Promise<void> {
  const { book } = await readBook(FOLDER);
  const { shop } = await readShop(`${FOLDER}/shop`);
  if (book === null || shop === null) throw new Error(`${FOLDER}: the book can't be read`);
  const drawn = drawnTrunks(book, process.argv[2] ?? `${FOLDER}/drawn/trunks.csv`);
  if (drawn.size === 0)
    throw new Error("There is no drawn trunk: pin `trunk` choices, or give a table of them.");
  const choices = book.tables.choices.filter((c) => c.kind !== "trunk" && c.held !== "settled");
  const machine = resolveMachine({ ...book, tables: { ...book.tables, choices } }, shop);
  const graph = laneGraph(machine);
  const lines = [...drawn].map(([harnessId, lanes]) => {
    const wires = wireHarness(machine, harnessId);
    const byHand = trunkWork(machine, wires, lanes, { graph });
    const found = routeHarness(machine, wires, { graph });
    const works = [byHand, found].flatMap(({ work, unreached }) => [
      unreached.length,
      work.minutes.toFixed(3),
      work.metres.toFixed(3),
      work.total.value.toFixed(3),
    ]);
    const reached = byHand.unreached.length === found.unreached.length;
    const over = reached ? percent(byHand.work.total.value, found.work.total.value) : "";
    return [harnessId, ...works, found.work.total.lowerBound.toFixed(3), over].join(",");
  });
  process.stdout.write(`${lines.join("\n")}\n`);
  writeResults(
    "trunk.csv",
    "harness,drawn_unreached,drawn_min,drawn_m,drawn_total_min,found_unreached,found_min,found_m,found_total_min,bound_min,drawn_over_pct",
    lines,
  );
}

await prove();
