/**
 * How long the server takes, and how long at most its main thread answers nobody, while each kind of work goes on:
 * `npx tsx bench/server.ts`. Starts are of the built server (`npx tsx tools/build.ts` first).
 *
 * Where other work keeps the processors busy, what is not free is the machine: `chrt -R -r 10 node --import tsx
 * bench/server.ts` lets the main thread, and it alone, go first, which is how the results here were taken.
 */
import { spawn } from "node:child_process";
import { randomBytes, randomUUID } from "node:crypto";
import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { monitorEventLoopDelay } from "node:perf_hooks";
import { setTimeout as sleep } from "node:timers/promises";
import { importResultSchema, jobSchema, statusSchema, TOKEN_HEADER } from "@pinwright/contract";
import { createServer } from "@pinwright/server";
import { openStore } from "@pinwright/store";
import { timed, writeResults } from "./measure.ts";

const HOST = "127.0.0.1:4180";
const ROOT = join(import.meta.dirname, "..");
/** How finely it is looked whether the main thread is free, ms. */
const RESOLUTION_MS = 2;

const folder = await mkdtemp(join(tmpdir(), "pinwright-bench-"));
const rows: Record<string, string | number>[] = [];

/** Time of a start of the built server, from the call to the address, ms. */
function startMs(data: string): Promise<number> {
  const before = performance.now();
  const args = [join(ROOT, "dist/server/main.mjs"), "--data", data, "--port", "0"];
  const child = spawn(process.execPath, args, { stdio: ["ignore", "pipe", "inherit"] });
  return new Promise((resolve, reject) => {
    child.once("error", reject);
    child.stdout.once("data", () => {
      const ms = performance.now() - before;
      child.once("exit", () => resolve(ms));
      child.kill("SIGTERM");
    });
  });
}

/** Does something and writes down how long it took, and the longest time that the main thread was not free. */
async function measured<T>(what: string, work: () => Promise<T>): Promise<T> {
  await sleep(100);
  const delay = monitorEventLoopDelay({ resolution: RESOLUTION_MS });
  delay.enable();
  const { ms, result } = await timed(work);
  await sleep(20);
  delay.disable();
  const blockedMs = Math.max(0, delay.max / 1e6 - RESOLUTION_MS);
  const p99Ms = Math.max(0, delay.percentile(99) / 1e6 - RESOLUTION_MS);
  rows.push({
    what,
    ms: ms.toFixed(1),
    blocked_most_ms: blockedMs.toFixed(1),
    blocked_p99_ms: p99Ms.toFixed(1),
  });
  return result;
}

rows.push({ what: "first start, examples put in", ms: (await startMs(join(folder, "first"))).toFixed(0) });
rows.push({ what: "later start", ms: (await startMs(join(folder, "first"))).toFixed(0) });

const store = await openStore(
  { kind: "sqlite", file: join(folder, "store.sqlite") },
  { now: () => new Date().toISOString(), newId: randomUUID },
);
const server = await createServer({
  store,
  paths: { temp: join(folder, "temp"), web: null, examples: join(ROOT, "examples") },
  reach: { hosts: () => new Set([HOST]), addresses: () => [], open: async () => undefined },
  version: "bench",
  now: Date.now,
  random: (bytes) => randomBytes(bytes),
  newId: randomUUID,
  log: (line) => process.stderr.write(`${line}\n`),
  shared: false,
});

let token = "";
async function ask(
  path: string,
  method = "GET",
  body?: string | Uint8Array<ArrayBuffer>,
): Promise<ArrayBuffer> {
  const headers = { host: HOST, "content-type": "application/json", [TOKEN_HEADER]: token };
  const request = new Request(`http://${HOST}${path}`, {
    method,
    headers,
    ...(body === undefined ? {} : { body }),
  });
  const response = await server.app.fetch(request, { place: { address: "127.0.0.1", secure: false } });
  if (!response.ok) throw new Error(`${path}: ${response.status} ${await response.text()}`);
  return response.arrayBuffer();
}
const json = (bytes: ArrayBuffer): unknown => JSON.parse(new TextDecoder().decode(bytes));

token = statusSchema.parse(json(await ask("/api/status"))).token ?? "";

let text = "";
const change = async (): Promise<void> => {
  const next = (Math.random() * 100).toFixed(3);
  const changes = [{ table: "devices", row: "1", column: "bench", from: text, to: next }];
  await ask("/api/books/tidewatch/changes", "POST", JSON.stringify({ id: randomUUID(), changes }));
  text = next;
};

await measured("nothing for a second", () => sleep(1000));
await measured("rows of Tidewatch, nothing changed", () => ask("/api/books/tidewatch/rows"));
await measured("a change", change);
await measured("rows of Tidewatch, after a change", () => ask("/api/books/tidewatch/rows"));
await measured("100 changes", async () => {
  for (let i = 0; i < 100; i++) await change();
});
const files = await measured("all sheets of Tidewatch as PDF, with a change every 100 ms", async () => {
  const request = { id: randomUUID(), harnessIds: [], kinds: [], formats: ["pdf"], language: "both" };
  const { id } = jobSchema.parse(
    json(await ask("/api/books/tidewatch/sheets", "POST", JSON.stringify(request))),
  );
  for (;;) {
    await sleep(100);
    await change();
    const job = jobSchema.parse(json(await ask(`/api/jobs/${id}`)));
    if (job.state === "done") return job.files.length;
    if (job.state !== "running" && job.state !== "waiting") throw new Error(`${job.state}: ${job.now}`);
  }
});
process.stderr.write(`${files} files of sheets\n`);
for (const format of ["zip", "xlsx"]) {
  const file = await measured(`export as ${format}`, () =>
    ask(`/api/books/tidewatch/export?format=${format}`),
  );
  const bytes = new Uint8Array(file);
  const rehearsed = await measured(`rehearsal of an import of ${format}`, () =>
    ask(`/api/books/tidewatch/import?name=a.${format}&rehearse=true`, "POST", bytes),
  );
  importResultSchema.parse(json(rehearsed));
  await measured(`import of ${format} as a new book`, () =>
    ask(`/api/import?name=a.${format}`, "POST", bytes),
  );
}
await measured("a snapshot", () =>
  ask("/api/books/tidewatch/snapshots", "POST", JSON.stringify({ name: "bench" })),
);
await measured("a back-up", () => ask("/api/back-up"));
await measured("a new book of Tidewatch", () =>
  ask("/api/books", "POST", JSON.stringify({ id: "copy", label: "Copy", from: "tidewatch" })),
);
await measured("the first change after all that", change);
await measured("100 changes after all that", async () => {
  for (let i = 0; i < 100; i++) await change();
});
await server.close();
await store.close();
await rm(folder, { recursive: true, force: true });
writeResults("server", rows);
