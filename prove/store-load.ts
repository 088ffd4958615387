/**
 * Measures the store by itself on a book of Tidewatch's size: reading it whole, single changes, changes of 50 people
 * who write one after the other without a pause, a snapshot and a back-up; on SQLite and on a PostgreSQL that waits for
 * the disk. Afterwards the book must equal the replay of its log. Writes `results/store-load.json`.
 *
 * Says too how busy the machine was otherwise: with more work than cores, all times grow.
 *
 *     npx tsx prove/store-load.ts
 */
import { mkdtemp, rm, stat, writeFile } from "node:fs/promises";
import { cpus, loadavg, tmpdir } from "node:os";
import { join } from "node:path";
import { isDeepStrictEqual } from "node:util";
import { type CellTables, cellTablesOf } from "@pinwright/book";
import { readRawFiles } from "@pinwright/book/io";
import { openStore, type Store, type StorePlace } from "@pinwright/store";
import { allSets, cell, done, edit, plain, replay } from "../packages/store/src/testing/cells.ts";
import { startPostgres } from "../packages/store/src/testing/postgres.ts";

const PEOPLE = 50;
const WRITES_EACH = 60;
const SINGLE = 300;
const READS = 20;
const MOST_P99_MS = 100;

const round = (ms: number): number => Math.round(ms * 100) / 100;

/** Median, 99th percentile and longest of a list of milliseconds. */
function spread(ms: readonly number[]) {
  const sorted = ms.toSorted((a, b) => a - b);
  const at = (share: number) =>
    round(sorted[Math.min(sorted.length - 1, Math.floor(share * sorted.length))] ?? 0);
  return { count: ms.length, medianMs: at(0.5), p99Ms: at(0.99), maxMs: at(1) };
}

async function timed<T>(work: () => Promise<T>): Promise<{ readonly ms: number; readonly result: T }> {
  const start = performance.now();
  const result = await work();
  return { ms: performance.now() - start, result };
}

async function repeat(times: number, work: (n: number) => Promise<unknown>): Promise<number[]> {
  const ms: number[] = [];
  for (let n = 0; n < times; n += 1) ms.push((await timed(() => work(n))).ms);
  return ms;
}

/** Moves a device of a person's own about, one request after the other. */
async function work(store: Store, tables: CellTables, person: number, writes: number): Promise<number[]> {
  const rows = [...(tables.get("devices") ?? [])];
  const [row = "", cells] = rows[person % rows.length] ?? [];
  const actor = { personId: `p${person}`, personName: `Person ${person}` };
  let from = cells?.get("note") ?? "";
  return repeat(writes, async (n) => {
    const to = `${person}.${n}`;
    const set = edit(`p${person}-${writes}-${n}`, cell("devices", row, "note", from, to));
    done(await store.books.change("tidewatch", set, actor));
    from = to;
  });
}

async function measure(place: StorePlace, tables: CellTables, folder: string) {
  let id = 0;
  const store = await openStore(place, {
    now: () => new Date().toISOString(),
    newId: () => {
      id += 1;
      return `id-${id}`;
    },
  });
  const actor = { personId: "ann", personName: "Ann" };
  const book = { id: "tidewatch", kind: "machine", tables, note: "" } as const;
  const add = await timed(() => store.books.add(book, actor));
  const rows = await repeat(READS, async () => done(await store.books.rows("tidewatch")));
  const single = await work(store, tables, PEOPLE, SINGLE);
  const together = await timed(() =>
    Promise.all(Array.from({ length: PEOPLE }, (_, person) => work(store, tables, person, WRITES_EACH))),
  );
  const snapshot = await timed(() => store.books.addSnapshot("tidewatch", "measured", actor));
  const file = join(folder, `${place.kind}.zip`);
  const backUp = await timed(() => store.backUp(file));
  const undo = await timed(() =>
    store.books.undo("tidewatch", "undo-it-1", { personId: "p1", personName: "" }),
  );
  done(undo.result);
  const kept = done(await store.books.rows("tidewatch")).tables;
  const sets = await allSets(store, "tidewatch");
  await store.close();
  const equalsReplay = isDeepStrictEqual(plain(kept), plain(replay(sets)));
  return {
    cells: [...tables.values()].flatMap((some) => [...some.values()]).reduce((sum, row) => sum + row.size, 0),
    addMs: round(add.ms),
    rows: spread(rows),
    change: spread(single),
    changeOf50AtOnce: {
      ...spread(together.result.flat()),
      perSecond: Math.round((PEOPLE * WRITES_EACH) / (together.ms / 1000)),
    },
    undoMs: round(undo.ms),
    snapshotMs: round(snapshot.ms),
    backUpMs: round(backUp.ms),
    backUpBytes: (await stat(file)).size,
    equalsReplay,
  };
}

const { found } = await readRawFiles(join(import.meta.dirname, "../examples/tidewatch"));
if (found === null) throw new Error("Tidewatch cannot be read");
const tables = cellTablesOf(found.raw);
const loadBefore = loadavg().map(round);
const folder = await mkdtemp(join(tmpdir(), "pinwright-load-"));
const postgres = await startPostgres({ durable: true });
try {
  const sqlite = await measure({ kind: "sqlite", file: join(folder, "store.sqlite") }, tables, folder);
  const pg = await measure({ kind: "postgres", url: await postgres.newPlace() }, tables, folder);
  const machine = { cores: cpus().length, loadBefore, loadAfter: loadavg().map(round) };
  const results = { machine, sqlite, postgres: pg };
  const text = `${JSON.stringify(results, null, 2)}\n`;
  process.stdout.write(text);
  await writeFile(join(import.meta.dirname, "results/store-load.json"), text);
  for (const { changeOf50AtOnce, equalsReplay } of [sqlite, pg]) {
    if (!equalsReplay || changeOf50AtOnce.p99Ms > MOST_P99_MS) process.exitCode = 1;
  }
} finally {
  await postgres.stop();
  await rm(folder, { recursive: true, force: true });
}
