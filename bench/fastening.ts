/**
 * All fastening results of Tidewatch: solids, fit, clashes, access, ball, symbols and the steps in their order, first
 * in the process, from scratch again, and after one moved mechanism; at 1, 4 and 16 times the size; and the balance
 * of its steps and of 1,000 invented ones. `npx tsx bench/fastening.ts [TIMES …]`
 */
import { spawnSync } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { deserialize, serialize } from "node:v8";
import { type Book, emptyShop, multiplyBook, withRows } from "@pinwright/book";
import { readBook } from "@pinwright/book/io";
import {
  FasteningSolver,
  Line,
  type LineResult,
  planStations,
  Resolver,
  type StationQuestion,
  StepsSolver,
} from "@pinwright/engine";
import { leastTakt } from "@pinwright/kernel";
import { figures, type JobTime, once, tenth, writeResults } from "./measure.ts";

/** The two chapters on what the rest of the line has made. */
class Fastened {
  readonly #fastening = new FasteningSolver();
  readonly #steps = new StepsSolver();

  run({ machine, harnesses }: Pick<LineResult, "machine" | "harnesses">): void {
    const { fastening } = this.#fastening.solve(machine, harnesses);
    this.#steps.solve(machine, fastening, harnesses);
    this.#fastening.sweep();
    this.#steps.sweep();
  }
}

const moveMechanism = (book: Book, id: string, byMm: number): Book =>
  withRows(
    book,
    "mechanisms",
    book.tables.mechanisms.map((row) => (row.id === id ? { ...row, x_mm: row.x_mm + byMm } : row)),
  );

const { book, shop: ownShop } = await readBook(join(import.meta.dirname, "../examples/tidewatch"));
const shop = ownShop ?? emptyShop();
const rows: Record<string, string | number>[] = [];

const COLD = "--cold";
if (process.argv[2] === COLD) {
  // A process of its own, in which these chapters have not run yet; what the rest of the line made comes in a file.
  const harnesses: LineResult["harnesses"] = deserialize(readFileSync(process.argv[3] ?? ""));
  const machine = new Resolver().resolve(book, shop);
  process.stdout.write(JSON.stringify(once(() => new Fastened().run({ machine, harnesses }))));
  process.exit(0);
}

const line = new Line();
const sound = line.run(book, shop);

/** The two chapters, first in a process that has just started. */
function coldTime(): JobTime {
  const folder = mkdtempSync(join(tmpdir(), "pinwright-bench-"));
  const file = join(folder, "harnesses");
  writeFileSync(file, serialize(sound.harnesses));
  const { stdout } = spawnSync(process.execPath, [...process.execArgv, import.meta.filename, COLD, file], {
    encoding: "utf8",
  });
  rmSync(folder, { recursive: true });
  const time: unknown = JSON.parse(stdout);
  if (typeof time !== "object" || time === null || !("ms" in time) || !("cpuMs" in time))
    return { ms: 0, cpuMs: 0 };
  return { ms: Number(time.ms), cpuMs: Number(time.cpuMs) };
}

rows.push(figures("all fastening results, first in the process", [coldTime(), coldTime(), coldTime()]));
rows.push(
  figures(
    "the same from scratch, warm",
    Array.from({ length: 5 }, () => once(() => new Fastened().run(sound))),
  ),
);

const remembered = new Fastened();
remembered.run(sound);
const moves: JobTime[] = [];
for (const [n, { id }] of [...book.tables.mechanisms, ...book.tables.mechanisms].entries()) {
  const result = line.run(moveMechanism(book, id, n % 2 === 0 ? 0.5 : 1), shop);
  const time = once(() => remembered.run(result));
  if (n >= 10) moves.push(time);
  remembered.run(line.run(book, shop));
}
rows.push(figures("after one moved mechanism, each in turn", moves));

const sizes = process.argv.slice(2).map(Number);
let base: JobTime | null = null;
for (const times of sizes.length > 0 ? sizes : [1, 4, 16]) {
  const large = times === 1 ? sound : new Line().run(multiplyBook(book, times), shop);
  const runs = Array.from({ length: 3 }, () => once(() => new Fastened().run(large)));
  const least = runs.reduce((a, b) => (b.cpuMs < a.cpuMs ? b : a));
  base ??= least;
  rows.push({
    ...figures(`all fastening results at ${times} times the size`, runs),
    ratio: tenth(least.ms / base.ms),
    cpu_ratio: tenth(least.cpuMs / base.cpuMs),
  });
}

const usual: Omit<StationQuestion, "ask"> = { absent: [], longerPct: 0, skills: true };
const asks: readonly StationQuestion["ask"][] = [
  { kind: "book-stations" },
  { kind: "least-takt", places: 8 },
  { kind: "fewest-places", taktS: shop.numbers.takt_min * 60 },
];
for (const ask of asks) {
  const times: JobTime[] = [];
  let gap = 0;
  for (let n = 0; n < 3; n++) {
    times.push(
      once(() => {
        const plan = planStations(sound, { ...usual, ask });
        const value = ask.kind === "fewest-places" ? plan.loads.length : plan.taktS;
        gap = value === 0 ? 0 : (value - plan.lowerBound) / value;
      }),
    );
  }
  rows.push({ ...figures(`stations of Tidewatch, ${ask.kind}`, times), gap_pct: tenth(gap * 100) });
}

/** A thousand tasks of 5 s to 5 min, each after up to three of the forty before it; the same every time. */
function thousand(): { readonly times: readonly number[]; readonly before: readonly [number, number][] } {
  let state = 7;
  const next = (below: number): number => {
    // The minimal standard generator of Park and Miller.
    state = (state * 48271) % 2147483647;
    return state % below;
  };
  const times = Array.from({ length: 1000 }, () => 5 + next(296));
  const before = times.flatMap((_, i) =>
    i === 0
      ? []
      : Array.from({ length: next(4) }, (): [number, number] => [Math.max(0, i - 1 - next(40)), i]),
  );
  return { times, before };
}

/** As much search as the line's own station plans take. */
const EFFORT = { steps: 200_000 };

const problem = thousand();
for (const stations of [10, 40]) {
  const started = performance.now();
  const found = leastTakt(problem, stations, EFFORT);
  const ms = performance.now() - started;
  rows.push({
    what: `1,000 steps on ${stations} stations, least takt`,
    ms: tenth(ms),
    gap_pct: found.found ? Math.round(found.gap * 10000) / 100 : "none",
  });
}
writeResults("fastening", rows);
