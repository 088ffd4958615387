import { type BookRow, type CellChange, type CellTables, RANK } from "@pinwright/book";
import { newRowId, rankAtEnd } from "./rows.ts";

/** A row of `choices` as it should be, or without a value: as it should no longer be. */
export interface WantedChoice {
  readonly kind: BookRow<"choices">["kind"];
  readonly subject: string;
  readonly row: Omit<BookRow<"choices">, "kind" | "subject"> | null;
}

const TABLE = "choices";

/** The usual `held` is written as a blank, as in a book that a person wrote. */
const textsOf = ({ kind, subject, row }: WantedChoice): ReadonlyMap<string, string> =>
  new Map(
    row === null
      ? []
      : [
          ["kind", kind],
          ["subject", subject],
          ["value", row.value],
          ["held", row.held === "pinned" ? "" : row.held],
          ["by", row.by],
          ["reason", row.reason],
          ["basis", row.basis],
        ],
  );

const nameOf = (kind: string, subject: string): string => `${kind} ${subject}`;

/** The cells that make choices as they are wanted. What says the same already stays untouched. */
export function choiceChanges(tables: CellTables, wanted: readonly WantedChoice[]): readonly CellChange[] {
  const rows = tables.get(TABLE) ?? new Map<string, ReadonlyMap<string, string>>();
  const rowOf = new Map<string, string>();
  for (const [id, cells] of rows) rowOf.set(nameOf(cells.get("kind") ?? "", cells.get("subject") ?? ""), id);
  const isNew = ({ kind, subject, row }: WantedChoice): boolean =>
    row !== null && !rowOf.has(nameOf(kind, subject));
  const ranks = rankAtEnd(tables, TABLE, wanted.filter(isNew).length);
  let made = 0;
  return wanted.flatMap((choice): readonly CellChange[] => {
    const known = rowOf.get(nameOf(choice.kind, choice.subject));
    if (known === undefined && choice.row === null) return [];
    const row = known ?? newRowId();
    const before = rows.get(row) ?? new Map<string, string>();
    const after = new Map(textsOf(choice));
    if (choice.row !== null) after.set(RANK, before.get(RANK) ?? ranks[made++] ?? "");
    // Usual values that were written out stay written out.
    if (before.get("held") === "pinned" && choice.row?.held === "pinned") after.set("held", "pinned");
    const columns = new Set([RANK, ...before.keys(), ...after.keys()]);
    return [...columns].flatMap((column): readonly CellChange[] => {
      const from = before.get(column) ?? "";
      const to = after.get(column) ?? "";
      return from === to ? [] : [{ table: TABLE, row, column, from, to }];
    });
  });
}
