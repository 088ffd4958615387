import { sql } from "kysely";
import { afterEach, beforeEach, expect, it } from "vitest";
import type { Database } from "../../database/database.ts";
import { openDatabase } from "../../database/open-database.ts";
import { openStore } from "../../open.ts";
import type { Store, StorePlace } from "../../store.ts";
import { done } from "../cells.ts";
import { fill } from "../filled-store.ts";
import type { FreshPlace } from "../on-both-stores.ts";
import { ANN, testOptions } from "../options.ts";

/** Tables that are written once: their keys, and a column that somebody might wish to be another. */
const TABLES = [
  { table: "releases", keys: ["book, name", "book, no"], column: "manifest", references: ["service_books"] },
  { table: "release_items", keys: ["book, release, kind, id"], column: "about", references: [] },
  { table: "release_bodies", keys: ["hash"], column: "size", references: ["release_items"] },
  { table: "service_books", keys: ["book, release, key"], column: "about", references: [] },
] as const;

/** Rows of all these tables, as the database has them. */
async function rowsOf({ db, kind }: Database): Promise<string> {
  const all = [];
  for (const { table } of TABLES) {
    const number = kind === "sqlite" ? "rowid as row_no, " : "";
    const { rows } = await sql.raw(`select ${number}* from ${table} order by 1, 2, 3`).execute(db);
    all.push(rows);
  }
  return JSON.stringify(all);
}

async function columnsOf({ db }: Database, table: string): Promise<readonly string[]> {
  const { rows } = await sql.raw(`select * from ${table} limit 1`).execute(db);
  const [row] = rows;
  return typeof row === "object" && row !== null ? Object.keys(row) : [];
}

/** What was released stays, whatever is asked of the database itself. */
export function releasedStaysSuite(fresh: FreshPlace): void {
  let place: StorePlace;
  let store: Store;
  let database: Database;
  beforeEach(async () => {
    place = await fresh();
    store = await openStore(place, testOptions());
    await fill(store);
    const { changeNo = 0 } = (await store.books.info("heron")) ?? {};
    const again = {
      ...{ book: "heron", name: "P2", request: "request-8", note: "", program: "0.1.0", changeNo },
      ...{ findings: { error: 0, warning: 0, note: 0 }, accepted: [] },
      items: [{ kind: "tables" as const, id: "book", about: {}, body: Buffer.from('{"devices":{}}') }],
    };
    done(await store.releases.add(again, ANN));
    database = await openDatabase(place);
  });
  afterEach(async () => {
    await database.close();
    await store.close();
  });

  /** Asks it, and holds that it was refused and that every byte is as it was. */
  const refused = async (statement: string, before: string): Promise<void> => {
    await expect(sql.raw(statement).execute(database.db), statement).rejects.toThrow(/never changes/u);
    expect(await rowsOf(database), statement).toBe(before);
  };

  it("and is neither changed nor dropped by any statement, in any table", async () => {
    const before = await rowsOf(database);
    for (const { table, column, references } of TABLES) {
      const value = column === "size" ? "1" : "'x'";
      const changes = [`update ${table} set ${column} = ${value}`, `delete from ${table}`];
      if (place.kind === "sqlite")
        for (const or of ["rollback", "abort", "fail", "ignore", "replace"])
          changes.push(`update or ${or} ${table} set ${column} = ${value}`);
      else
        changes.push(
          `truncate ${[table, ...references].join(", ")} cascade`,
          `with gone as (delete from ${table} returning 1) select count(*) from gone`,
          `merge into ${table} as old using (select 1 as one) as new on true
             when matched then update set ${column} = ${value}`,
          `merge into ${table} as old using (select 1 as one) as new on true when matched then delete`,
        );
      for (const statement of changes) await refused(statement, before);
    }
    expect(await store.releases.verify()).toEqual([]);
  });

  it("and no row of the same key, or of the same number, takes the place of one", async () => {
    const before = await rowsOf(database);
    for (const { table, keys, column } of TABLES) {
      const columns = await columnsOf(database, table);
      // The same row with another value, and for the number of a release another name.
      const changed = (but: string): string =>
        columns
          .map((one) =>
            one === column ? (one === "size" ? "size + 1" : "'x'") : one === but ? `${one} || '-2'` : one,
          )
          .join(", ");
      for (const key of keys) {
        const row = `(${columns.join(", ")}) select ${changed(key === "book, no" ? "name" : "")} from ${table}`;
        const first = `${row} where true order by 1, 2, 3 limit 1`;
        const upsert = `insert into ${table} ${first} on conflict (${key}) do update set ${column} = excluded.${column}`;
        await refused(upsert, before);
        if (place.kind === "postgres") continue;
        for (const insert of ["replace", "insert or replace"])
          await refused(`${insert} into ${table} ${first}`, before);
        await refused(`insert or replace into ${table} ${row}`, before);
      }
      if (place.kind === "postgres") continue;
      // A row of a key of its own under the row number of one that is there.
      const [own = ""] = columns.filter((one) => ["name", "id", "hash", "key"].includes(one));
      const other = columns.map((one) => (one === own ? `${one} || '-3'` : one === "no" ? "no + 50" : one));
      await refused(
        `insert or replace into ${table} (rowid, ${columns.join(", ")})
           select rowid, ${other.join(", ")} from ${table} order by rowid limit 1`,
        before,
      );
    }
    expect(await store.releases.verify()).toEqual([]);
  });

  it("while what is given twice is written once", async () => {
    const own = { book: "heron", release: "P1", key: "usual" };
    const first = await store.serviceBooks.keep(own, "{}", Buffer.from("another"));
    expect(Buffer.from(first).toString()).toBe("维修手册");
    const twice = Buffer.from("the same twice");
    const items = ["one", "two"].map((id) => ({ kind: "results" as const, id, about: {}, body: twice }));
    const { changeNo = 0 } = (await store.books.info("heron")) ?? {};
    const release = {
      ...{ book: "heron", name: "P3", request: "request-9", note: "", program: "0.1.0", changeNo },
      ...{ findings: { error: 0, warning: 0, note: 0 }, accepted: [], items },
    };
    done(await store.releases.add(release, ANN));
    expect(done(await store.releases.body("heron", "P3", "results", "two"))).toEqual(twice);
    expect(await store.releases.verify()).toEqual([]);
  });

  it("and a service book shows it when somebody got round that", async () => {
    const drop = place.kind === "sqlite" ? "service_books_no_update" : "service_books_stay on service_books";
    await sql.raw(`drop trigger ${drop}`).execute(database.db);
    await sql`update service_books set body = ${Buffer.from("not gzip")}`.execute(database.db);
    expect(await store.releases.verify()).toEqual([
      { book: "heron", release: "P1", item: "service-book usual", what: "changed" },
    ]);
  });
}
