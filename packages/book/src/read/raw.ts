/** A table before it has types: what a CSV file or a worksheet holds. */
export interface RawTable {
  /** File as the user knows it: `devices.csv`, or `devices` as a worksheet. */
  readonly file: string;
  readonly header: readonly string[];
  /** Rows below the heading, empty ones included, so that row `i` is row `i + 2` of the file. */
  readonly rows: readonly (readonly string[])[];
}

/** Everything of a book before it has types. Migrations turn one of these into the next. */
export interface RawBook {
  /** `machine.json` as parsed JSON; undefined when there is none. */
  readonly machine: unknown;
  /** Tables by name. A table that is absent is empty. */
  readonly tables: ReadonlyMap<string, RawTable>;
  /** Text of the outline files by file name. */
  readonly outlines: ReadonlyMap<string, string>;
  /** Tables and outlines that exist but could not be read; nothing is said about references to them. */
  readonly unreadable: ReadonlySet<string>;
}

/** A row whose columns are walked by the schema. */
export type AnyRow = Record<string, unknown>;
