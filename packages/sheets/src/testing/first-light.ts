import { fileURLToPath } from "node:url";
import { emptyShop } from "@pinwright/book";
import { readBook } from "@pinwright/book/io";
import { type HarnessResult, Line, type LineResult } from "@pinwright/engine";
import { type SheetOptions, USUAL_OPTIONS } from "../options.ts";

/** The whole line of one of the repository's examples. */
export async function exampleLine(name: "first-light" | "tidewatch"): Promise<LineResult> {
  const folder = fileURLToPath(new URL(`../../../../examples/${name}`, import.meta.url));
  const { book, shop } = await readBook(folder);
  return new Line().run(book, shop ?? emptyShop());
}

/** First-light with a wooden deck, so that its screws have holes to drill. */
export async function woodenLine(): Promise<LineResult> {
  const folder = fileURLToPath(new URL("../../../../examples/first-light", import.meta.url));
  const { book, shop } = await readBook(folder);
  const panels = book.tables.panels.map((panel) => ({ ...panel, wood: "hardwood" as const }));
  return new Line().run({ ...book, tables: { ...book.tables, panels } }, shop ?? emptyShop());
}

export const OPTIONS: SheetOptions = { ...USUAL_OPTIONS, date: "2026-11-25" };

/** The first harness of a line, with a pinboard that is one straight branch of exactly this length. */
export function straightHarness(line: LineResult, lengthMm: number): HarnessResult {
  const [harness] = line.harnesses.values();
  const [branch] = harness?.branches ?? [];
  if (harness === undefined || branch === undefined) throw new Error("the example has no harness");
  const yMm = 150;
  const ends = [
    { xMm: 100, yMm },
    { xMm: 100 + lengthMm, yMm },
  ] as const;
  return {
    ...harness,
    splices: [],
    branches: [{ ...branch, lengthMm }],
    pinboard: {
      ...harness.pinboard,
      widthMm: lengthMm + 200,
      heightMm: 300,
      nodes: [
        { id: branch.a, at: ends[0], peg: true },
        { id: branch.b, at: ends[1], peg: true },
      ],
      branches: [{ id: branch.id, line: ends, lengthMm, tiesMm: [250, 500, 750] }],
      holders: [],
      bendPegs: [],
    },
  };
}
