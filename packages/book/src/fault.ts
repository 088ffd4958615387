/** Stable codes of what can be wrong with a book's files and cells. Retired codes are never used again. */
export const FAULT_CODES = [
  "file-missing",
  "file-unknown",
  "file-too-large",
  "file-encoding",
  "file-unreadable",
  "zip-path",
  "zip-entry",
  "zip-too-large",
  "machine-json",
  "format-unknown",
  "csv-quote",
  "column-missing",
  "column-unknown",
  "column-duplicate",
  "row-ragged",
  "rows-too-many",
  "cell-too-long",
  "cell-blank",
  "cell-control-character",
  "id-form",
  "id-duplicate",
  "number-form",
  "number-unit",
  "number-range",
  "choice-unknown",
  "flag-form",
  "colour-form",
  "point-form",
  "ref-dangling",
  "point-dangling",
  "outline-missing",
  "outline-unreadable",
  "row-rule",
  "faults-too-many",
] as const;

export type FaultCode = (typeof FAULT_CODES)[number];

/** One thing that is wrong, said so that it can be mended: where, what, what was expected, what to do. */
export interface Fault {
  readonly code: FaultCode;
  /** File as the user knows it: `devices.csv`, or `devices` as a worksheet. */
  readonly file: string;
  /** Row as a spreadsheet counts it, the heading being 1; null when the fault is not about a row. */
  readonly row: number | null;
  readonly column: string | null;
  /** The value as found, shortened to 80 characters. */
  readonly value: string | null;
  /** What was expected, in English. */
  readonly expected: string;
  /** Nearest valid value, when there is one worth offering. */
  readonly nearest: string | null;
}
