import { type CellTables, rawBookOf, rawShopOf, readRawBook, readRawShop } from "@pinwright/book";
import { bookRowsSchema } from "@pinwright/contract";
import {
  BenchModel,
  formatTesterAnswer,
  type HarnessFault,
  Line,
  parseTesterCommand,
  type TestBench,
  testBench,
} from "@pinwright/engine";
import { LineDevice } from "./line-device.ts";

type Ask = (path: string, body?: unknown) => Promise<unknown>;

const tablesOf = async (ask: Ask, book: string): Promise<CellTables> =>
  new Map(
    Object.entries(bookRowsSchema.parse(await ask(`/api/books/${book}/rows`)).tables).map(([name, rows]) => [
      name,
      new Map(Object.entries(rows).map(([id, cells]) => [id, new Map(Object.entries(cells))])),
    ]),
  );

/** A harness of a book as a tester sees it. */
export async function benchOf(ask: Ask, bookId: string, harnessId: string): Promise<TestBench> {
  const { book } = readRawBook(rawBookOf(await tablesOf(ask, bookId)).raw);
  const { shop } = readRawShop(rawShopOf(await tablesOf(ask, "shop")).raw, new Set());
  const line = new Line().run(book, shop);
  const harness = line.harnesses.get(harnessId);
  if (harness === undefined) throw new Error(`The book has no harness ${harnessId}.`);
  return testBench(line.machine, harness);
}

let sets = 0;

/** Says in the shop where an instrument is, as a designer does. */
export async function moveInstrument(
  ask: Ask,
  id: string,
  cells: Readonly<Record<string, string>>,
): Promise<void> {
  const rows = (await tablesOf(ask, "shop")).get("instruments") ?? new Map();
  for (const [row, was] of rows) {
    if (was.get("id") !== id) continue;
    const changes = Object.entries(cells)
      .map(([column, to]) => ({ table: "instruments", row, column, from: was.get(column) ?? "", to }))
      .filter(({ from, to }) => from !== to);
    await ask("/api/books/shop/changes", { id: `moved-${id}-${++sets}`, changes });
  }
}

/** A continuity tester with a harness plugged in, point by point in the order of its places. */
export class BenchTester {
  readonly device: LineDevice;
  /** What is wrong with the harness that is plugged in. */
  faults: readonly HarnessFault[] = [];

  constructor(bench: TestBench, points: number) {
    this.device = new LineDevice((line) => {
      const command = parseTesterCommand(line, points);
      if (!command.ok) return formatTesterAnswer({ kind: "error", error: "word" });
      switch (command.value.kind) {
        case "who":
          return formatTesterAnswer({ kind: "who", name: "bench-7" });
        case "points":
          return formatTesterAnswer({ kind: "points", points });
        case "try":
          return formatTesterAnswer({ kind: "error", error: "word" });
        case "try-all":
          return formatTesterAnswer({ kind: "all", groups: joinedPoints(bench, this.faults) });
      }
    });
  }
}

/** Points that are joined, each group ascending. */
function joinedPoints(bench: TestBench, faults: readonly HarnessFault[]): readonly (readonly number[])[] {
  const groups = new BenchModel(bench).groups(faults);
  return [...new Set(groups)]
    .map((group) => groups.flatMap((one, i) => (one === group ? [i + 1] : [])))
    .filter(({ length }) => length > 1);
}
