/**
 * Releases of Tidewatch through the server, on SQLite and on PostgreSQL: the first one, a second one with the label of one
 * switch changed, and one that is refused because all is as it was again; how much each adds to the store; the check of all
 * of them, what is known of a print, reading sheets, and the export. `npx tsx bench/releases.ts
 * [--store sqlite|postgresql] [--times 1] [--example first-light]`: only a run of Tidewatch at its own size on both stores replaces the results.
 */
import { randomUUID } from "node:crypto";
import { mkdtemp, rm } from "node:fs/promises";
import { loadavg, tmpdir } from "node:os";
import { join } from "node:path";
import { monitorEventLoopDelay } from "node:perf_hooks";
import { setTimeout as sleep } from "node:timers/promises";
import { parseArgs } from "node:util";
import { cellTablesOf, multiplyBook } from "@pinwright/book";
import { readBook, readRawFiles, writeBook } from "@pinwright/book/io";
import {
  bookRowsSchema,
  printStateSchema,
  type ReleaseJob,
  releasedSheetSchema,
  releaseItemSchema,
  releaseJobSchema,
} from "@pinwright/contract";
import { openStore, type StorePlace } from "@pinwright/store";
import { startPostgres } from "@pinwright/store/testing";
import { sqliteBytes } from "../packages/store/src/testing/sqlite-bytes.ts";
import { repeated, tenth, writeResults } from "./measure.ts";
import { openServer } from "./records/ask.ts";

const { values } = parseArgs({
  options: {
    store: { type: "string" },
    times: { type: "string", default: "1" },
    example: { type: "string", default: "tidewatch" },
  },
});
const TIMES = Number(values.times);
const BOOK = "bench";
/** Runs of what is quick. */
const RUNS = 9;
/** How finely it is looked whether the main thread is free, ms. */
const RESOLUTION_MS = 2;
const MIB = 2 ** 20;

type Row = Record<string, string | number>;
const rows: Row[] = [];

/** Folder of the example, as it is or several times as large. */
async function bookFolder(folder: string): Promise<string> {
  const example = join(import.meta.dirname, "../examples", values.example);
  if (TIMES === 1) return example;
  const larger = join(folder, "larger");
  const { book } = await readBook(example);
  await writeBook(larger, multiplyBook(book, TIMES));
  return larger;
}

async function run(kind: string, place: StorePlace, folder: string, bytes: () => Promise<number>) {
  let ids = 0;
  const store = await openStore(place, { now: () => new Date().toISOString(), newId: () => `id-${++ids}` });
  const server = await openServer(store, join(folder, "temp"));
  const tell = (row: Row): void => {
    rows.push({ store: kind, example: values.example, times: TIMES, ...row, load: tenth(loadavg()[0] ?? 0) });
    process.stderr.write(`${JSON.stringify(rows.at(-1))}\n`);
  };
  /** Time of a job, of all threads of the processor, and the longest in which the main thread was not free. */
  const timedJob = async <T>(
    what: string,
    work: () => Promise<T>,
    more: (result: T) => Row | Promise<Row>,
  ) => {
    const delay = monitorEventLoopDelay({ resolution: RESOLUTION_MS });
    delay.enable();
    const cpu = process.cpuUsage();
    const start = performance.now();
    const result = await work();
    const ms = performance.now() - start;
    const { user, system } = process.cpuUsage(cpu);
    delay.disable();
    const blocked = Math.max(0, delay.max / 1e6 - RESOLUTION_MS);
    const own = { ms: tenth(ms), cpu_ms: tenth((user + system) / 1000), blocked_most_ms: tenth(blocked) };
    tell({ what, ...own, ...(await more(result)) });
    return result;
  };
  const often = async (what: string, work: () => Promise<unknown>): Promise<void> => {
    const { coldMs, medianMs, maxMs } = await repeated(RUNS, work);
    tell({ what, ms: tenth(medianMs), cold_ms: tenth(coldMs), most_ms: tenth(maxMs) });
  };
  const get = async (path: string): Promise<unknown> => JSON.parse(await server.get(path));
  const at = `/api/books/${BOOK}`;
  const release = async (name: string): Promise<ReleaseJob> => {
    const body = { id: randomUUID(), name, note: "" };
    const made = releaseJobSchema.parse(JSON.parse(await server.post(`${at}/releases`, body)));
    for (;;) {
      const job = releaseJobSchema.parse(await get(`/api/release-jobs/${made.id}`));
      if (job.state === "done") return job;
      if (job.state !== "running" && job.state !== "waiting") throw new Error(`${job.state}: ${job.now}`);
      await sleep(200);
    }
  };
  const sheetsOf = async (name: string) =>
    releasedSheetSchema.array().parse(await get(`${at}/releases/${name}/sheets`));
  let kept = 0;
  const added = async (name: string): Promise<Row> => {
    const before = kept;
    kept = await bytes();
    const items = releaseItemSchema.array().parse(await get(`${at}/releases/${name}/items`));
    const size = items.reduce((sum, item) => sum + item.bytes, 0);
    return {
      sheets: (await sheetsOf(name)).length,
      items: items.length,
      items_mib: tenth(size / MIB),
      added_mib: tenth((kept - before) / MIB),
    };
  };
  try {
    const { found } = await readRawFiles(await bookFolder(folder));
    if (found === null) throw new Error("There is no book to release.");
    const actor = { personId: "bench", personName: "Bench" };
    await store.books.add({ id: BOOK, kind: "machine", tables: cellTablesOf(found.raw), note: "" }, actor);
    kept = await bytes();
    await timedJob(
      "first release",
      () => release("A"),
      () => added("A"),
    );

    const { tables } = bookRowsSchema.parse(await get(`${at}/rows`));
    const [row = "", cells = {}] =
      Object.entries(tables.devices ?? {}).find(([, { id }]) => id?.startsWith("sw.")) ?? [];
    const change = (from: string, to: string) =>
      server.post(`${at}/changes`, {
        id: randomUUID(),
        changes: [{ table: "devices", row, column: "label", from, to }],
      });
    const label = cells.label ?? "";
    await change(label, `${label} too`);
    await timedJob(
      "second release, one label changed",
      () => release("B"),
      async () => {
        const before = new Map((await sheetsOf("A")).map(({ id, bodyHash }) => [id, bodyHash]));
        const changed = (await sheetsOf("B")).filter(
          ({ id, bodyHash }) => before.get(id) !== bodyHash,
        ).length;
        return { ...(await added("B")), changed_sheets: changed };
      },
    );

    await change(`${label} too`, label);
    await change(label, `${label} too`);
    await timedJob(
      "refusal of a third, all is as it was",
      () =>
        release("C").then(
          () => false,
          () => true,
        ),
      (isRefused) => {
        if (!isRefused) throw new Error("What is as it was, was released.");
        return {};
      },
    );
    await timedJob(
      "check of every byte",
      () => get("/api/releases-check"),
      (faults) => {
        if (!Array.isArray(faults) || faults.length > 0) throw new Error(JSON.stringify(faults));
        return {};
      },
    );
    const all = await sheetsOf("A");
    const newest = new Map((await sheetsOf("B")).map(({ id, bodyHash }) => [id, bodyHash]));
    const same = all.find(({ id, bodyHash }) => newest.get(id) === bodyHash);
    const gone = all.find(({ id, bodyHash }) => newest.get(id) !== bodyHash);
    for (const [is, sheet] of [
      ["current", same],
      ["superseded", gone],
    ] as const) {
      const path = `${at}/print/${sheet?.id}/${sheet?.bodyHash.slice(0, 12)}`;
      await often(`what is known of a print: ${is}`, async () => {
        const state = printStateSchema.parse(await get(path));
        if (state.is !== is) throw new Error(`${sheet?.id} is ${state.is}`);
      });
    }
    await often("list of the sheets of a release", () => sheetsOf("A"));
    const largest = all.reduce((a, b) => (b.pages > a.pages ? b : a));
    for (const [what, { id, pages }] of [
      ["a sheet", all.find(({ id }) => id.includes(".from-to.")) ?? largest],
      ["the largest sheet", largest],
    ] as const)
      for (const format of ["json", "pdf"])
        await often(`${what} (${pages} pages) as ${format}`, () =>
          server.get(`${at}/releases/A/sheets/${id}?format=${format}`),
        );
    await timedJob(
      "export of a release",
      () => server.get(`${at}/releases/A/export`),
      () => ({}),
    );
  } finally {
    await server.close();
    await store.close();
  }
}

const folder = await mkdtemp(join(tmpdir(), "pinwright-releases-"));
try {
  if (values.store !== "postgresql") {
    const file = join(folder, "store.sqlite");
    await run("sqlite", { kind: "sqlite", file }, folder, () => sqliteBytes(file));
  }
  if (values.store !== "sqlite") {
    const postgres = await startPostgres({ durable: true });
    try {
      const url = await postgres.newPlace();
      await run("postgresql", { kind: "postgres", url }, folder, () => postgres.bytes());
    } finally {
      await postgres.stop();
    }
  }
} finally {
  await rm(folder, { recursive: true, force: true });
}
if (values.store === undefined && TIMES === 1 && values.example === "tidewatch")
  writeResults("releases", rows);
