import type { BookRow } from "@pinwright/book";
import type { BoardRegisterRow, LineResult, Placement } from "@pinwright/engine";
import type { SheetLanguage } from "@pinwright/words";
import { label, say } from "../compose/say.ts";

/** Id of a board type as part of a name of a file. */
export const boardSlug = (typeId: string): string => typeId.replace(/[^a-z0-9-]+/gu, "-");

/** Name of a board type. */
export const boardName = (row: BoardRegisterRow, language: SheetLanguage, joint = "\n"): string =>
  label(language, row.labels, row.typeId, joint);

/** Types that are stuffed in the own shop, in the order of the register. */
export const stuffedTypes = (line: LineResult): readonly BoardRegisterRow[] =>
  line.boards.register.filter((row) => row.comes === "stuffed");

/** How many boards of a type so many machines have; one, when the machine has none. */
export const boardCount = (row: BoardRegisterRow, machines: number): number =>
  Math.max(1, row.boardIds.length * machines);

/** Name of a part; its id when the book has no such part. */
export function partName(
  parts: ReadonlyMap<string, BookRow<"parts">>,
  partId: string,
  language: SheetLanguage,
  joint = " · ",
): string {
  const part = parts.get(partId);
  return label(language, { en: part?.label ?? "", zh: part?.label_zh ?? "" }, partId, joint);
}

/** What marks the right way round, in the words of the sheet where it knows the book's; else as in the book. */
export const markText = (row: Placement | undefined, language: SheetLanguage): string => {
  const polarity = row?.polarity ?? "";
  if (polarity === "") return say(language, (w) => w.boards.guide.free, " · ");
  return say(
    language,
    (w) => {
      const known: Readonly<Record<string, string>> = w.boards.marks;
      return known[polarity] ?? polarity;
    },
    " · ",
  );
};
