import type { BookRow } from "@pinwright/book";
import type { LineResult, RunsPlan } from "@pinwright/engine";
import { type Decimal, numberOfDecimal, textOfDecimal } from "@pinwright/kernel";
import { label, say } from "../compose/say.ts";
import type { SheetOptions } from "../options.ts";

/** What every sheet of runs is made from. */
export interface RunSheetInput {
  readonly line: Pick<LineResult, "machine">;
  readonly plan: RunsPlan;
  readonly options: SheetOptions;
}

/** Words in the languages of the sheet, in one line. */
export type Words = (choose: Parameters<typeof say>[1]) => string;
export const wordsOf =
  ({ language }: SheetOptions): Words =>
  (choose) =>
    say(language, choose, " · ");

/** A quantity as printed: metres to the millimetre. */
export const quantityText = (quantity: Decimal): string => textOfDecimal(quantity, 3).replace(/\.?0+$/u, "");

/** Money as printed, with the places of its currency. */
export const moneyText = (amount: Decimal, places: number): string => textOfDecimal(amount, places);

/** The same figure for a spreadsheet. */
export const cellNumber = (value: Decimal): number => numberOfDecimal(value);

/** Name of a part in the languages of the sheet. */
export function partName({ line, options }: RunSheetInput, partId: string): string {
  const row = partRow(line, partId);
  return row === undefined
    ? partId
    : label(options.language, { en: row.label, zh: row.label_zh }, partId, " · ");
}

export const partRow = (line: Pick<LineResult, "machine">, partId: string): BookRow<"parts"> | undefined =>
  line.machine.book.tables.parts.find((row) => row.id === partId);

/** Name of a run, a line for each language. */
export function runTitle({ plan, options }: RunSheetInput, runId: string): string {
  const run = plan.runs.find((own) => own.runId === runId);
  return run === undefined ? runId : label(options.language, run.labels, runId);
}
