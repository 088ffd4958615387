/**
 * 50 simulated people edit and read a book of Tidewatch's size at once, on each store: how long a write takes, that
 * nothing goes wrong, that everyone hears of every change, and that afterwards the book equals the replay of its log.
 * The server is a process of its own, as `./start` runs it. `npx tsx prove/server-load.ts [SECONDS]`
 *
 * On a machine that other work keeps busy, times say more of that work than of this: `chrt -r 10 npx tsx …` lets this
 * go first. The results say which it was, and how busy the machine was.
 */
import { type ChildProcess, spawn } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { loadavg, tmpdir } from "node:os";
import { join } from "node:path";
import { applyChanges, type CellTables } from "@pinwright/book";
import { bookRowsSchema, changeSetSchema, statusSchema, TOKEN_HEADER } from "@pinwright/contract";
import { seededRandom } from "@pinwright/kernel";
import { startPostgres } from "../packages/store/src/testing/postgres.ts";
import { goesFirst } from "./goes-first.ts";
import { Person, type Seen } from "./simulated-person.ts";
import { writeJson } from "./write-json.ts";

const PEOPLE = 50;
const SECONDS = Number(process.argv[2] ?? "120");
const BOOK = "tidewatch";
const PASSWORD = "a password of the load";
const SERVER = join(import.meta.dirname, "..", "dist", "server", "main.mjs");

interface Server {
  readonly address: string;
  readonly process: ChildProcess;
  readonly stop: () => Promise<void>;
}

/** Starts the built server on a free port. */
function start(folder: string, store: readonly string[]): Promise<Server> {
  const args = [SERVER, "--data", folder, "--port", "0", "--network-port", "0", ...store];
  const child = spawn(process.execPath, args, { stdio: ["ignore", "pipe", "inherit"] });
  return new Promise((resolve, reject) => {
    child.once("exit", () =>
      reject(new Error("The server did not start; was it built with tools/build.ts?")),
    );
    child.stdout.on("data", (text: Buffer) => {
      const [address] = /http:\/\/\S+/.exec(text.toString()) ?? [];
      if (address === undefined) return;
      const stop = (): Promise<void> =>
        new Promise((done) => {
          child.once("exit", () => done());
          child.kill("SIGTERM");
        });
      resolve({ address, process: child, stop });
    });
  });
}

/** Makes the accounts: the owner first, then the others in the owner's session. */
async function makePeople(address: string): Promise<void> {
  const post = async (
    path: string,
    body: unknown,
    headers: Readonly<Record<string, string>>,
  ): Promise<Response> => {
    const response = await fetch(`${address}${path}`, {
      method: "POST",
      headers: { "content-type": "application/json", ...headers },
      body: JSON.stringify(body),
    });
    if (!response.ok) throw new Error(`${path}: ${response.status} ${await response.text()}`);
    return response;
  };
  const { token } = statusSchema.parse(await (await fetch(`${address}/api/status`)).json());
  const made = await post("/api/set-up", { name: "p0", password: PASSWORD }, { [TOKEN_HEADER]: token ?? "" });
  const session = {
    cookie: made.headers.get("set-cookie")?.split(";")[0] ?? "",
    [TOKEN_HEADER]: statusSchema.parse(await made.json()).token ?? "",
  };
  for (let i = 1; i < PEOPLE; i++)
    await post("/api/people", { name: `p${i}`, role: "designer", password: PASSWORD }, session);
}

const quantile = (times: readonly number[], share: number): number =>
  Math.round((times.toSorted((a, b) => a - b)[Math.ceil(times.length * share) - 1] ?? 0) * 10) / 10;

const spread = (times: readonly number[]) => ({
  count: times.length,
  medianMs: quantile(times, 0.5),
  p95Ms: quantile(times, 0.95),
  p99Ms: quantile(times, 0.99),
  mostMs: quantile(times, 1),
});

const sorted = (tables: CellTables): string =>
  JSON.stringify(
    [...tables]
      .filter(([, rows]) => rows.size > 0)
      .map(([name, rows]) => [name, [...rows].map(([row, cells]) => [row, [...cells].sort()]).sort()])
      .sort(),
  );

/** Replays the whole log from nothing, as anybody can read it, and holds it against the book. */
async function replay(
  address: string,
  cookie: string,
  seen: Seen,
): Promise<{ sets: number; equal: boolean; lost: number }> {
  const ask = async (path: string): Promise<unknown> =>
    (await fetch(`${address}/api/books/${BOOK}${path}`, { headers: { cookie } })).json();
  let tables: CellTables = new Map();
  const ids = new Map<number, string>();
  for (let since = 0; ; ) {
    const sets = changeSetSchema.array().parse(await ask(`/changes?since=${since}&limit=500`));
    for (const set of sets) {
      const applied = applyChanges(tables, set.changes);
      if (applied.tables === null || set.no !== since + 1) return { sets: since, equal: false, lost: -1 };
      tables = applied.tables;
      ids.set(set.no, set.id);
      since = set.no;
    }
    if (sets.length === 0) break;
  }
  const now = bookRowsSchema.parse(await ask("/rows")).tables;
  const kept: CellTables = new Map(
    Object.entries(now).map(([name, rows]) => [
      name,
      new Map(Object.entries(rows).map(([row, cells]) => [row, new Map(Object.entries(cells))])),
    ]),
  );
  const lost = [...seen.acknowledged].filter(([no, id]) => ids.get(no) !== id).length;
  return { sets: ids.size, equal: sorted(tables) === sorted(kept), lost };
}

async function load(store: string, args: readonly string[]) {
  const folder = mkdtempSync(join(tmpdir(), "pinwright-load-"));
  const server = await start(folder, args);
  const seen: Seen = {
    writeMs: [],
    readMs: [],
    pushMs: [],
    acknowledged: new Map(),
    acknowledgedAt: new Map(),
    errors: [],
    conflicts: 0,
    events: 0,
  };
  try {
    await makePeople(server.address);
    const random = seededRandom(7);
    const people = Array.from(
      { length: PEOPLE },
      (_, i) => new Person(server.address, BOOK, i, seen, random),
    );
    for (const [i, person] of people.entries()) await person.signIn(`p${i}`, PASSWORD);
    for (const person of people) await person.open();
    const until = performance.now() + SECONDS * 1000;
    await Promise.all(people.map((person) => person.work(until)));
    // The last events are on their way.
    await new Promise((resolve) => setTimeout(resolve, 1_500));
    const [first] = people;
    const replayed = await replay(server.address, first?.cookie ?? "", seen);
    for (const person of people) person.close();
    for (const error of seen.errors.slice(0, 10)) process.stderr.write(`${error}\n`);
    return {
      store,
      seconds: SECONDS,
      people: PEOPLE,
      writes: spread(seen.writeMs),
      reads: spread(seen.readMs),
      pushes: spread(seen.pushMs),
      acknowledged: seen.acknowledged.size,
      events: seen.events,
      eventsExpected: seen.acknowledged.size * PEOPLE,
      refusedAsConflict: seen.conflicts,
      errors: seen.errors.length,
      log: replayed,
    };
  } finally {
    await server.stop();
    rmSync(folder, { recursive: true, force: true });
  }
}

const round = (value: number): number => Math.round(value * 10) / 10;
const loadBefore = round(loadavg()[0] ?? 0);
const runs = [await load("sqlite", [])];
const postgres = await startPostgres({ durable: true });
try {
  runs.push(await load("postgresql", ["--store", await postgres.newPlace()]));
} finally {
  await postgres.stop();
}
writeJson("server-load.json", {
  goesFirst: goesFirst(),
  loadAverage: { before: loadBefore, after: round(loadavg()[0] ?? 0) },
  runs,
});
const good = runs.every(
  (run) =>
    run.writes.p99Ms <= 100 &&
    run.errors === 0 &&
    run.log.equal &&
    run.log.lost === 0 &&
    run.events === run.eventsExpected &&
    run.pushes.mostMs <= 1000,
);
process.exitCode = good ? 0 : 1;
