import { type CellChange, type CellTables, cellOf, RANK } from "@pinwright/book";
import { newRowId, rankAtEnd } from "./rows.ts";

const TABLE = "choices";

/** Findings that a person lives with, each up to the numbers of its basis. */
export interface AcceptFindings {
  readonly kind: "accept";
  readonly findings: readonly { readonly subject: string; readonly basis: string }[];
  readonly by: string;
  readonly reason: string;
}

/** Acceptances that are taken back. */
export interface ReopenFindings {
  readonly kind: "reopen";
  readonly subjects: readonly string[];
}

/** Row ids of the acceptances of the book by subject. */
function acceptances(tables: CellTables): ReadonlyMap<string, string> {
  const rows = [...(tables.get(TABLE) ?? [])].filter(([, cells]) => cells.get("kind") === "accept");
  return new Map(rows.map(([row, cells]) => [cells.get("subject") ?? "", row]));
}

export function acceptFindings(
  tables: CellTables,
  { findings, by, reason }: AcceptFindings,
): readonly CellChange[] {
  const known = acceptances(tables);
  const fresh = findings.filter(({ subject }) => !known.has(subject));
  const ranks = rankAtEnd(tables, TABLE, fresh.length);
  return findings.flatMap(({ subject, basis }) => {
    const old = known.get(subject);
    const row = old ?? newRowId();
    const rank =
      old === undefined ? { [RANK]: ranks[fresh.findIndex((f) => f.subject === subject)] ?? "" } : {};
    const cells = { ...rank, kind: "accept", subject, by, reason, basis };
    return Object.entries(cells).flatMap(([column, to]) => {
      const from = cellOf(tables, TABLE, row, column);
      return from === to ? [] : [{ table: TABLE, row, column, from, to }];
    });
  });
}

export function reopenFindings(tables: CellTables, { subjects }: ReopenFindings): readonly CellChange[] {
  const known = acceptances(tables);
  return subjects.flatMap((subject) => {
    const row = known.get(subject);
    const cells = row === undefined ? undefined : tables.get(TABLE)?.get(row);
    if (row === undefined || cells === undefined) return [];
    return [...cells].map(([column, from]) => ({ table: TABLE, row, column, from, to: "" }));
  });
}
