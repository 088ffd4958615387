import { createHash } from "node:crypto";
import { promisify } from "node:util";
import { gunzip, gzip } from "node:zlib";
import type { Cells, CellTables } from "@pinwright/book";
import type { Snapshot } from "@pinwright/contract";
import type { Kysely, Selectable } from "kysely";
import type { Database } from "../database/database.ts";
import type { Tables } from "../database/schema.ts";
import { StoreError } from "../error.ts";
import type { Actor, Outcome } from "../store.ts";
import { readTables } from "./book-rows.ts";
import { cellsOf, isText } from "./cells-json.ts";
import { findBook } from "./heads.ts";

const zip = promisify(gzip);
const unzip = promisify(gunzip);

const snapshot = (row: Selectable<Tables["snapshots"]>): Snapshot => ({
  id: row.id,
  name: row.name,
  changeNo: row.change_no,
  personName: row.person_name,
  at: row.at,
  hash: row.hash,
});

export async function listSnapshots(db: Kysely<Tables>, book: string): Promise<Outcome<readonly Snapshot[]>> {
  if ((await findBook(db, book)) === undefined) return { refused: "not-found" };
  const rows = await db
    .selectFrom("snapshots")
    .selectAll()
    .where("book", "=", book)
    .orderBy("change_no", "desc")
    .orderBy("at", "desc")
    .orderBy("id")
    .execute();
  return { done: rows.map(snapshot) };
}

/** Keeps the state of a book at this moment; what others write meanwhile does not wait for it. */
export async function addSnapshot(
  { read, write }: Database,
  book: string,
  named: { readonly id: string; readonly name: string; readonly at: string; readonly actor: Actor },
): Promise<Outcome<Snapshot>> {
  const state = await read(async (db) => {
    const row = await findBook(db, book);
    return row && { changeNo: row.change_no, tables: await readTables(db, book) };
  });
  if (state === undefined) return { refused: "not-found" };
  const json = tablesJson(state.tables);
  const hash = sha256(json);
  const body = await zip(json);
  return write(async (db) => {
    await db
      .insertInto("snapshot_bodies")
      .values({ hash, body })
      .onConflict((conflict) => conflict.column("hash").doNothing())
      .execute();
    const row = await db
      .insertInto("snapshots")
      .values({
        book,
        id: named.id,
        name: named.name,
        change_no: state.changeNo,
        person_name: named.actor.personName,
        at: named.at,
        hash,
      })
      .onConflict((conflict) => conflict.columns(["book", "name"]).doNothing())
      .returningAll()
      .executeTakeFirst();
    return row ? { done: snapshot(row) } : { refused: "taken" };
  });
}

/** What a snapshot holds. Throws a `StoreError` when that is no longer what was put there. */
export async function snapshotTables(
  db: Kysely<Tables>,
  book: string,
  id: string,
): Promise<Outcome<CellTables>> {
  const row = await db
    .selectFrom("snapshots")
    .innerJoin("snapshot_bodies", "snapshot_bodies.hash", "snapshots.hash")
    .select(["snapshots.name", "snapshots.hash", "body"])
    .where("book", "=", book)
    .where("id", "=", id)
    .executeTakeFirst();
  if (row === undefined) return { refused: "not-found" };
  const json = await unzip(row.body).then(String, () => "");
  if (sha256(json) === row.hash) return { done: readTablesJson(json) };
  throw new StoreError(
    "damaged",
    `Snapshot ${row.name} of ${book} is not what was stored under its hash; restore a back-up.`,
  );
}

const sha256 = (text: string): string => createHash("sha256").update(text).digest("hex");

const sorted = <T>(map: ReadonlyMap<string, T>): readonly (readonly [string, T])[] =>
  [...map].sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0));

/** One text for one content: a line for each row, in code-unit order: table, row id, cells. */
const tablesJson = (tables: CellTables): string =>
  sorted(tables)
    .flatMap(([table, rows]) =>
      sorted(rows).map(([row, cells]) => JSON.stringify([table, row, Object.fromEntries(sorted(cells))])),
    )
    .join("\n");

function readTablesJson(text: string): CellTables {
  const tables = new Map<string, Map<string, Cells>>();
  for (const line of text.split("\n").filter(Boolean)) {
    const parts: unknown = JSON.parse(line);
    if (!Array.isArray(parts)) throw new RangeError(`No row of a snapshot: ${line}`);
    const [table, row, cells]: readonly unknown[] = parts;
    if (!isText(table) || !isText(row)) throw new RangeError(`No row of a snapshot: ${line}`);
    const rows = tables.get(table) ?? new Map<string, Cells>();
    tables.set(table, rows);
    rows.set(row, cellsOf(cells));
  }
  return tables;
}
