/** A row of a table as the page has it: its id and the texts of its cells by column; blank cells are absent. */
export interface TableRow {
  readonly id: string;
  readonly cells: Readonly<Record<string, string>>;
}

/** What is shown of a table, and in which order. It never changes the table. */
export interface Arrangement {
  /** Words that must all be somewhere in the row. */
  readonly text: string;
  /** What must be in a column, by its name. */
  readonly byColumn: Readonly<Record<string, string>>;
  readonly sort: { readonly column: string; readonly down: boolean } | null;
  /** Ids of the only rows to show, such as those with faults. */
  readonly only: ReadonlySet<string> | null;
}

export const AS_IT_IS: Arrangement = { text: "", byColumn: {}, sort: null, only: null };

export const isAsItIs = ({ text, byColumn, sort, only }: Arrangement): boolean =>
  text.trim() === "" &&
  sort === null &&
  only === null &&
  Object.values(byColumn).every((sought) => sought.trim() === "");

/** Whether a cell matches: `=text` exactly, `=` blank, `*` filled, else anywhere in it; capitals do not count. */
export function cellMatches(cell: string, sought: string): boolean {
  const wanted = sought.trim().toLowerCase();
  const text = cell.toLowerCase();
  if (wanted === "*") return text !== "";
  if (wanted.startsWith("=")) return text === wanted.slice(1).trim();
  return text.includes(wanted);
}

function rowMatches(row: TableRow, { text, byColumn, only }: Arrangement): boolean {
  if (only !== null && !only.has(row.id)) return false;
  for (const [column, sought] of Object.entries(byColumn))
    if (sought.trim() !== "" && !cellMatches(row.cells[column] ?? "", sought)) return false;
  const words = text.trim().toLowerCase().split(/\s+/);
  const texts = Object.entries(row.cells).flatMap(([name, cell]) =>
    name === "#" ? [] : [cell.toLowerCase()],
  );
  return words.every((word) => texts.some((cell) => cell.includes(word)));
}

const collator = new Intl.Collator("en", { numeric: true });

/** Numbers by value, before texts; texts with the numbers in them by value; blank cells last either way. */
function compareCells(a: string, b: string, down: boolean): number {
  if (a === "" || b === "") return a === b ? 0 : a === "" ? 1 : -1;
  const [x, y] = [Number(a), Number(b)];
  const [isX, isY] = [!Number.isNaN(x), !Number.isNaN(y)];
  const order = isX && isY ? x - y : isX ? -1 : isY ? 1 : collator.compare(a, b);
  return down ? -order : order;
}

/** The rows that are shown, in the order in which they are shown. */
export function arrange(rows: readonly TableRow[], arrangement: Arrangement): readonly TableRow[] {
  if (isAsItIs(arrangement)) return rows;
  const left = rows.filter((row) => rowMatches(row, arrangement));
  const { sort } = arrangement;
  if (sort === null) return left;
  const cell = (row: TableRow): string => row.cells[sort.column] ?? "";
  return [...left].sort((a, b) => compareCells(cell(a), cell(b), sort.down));
}

/**
 * The order in which rows stay while they are edited: rows that are gone are left out, new ones come last, and
 * nothing jumps away because its text no longer matches or sorts elsewhere.
 */
export function keepOrder(
  before: readonly string[],
  known: ReadonlySet<string>,
  rows: readonly TableRow[],
): readonly string[] {
  const ids = new Set(rows.map((row) => row.id));
  const kept = before.filter((id) => ids.has(id));
  const added = rows.flatMap((row) => (known.has(row.id) ? [] : [row.id]));
  return kept.length === before.length && added.length === 0 ? before : [...kept, ...added];
}
