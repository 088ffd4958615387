/**
 * The whole line on Tidewatch: reading to findings from cold, again after one moved switch, and growth at 1, 4 and
 * 16 times the size. Beside it, in the same run: the same line from scratch, and reading the same files with the
 * CSV library alone. `cpu_ms` is the time of the processor over all threads, which other programs on the machine
 * disturb less. `npx tsx bench/line.ts [TIMES …]`
 */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { type Book, emptyShop, multiplyBook, withRows } from "@pinwright/book";
import { readBook } from "@pinwright/book/io";
import { Line } from "@pinwright/engine";
import Papa from "papaparse";
import { figures, type JobTime, median, once, repeated, tenth, timed, writeResults } from "./measure.ts";

const folder = join(import.meta.dirname, "../examples/tidewatch");

/** One run of the line. */
const runLine = (line: Line, edited: Book): JobTime => once(() => line.run(edited, shop));

const parseOnly = (): number =>
  readdirSync(folder)
    .filter((name) => name.endsWith(".csv"))
    .reduce((rows, name) => rows + Papa.parse(readFileSync(join(folder, name), "utf8")).data.length, 0);

/** One device, a little further to the right. */
const moveDevice = (book: Book, id: string, byMm: number): Book =>
  withRows(
    book,
    "devices",
    book.tables.devices.map((row) => (row.id === id ? { ...row, x_mm: row.x_mm + byMm } : row)),
  );

/** One switch of the playfield, a little further to the right for each call. */
const moveSwitch = (book: Book, step: number): Book => moveDevice(book, "sw.inlane-left", step);

const rows: Record<string, string | number>[] = [];
const first = await timed(async () => {
  const read = await readBook(folder);
  return { read, result: new Line().run(read.book, read.shop ?? emptyShop()) };
});
const { book, shop } = { book: first.result.read.book, shop: first.result.read.shop ?? emptyShop() };
const cells = Object.values(book.tables).reduce((sum, table) => sum + table.length, 0);
rows.push({ what: "reading to findings, first in the process", ms: tenth(first.ms), rows: cells });

const whole = await repeated(5, async () => {
  const read = await readBook(folder);
  return new Line().run(read.book, read.shop ?? emptyShop());
});
rows.push({
  what: "reading to findings, warm",
  ms: tenth(whole.medianMs),
  least_ms: tenth(whole.minMs),
  rows: cells,
});
const reading = await repeated(5, () => readBook(folder));
const parsing = await repeated(5, parseOnly);
rows.push({ what: "reading and checking", ms: tenth(reading.medianMs), rows: cells });
rows.push({
  what: "the CSV library alone on the same files",
  ms: tenth(parsing.medianMs),
  ratio: tenth(reading.medianMs / parsing.medianMs),
});

const line = new Line();
line.run(book, shop);
const first9: JobTime[] = [];
const moved: JobTime[] = [];
// A drag is many moves: the first nine, in which the program warms up, are told apart.
for (let step = 1; step <= 40; step++) {
  const edited = moveSwitch(book, (step % 12) * 0.5);
  (step <= 9 ? first9 : moved).push(runLine(line, edited));
}
// Every switch once, each on the book that the moves before it left.
const each: JobTime[] = [];
let now = book;
for (const { id } of book.tables.devices.filter((row) => row.id.startsWith("sw."))) {
  now = moveDevice(now, id, 1);
  each.push(runLine(line, now));
}
const scratch = await repeated(3, () => new Line().run(moveSwitch(book, 7), shop));
rows.push(
  figures("again after one moved switch, the first nine moves", first9),
  figures("again after one moved switch, the tenth to fortieth move", moved),
  figures(`again after each of the ${each.length} switches moved in turn`, each),
);
rows.push({
  what: "the line from scratch after the same move",
  ms: tenth(scratch.medianMs),
  ratio: tenth(scratch.medianMs / median(moved.map(({ ms }) => ms))),
});

const sizes = process.argv.slice(2).map(Number);
let base: JobTime | null = null;
for (const times of sizes.length > 0 ? sizes : [1, 4, 16]) {
  const large = multiplyBook(book, times);
  const runs = Array.from({ length: times === 16 ? 2 : 4 }, () => runLine(new Line(), large));
  const row = figures(`the line at ${times} times the size`, runs);
  const middle: JobTime = { ms: Number(row.ms), cpuMs: Number(row.cpu_ms) };
  base ??= middle;
  rows.push({ ...row, ratio: tenth(middle.ms / base.ms), cpu_ratio: tenth(middle.cpuMs / base.cpuMs) });
}
writeResults("line", rows);
