/** A cell of a list as a value: numbers stay numbers in a spreadsheet. */
export type GridValue = string | number;

/** A list as rows and columns, one worksheet or one CSV file. */
export interface Grid {
  /** Name of the worksheet. */
  readonly name: string;
  readonly header: readonly string[];
  readonly rows: readonly (readonly GridValue[])[];
}
