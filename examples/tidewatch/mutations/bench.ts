import { join } from "node:path";
import {
  type CellTables,
  cellTablesOf,
  cellTablesOfRaw,
  LiveBook,
  type LiveFault,
  type LiveReading,
} from "@pinwright/book";
import { readRawFiles } from "@pinwright/book/io";
import { type Finding, Line, type LineResult, rateElectric } from "@pinwright/engine";
import { Edit } from "./edit.ts";
import { judge, type Verdict } from "./judge.ts";
import type { Mutation, Plan, Sound } from "./mutation.ts";

/** What was done and found. */
export interface Tried {
  readonly plan: Plan;
  readonly verdict: Verdict;
  /** Everything found in the mutated machine. */
  readonly findings: readonly Finding[];
  /** What is wrong with the mutated book itself: a fault must be one of the machine, which every cell is fit for. */
  readonly faults: readonly LiveFault[];
}

/** Tidewatch as it lies in its folder, on a line that remembers, so that a mutation costs what depends on it. */
export class Bench {
  readonly sound: Sound;
  readonly #cells: CellTables;
  readonly #shop: CellTables;
  readonly #live = new LiveBook();
  readonly #line = new Line();

  private constructor(cells: CellTables, shop: CellTables) {
    this.#cells = cells;
    this.#shop = shop;
    const result = this.run();
    this.sound = { ...result, ratings: rateElectric(result.machine, result.harnesses, result.electric) };
  }

  static async open(): Promise<Bench> {
    const { found } = await readRawFiles(join(import.meta.dirname, ".."));
    if (found === null) throw new Error("Tidewatch cannot be read.");
    return new Bench(cellTablesOf(found.raw), cellTablesOfRaw(found.shop ?? new Map()));
  }

  /** What the line makes of the book as it lies in its folder. */
  run(): LineResult {
    return this.#run(this.#read(this.#cells));
  }

  try(mutation: Mutation): Tried {
    const plan = mutation.plan(this.sound);
    const edit = new Edit(this.#cells);
    plan.change(edit);
    const shop = new Edit(this.#shop);
    plan.changeShop?.(shop);
    const reading = this.#read(edit.tables, shop.tables);
    const { findings } = this.#run(reading);
    const verdict = judge(mutation, plan, this.sound.findings, findings);
    return { plan, verdict, findings, faults: reading.faults() };
  }

  #read(cells: CellTables, shop = this.#shop): LiveReading {
    return this.#live.update(cells, shop);
  }

  #run({ book, shop }: LiveReading): LineResult {
    return this.#line.run(book, shop);
  }
}
