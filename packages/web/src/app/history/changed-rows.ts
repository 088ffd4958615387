import type { ChangeSet } from "@pinwright/contract";

/** Column that says that a row exists and where it stands, as the book's `RANK`. */
const RANK = "#";
const OUTLINES = "outlines";

type Change = ChangeSet["changes"][number];

/** What a change set did to one row. */
export interface ChangedRow {
  readonly table: string;
  readonly row: string;
  readonly what: "added" | "removed" | "changed" | "moved";
  readonly cells: readonly { readonly column: string; readonly from: string; readonly to: string }[];
}

/** Texts before and after; a set may change one cell several times. */
function cellsOf(changes: readonly Change[]): ReadonlyMap<string, { from: string; to: string }> {
  const cells = new Map<string, { from: string; to: string }>();
  for (const { column, from, to } of changes) {
    const known = cells.get(column);
    if (known === undefined) cells.set(column, { from, to });
    else known.to = to;
  }
  return cells;
}

function changedRow(table: string, row: string, changes: readonly Change[]): ChangedRow {
  const cells = cellsOf(changes);
  const rank = cells.get(RANK);
  const others = [...cells].filter(([column, { from, to }]) => column !== RANK && from !== to);
  const what =
    rank === undefined || rank.from === rank.to
      ? "changed"
      : rank.from === ""
        ? "added"
        : rank.to === ""
          ? "removed"
          : others.length === 0
            ? "moved"
            : "changed";
  return { table, row, what, cells: others.map(([column, { from, to }]) => ({ column, from, to })) };
}

/** What a change set did, row by row, in the order in which it was done. */
export function changedRows(changes: readonly Change[]): readonly ChangedRow[] {
  const byRow = new Map<string, Change[]>();
  for (const change of changes) {
    const key = `${change.table} ${change.row}`;
    const own = byRow.get(key);
    if (own === undefined) byRow.set(key, [change]);
    else own.push(change);
  }
  return [...byRow.values()].flatMap((own) => {
    const [first] = own;
    return first === undefined ? [] : [changedRow(first.table, first.row, own)];
  });
}

/** What a row was called when it is no longer there: its first cells, as the change set has them. */
export function nameIn({ table, row, cells }: ChangedRow): string {
  if (table === OUTLINES) return row;
  const id = cells.find((cell) => cell.column === "id") ?? cells[0];
  return id === undefined ? row : id.to || id.from;
}

/** Whether a cell holds a whole drawing, whose text says nothing to a reader. */
export const isDrawing = (table: string, column: string): boolean => table === OUTLINES && column === "text";

/** Change sets by the day on which they were made, in the reader's own time; the order is kept. */
export function byDay<T extends { readonly at: string }>(
  heads: readonly T[],
  dayOf: (at: Date) => string,
): readonly { readonly day: string; readonly heads: readonly T[] }[] {
  const days: { day: string; heads: T[] }[] = [];
  for (const head of heads) {
    const day = dayOf(new Date(head.at));
    const last = days.at(-1);
    if (last?.day === day) last.heads.push(head);
    else days.push({ day, heads: [head] });
  }
  return days;
}

/** Newer and older lists of change sets as one, last first; the newer one is right where both have a set. */
export function joined<T extends { readonly no: number }>(
  newer: readonly T[],
  older: readonly T[],
): readonly T[] {
  const known = new Set(newer.map((head) => head.no));
  return [...newer, ...older.filter((head) => !known.has(head.no))].sort((a, b) => b.no - a.no);
}
