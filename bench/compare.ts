/**
 * Tidewatch with one switch moved and one board moved, compared with the machine as it was, from kept facts alone: reading
 * both, comparing them, and saying it all in one language; at 1, 4 and 16 times the size. Sheets are left out: they are two
 * hashes each. `npx tsx bench/compare.ts [TIMES …]`
 */
import { join } from "node:path";
import { type Book, emptyShop, multiplyBook, withRows } from "@pinwright/book";
import { readBook } from "@pinwright/book/io";
import { compareFacts, factNames, Line, machineFacts, readMachineFacts } from "@pinwright/engine";
import { changeSentence } from "@pinwright/words";
import { figures, once, tenth, writeResults } from "./measure.ts";

/** Runs of each job; the middle of them is told. */
const RUNS = 9;

const { book, shop: ownShop } = await readBook(join(import.meta.dirname, "../examples/tidewatch"));
const shop = ownShop ?? emptyShop();
const times = process.argv.slice(2).map(Number);

/** The first switch 12 mm and the first board 6 mm further. */
function moved(of: Book): Book {
  const [first] = of.tables.devices.filter(({ id }) => id.startsWith("sw."));
  const [board] = of.tables.boards;
  const devices = of.tables.devices.map((row) => (row === first ? { ...row, x_mm: row.x_mm + 12 } : row));
  const boards = of.tables.boards.map((row) => (row === board ? { ...row, y_mm: row.y_mm + 6 } : row));
  return withRows(withRows(of, "devices", devices), "boards", boards);
}

/** Facts as a release keeps them. */
const kept = (line: Line, of: Book): string => JSON.stringify(machineFacts(line.run(of, shop), []));

const rows = (times.length > 0 ? times : [1, 4, 16]).flatMap((size) => {
  const whole = size === 1 ? book : multiplyBook(book, size);
  const line = new Line();
  const [old, now] = [kept(line, whole), kept(line, moved(whole))];
  const read = (text: string) => readMachineFacts(JSON.parse(text));
  const [before, after] = [read(old), read(now)];
  const comparison = compareFacts(before, after);
  const names = factNames(before, after);
  const sentences = comparison.groups.reduce((sum, { changes }) => sum + changes.length, 0);
  const about = { size, facts_kb: tenth(old.length / 1000), sentences };
  const job = (what: string, work: () => unknown) => {
    const runs = Array.from({ length: RUNS }, () => once(work));
    return { ...about, ...figures(what, runs) };
  };
  return [
    job("read both from text", () => [read(old), read(now)]),
    job("compare", () => compareFacts(before, after)),
    job("say it in English", () =>
      comparison.groups.map(({ subject, changes }) =>
        changes.map((change) => changeSentence("en", subject, change, names)),
      ),
    ),
  ];
});
writeResults("compare", rows);
