import { isDeepStrictEqual } from "node:util";
import { applyChanges, type CellTables } from "@pinwright/book";
import type { ChangeSet } from "@pinwright/contract";
import Sqlite from "better-sqlite3";
import pg from "pg";
import { openStore } from "../../open.ts";
import type { Store, StorePlace } from "../../store.ts";
import { allSets, done, plain, replay } from "../cells.ts";
import { testOptions } from "../options.ts";
import { KILL_BOOK, killBook, WRITERS, writerTexts } from "./book.ts";
import type { Acknowledgements } from "./kill-writer.ts";

/** What was found after a kill. */
export interface Found {
  readonly acknowledged: number;
  /** Sets that are there whole though their writer was killed before it could say so. */
  readonly unsaid: number;
}

/** Puts the book into a new store. */
export async function prepare(place: StorePlace): Promise<void> {
  const store = await openStore(place, testOptions());
  const book = { id: KILL_BOOK, kind: "machine", tables: killBook(), note: "" } as const;
  done(await store.books.add(book, { personId: "maker", personName: "Maker" }));
  await store.close();
}

/**
 * Looks after each kill whether everything that was acknowledged is there under its number, nothing is there by half,
 * and the book is what its log makes of nothing. Throws when not.
 */
export class Survivors {
  readonly #place: StorePlace;
  readonly #acknowledged = new Map<string, number>();
  #no = 0;
  #tables: CellTables = new Map();

  constructor(place: StorePlace) {
    this.#place = place;
  }

  /** Looks at what came since the last look. */
  async look(acknowledged: Acknowledgements): Promise<Found> {
    await settled(this.#place);
    return this.#opened(async (store) => {
      const sets: ChangeSet[] = [];
      for (;;) {
        const more = done(await store.books.since(KILL_BOOK, this.#no + sets.length, 1000));
        sets.push(...more);
        if (more.length === 0) break;
      }
      const numbers = new Map(sets.map(({ id, no }) => [id, no]));
      for (const [id, no] of acknowledged) {
        this.#acknowledged.set(id, no);
        must(numbers.get(id) === no, `${id} was acknowledged as ${no} and is ${numbers.get(id)}`);
      }
      for (const { no, changes, cells } of sets) {
        must(no === this.#no + 1, `set ${no} comes after ${this.#no}`);
        must(changes.length === cells, `set ${no} has ${changes.length} cells of ${cells}`);
        const applied = applyChanges(this.#tables, changes);
        must(applied.tables !== null, `set ${no} does not follow`);
        this.#tables = applied.tables ?? this.#tables;
        this.#no = no;
      }
      const { info, tables } = done(await store.books.rows(KILL_BOOK));
      must(info.changeNo === this.#no, `the book counts ${info.changeNo} sets of ${this.#no}`);
      must(isDeepStrictEqual(plain(tables), plain(this.#tables)), "the book is not what its log makes");
      for (let writer = 0; writer < WRITERS; writer += 1) {
        must(writerTexts(tables, writer).size === 1, `a set of writer ${writer} is there by half`);
      }
      // The first look also sees the set that the book began with.
      const unsaid = sets.filter(({ id, no }) => no > 1 && !acknowledged.has(id)).length;
      must(unsaid <= WRITERS, `${unsaid} sets came from ${WRITERS} writers who wait for each answer`);
      return { acknowledged: acknowledged.size, unsaid };
    });
  }

  /** Looks at everything once more, from nothing: also at what was found before. */
  async lookAtAll(): Promise<{ readonly sets: number }> {
    return this.#opened(async (store) => {
      const sets = await allSets(store, KILL_BOOK);
      const { tables } = done(await store.books.rows(KILL_BOOK));
      must(isDeepStrictEqual(plain(replay(sets)), plain(tables)), "the book is not what its log makes");
      const numbers = new Map(sets.map(({ id, no }) => [id, no]));
      for (const [id, no] of this.#acknowledged) must(numbers.get(id) === no, `${id} is gone`);
      return { sets: sets.length };
    });
  }

  async #opened<T>(look: (store: Store) => Promise<T>): Promise<T> {
    const store = await openStore(this.#place, testOptions());
    try {
      return await look(store);
    } finally {
      await store.close();
    }
  }
}

function must(holds: boolean, otherwise: string): void {
  if (!holds) throw new Error(otherwise);
}

/** SQLite: the file is sound. PostgreSQL: what the killed process had begun is finished or taken back. */
async function settled(place: StorePlace): Promise<void> {
  if (place.kind === "sqlite") {
    const database = new Sqlite(place.file);
    const found: unknown = database.pragma("integrity_check", { simple: true });
    database.close();
    must(found === "ok", `the file is not sound: ${String(found)}`);
    return;
  }
  const client = new pg.Client(place.url);
  await client.connect();
  for (;;) {
    const { rowCount } = await client.query(
      "select 1 from pg_stat_activity where backend_type = 'client backend' and pid <> pg_backend_pid()",
    );
    if (rowCount === 0) break;
  }
  await client.end();
}
