/**
 * Column builders: the single description of a cell from which types, CSV and XLSX reading and writing,
 * storage, the editing grid, reference checks and the generated documentation are made.
 */

/** A table of the book, by name. Kept as text here; `tables/index.ts` proves that every name exists. */
export type TableName = string;

/** What a cell may hold. A check or an editor switches over this list exhaustively. */
export type CellKind =
  /** the row's own id */
  | "id"
  /** id of a row in one other table */
  | "ref"
  /** several such ids, separated by one space */
  | "refs"
  /** id of any item: device, board, mechanism, fastener, in-line connector or `mechanism/child` */
  | "item"
  | "items"
  /** an electrical point of an item: `item:connector.pin` or `item:terminal` */
  | "point"
  /** a point inside a type: `connector.pin` or `terminal`; inside a mechanism type `child:terminal` */
  | "local-point"
  | "number"
  | "integer"
  | "choice"
  | "text"
  /** text that a person reads, with one further column for each further language */
  | "label"
  | "flag"
  /** one or two IEC 60757 colour codes written together: `RD`, `WHRD`; base first, then stripe */
  | "colour"
  | "colours"
  /** several short names separated by one space */
  | "names"
  /** file name in the book's `outlines` folder */
  | "outline";

/**
 * One column. `T` is the type of the value after reading. A blank cell reads as `blank`.
 * Lengths are mm, times ms or minutes, angles degrees anticlockwise: the unit is the end of the column's name.
 */
export interface Column<T> {
  readonly kind: CellKind;
  /** One sentence for the documentation and for the grid's heading. */
  readonly about: string;
  /** A blank cell is a fault. */
  readonly required: boolean;
  /** Value of a blank cell. */
  readonly blank: T;
  /** Table that a `ref` or `refs` points into. */
  readonly table?: TableName;
  /** Allowed words of a `choice`. */
  readonly oneOf?: readonly string[];
  /** Lowest and highest value of a `number` or `integer`, inclusive. */
  readonly min?: number;
  readonly max?: number;
}

interface NumberLimits {
  readonly min?: number;
  readonly max?: number;
}

const limits = (l: NumberLimits | undefined): NumberLimits => l ?? {};

export const id = (about: string): Column<string> => ({ kind: "id", about, required: true, blank: "" });

export const ref = (table: TableName, about: string): Column<string> => ({
  kind: "ref",
  table,
  about,
  required: true,
  blank: "",
});
export const maybeRef = (table: TableName, about: string): Column<string | null> => ({
  kind: "ref",
  table,
  about,
  required: false,
  blank: null,
});
export const refs = (table: TableName, about: string): Column<readonly string[]> => ({
  kind: "refs",
  table,
  about,
  required: false,
  blank: [],
});

export const item = (about: string): Column<string> => ({ kind: "item", about, required: true, blank: "" });
export const maybeItem = (about: string): Column<string | null> => ({
  kind: "item",
  about,
  required: false,
  blank: null,
});
export const items = (about: string): Column<readonly string[]> => ({
  kind: "items",
  about,
  required: false,
  blank: [],
});

export const point = (about: string): Column<string> => ({ kind: "point", about, required: true, blank: "" });
export const maybePoint = (about: string): Column<string | null> => ({
  kind: "point",
  about,
  required: false,
  blank: null,
});
export const localPoint = (about: string): Column<string> => ({
  kind: "local-point",
  about,
  required: true,
  blank: "",
});

export const num = (about: string, l?: NumberLimits): Column<number> => ({
  kind: "number",
  about,
  required: true,
  blank: 0,
  ...limits(l),
});
export const maybeNum = (about: string, l?: NumberLimits): Column<number | null> => ({
  kind: "number",
  about,
  required: false,
  blank: null,
  ...limits(l),
});
/** A number whose blank cell means `blank`. */
export const numOr = (blank: number, about: string, l?: NumberLimits): Column<number> => ({
  kind: "number",
  about,
  required: false,
  blank,
  ...limits(l),
});
export const int = (about: string, l?: NumberLimits): Column<number> => ({
  kind: "integer",
  about,
  required: true,
  blank: 0,
  ...limits(l),
});
export const maybeInt = (about: string, l?: NumberLimits): Column<number | null> => ({
  kind: "integer",
  about,
  required: false,
  blank: null,
  ...limits(l),
});
export const intOr = (blank: number, about: string, l?: NumberLimits): Column<number> => ({
  kind: "integer",
  about,
  required: false,
  blank,
  ...limits(l),
});

export const choice = <const W extends readonly string[]>(oneOf: W, about: string): Column<W[number]> => ({
  kind: "choice",
  oneOf,
  about,
  required: true,
  blank: oneOf[0] ?? "",
});
export const choiceOr = <const W extends readonly string[]>(
  blank: W[number],
  oneOf: W,
  about: string,
): Column<W[number]> => ({ kind: "choice", oneOf, about, required: false, blank });

export const text = (about: string): Column<string> => ({ kind: "text", about, required: true, blank: "" });
export const maybeText = (about: string): Column<string> => ({
  kind: "text",
  about,
  required: false,
  blank: "",
});
export const names = (about: string): Column<readonly string[]> => ({
  kind: "names",
  about,
  required: false,
  blank: [],
});
export const flag = (about: string): Column<boolean> => ({
  kind: "flag",
  about,
  required: false,
  blank: false,
});
export const maybeColour = (about: string): Column<string | null> => ({
  kind: "colour",
  about,
  required: false,
  blank: null,
});
export const colours = (about: string): Column<readonly string[]> => ({
  kind: "colours",
  about,
  required: false,
  blank: [],
});
export const maybeOutline = (about: string): Column<string | null> => ({
  kind: "outline",
  about,
  required: false,
  blank: null,
});

/** Languages beside English in which a label may be given; English is the plain `label` column. */
export const LANGUAGES = ["zh"] as const;

/** `label` and one `label_<language>` for each further language. */
export const labels = () =>
  ({
    label: { kind: "label", about: "Name in English.", required: false, blank: "" } as Column<string>,
    label_zh: {
      kind: "label",
      about: "Name in Simplified Chinese.",
      required: false,
      blank: "",
    } as Column<string>,
  }) as const;

/** The applicability column: a blank cell means that the row belongs to every machine. */
export const applies = () =>
  ({
    options: refs("options", "The row applies when one of these options is chosen; blank: always."),
  }) as const;
