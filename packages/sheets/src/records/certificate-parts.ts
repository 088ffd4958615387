import { TEXT } from "../compose/draw.ts";
import { type Block, gap } from "../compose/flow.ts";
import { paragraph } from "../compose/paragraph.ts";
import { say } from "../compose/say.ts";
import { type TableColumn, type TableRow, table } from "../compose/table.ts";
import { type RecordSheetInput, wordsOf } from "./texts.ts";

export type Choose = Parameters<typeof say>[1];

/** A heading over the table or words that follow it. */
export const headed = (
  input: RecordSheetInput,
  title: Choose,
  widthMm: number,
  blocks: readonly Block[],
): Block[] => [
  gap(3),
  { ...paragraph(wordsOf(input.options)(title), widthMm, TEXT.large, true), keepMm: 20 },
  ...blocks,
];

export const plain = (
  input: RecordSheetInput,
  says: Choose,
  widthMm: number,
  heightMm: number = TEXT.normal,
): Block => paragraph(say(input.options.language, says), widthMm, heightMm);

export const row = (cells: readonly string[]): TableRow => ({ kind: "row", cells });

export const listed = (
  input: RecordSheetInput,
  columns: readonly TableColumn[],
  rows: readonly TableRow[],
  widthMm: number,
): readonly Block[] =>
  table(
    columns,
    rows,
    widthMm,
    wordsOf(input.options)((w) => w.common.continued),
  );
