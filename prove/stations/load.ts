import { mkdirSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { setTimeout as sleep } from "node:timers/promises";
import { ROUTES, statusSchema, TOKEN_HEADER, type UnitKind } from "@pinwright/contract";
import { seededRandom } from "@pinwright/kernel";
import { openStore, type StorePlace } from "@pinwright/store";
import { BadNetwork } from "./bad-network.ts";
import { readJournal } from "./journal.ts";
import { judge, type Verdict } from "./judge.ts";
import { type Kill, ServerProcess } from "./server-process.ts";
import { type Seen, Station } from "./station.ts";
import { type Bench, batchesOf, type Units } from "./work.ts";

/** What a load is made of. */
export interface LoadOptions {
  /** The built server. */
  readonly program: string;
  /** Where the server keeps things; null: a SQLite file of its own. */
  readonly store: string | null;
  readonly seconds: number;
  readonly stations: number;
  readonly kills: number;
  /** How often the network goes away for all at once. */
  readonly outages: number;
  /** Stations that are switched off and on. */
  readonly restarts: number;
  /** Mean time between two batches of a station, ms. */
  readonly pauseMs: number;
  readonly seed: number;
}

/** What happened in a load, and how the records compare with the journals. */
export interface Load {
  readonly seen: Seen;
  readonly kills: readonly Kill[];
  readonly network: BadNetwork["counts"];
  readonly renewals: number;
  /** Lines that the server wrote about what went wrong inside. */
  readonly complaints: string;
  readonly workedMs: number;
  readonly verdict: Verdict;
}

const PASSWORD = "a password of the load";
const BENCHES: readonly Bench[] = ["board", "harness", "board", "machine"];
const TYPES: Readonly<Record<Bench, string>> = {
  board: "bt.driver",
  harness: "hs.main",
  machine: "tidewatch",
};
/** Exchanges that the network does something to. */
const HARMED = 0.02;
const LONGEST_DELAY_MS = 2_000;
const MOST_UNITS = 1_000;
/** So many sign in at once. */
const AT_ONCE = 4;
const LONGEST_FINISH_MS = 180_000;

const codeOf = (i: number): string => String(100_000 + i);

/** The owner's session, at the server itself. */
class Owner {
  readonly #address: string;
  #headers: Readonly<Record<string, string>> = {};

  constructor(address: string) {
    this.#address = address;
  }

  async setUp(): Promise<void> {
    const { token } = statusSchema.parse(await (await fetch(`${this.#address}/api/status`)).json());
    this.#headers = { [TOKEN_HEADER]: token ?? "" };
    const made = await this.#send("/api/set-up", { name: "owner", password: PASSWORD });
    this.#headers = {
      cookie: made.headers.get("set-cookie")?.split(";")[0] ?? "",
      [TOKEN_HEADER]: statusSchema.parse(await made.json()).token ?? "",
    };
  }

  async addBuilder(i: number): Promise<void> {
    await this.#send("/api/people", { name: `builder ${i}`, role: "builder", code: codeOf(i) });
  }

  /** Serial numbers. */
  async begin(what: UnitKind, type: string, count: number): Promise<readonly string[]> {
    const units: string[] = [];
    while (units.length < count) {
      const some = { book: "tidewatch", what, type, count: Math.min(MOST_UNITS, count - units.length) };
      const made = ROUTES.addUnits.answer.parse(await (await this.#send("/api/units", some)).json());
      units.push(...made.map(({ unit }) => unit));
    }
    return units;
  }

  async #send(path: string, body: unknown): Promise<Response> {
    const response = await fetch(`${this.#address}${path}`, {
      method: "POST",
      headers: { "content-type": "application/json", ...this.#headers },
      body: JSON.stringify(body),
    });
    if (!response.ok) throw new Error(`${path}: ${response.status} ${await response.text()}`);
    return response;
  }
}

/** Units for each station: those that it makes, and for machines what goes into them. */
async function unitsOf(owner: Owner, { stations, seconds, pauseMs }: LoadOptions): Promise<readonly Units[]> {
  const perStation = (bench: Bench): number =>
    // A unit takes at least so many batches; half as many again for luck.
    Math.ceil(((seconds * 1000) / pauseMs / { board: 6, harness: 5, machine: 40 }[bench]) * 1.5) + 1;
  const list: Units[] = [];
  const made: Record<"board" | "harness", string[]> = { board: [], harness: [] };
  for (let i = 0; i < stations; i++) {
    const bench = benchOf(i);
    const own = await owner.begin(bench, TYPES[bench], perStation(bench));
    if (bench !== "machine") made[bench].push(...own);
    // What the benches before it make, each piece once.
    list.push({
      own,
      toFit: bench === "machine" ? [...made.board.splice(0), ...made.harness.splice(0)] : [],
    });
  }
  return list;
}

const benchOf = (i: number): Bench => BENCHES[i % BENCHES.length] ?? "board";

/** Moments in a time, in order, at least so far apart and from both ends. */
function moments(count: number, seconds: number, apart: number, random: () => number): readonly number[] {
  const free = Math.max(0, seconds - apart * (count + 1));
  return Array.from({ length: count }, () => random() * free)
    .sort((a, b) => a - b)
    .map((at, i) => at + apart * (i + 1));
}

/** Runs stations against a server that is killed, over a network that breaks, and compares what each of them has. */
export async function runLoad(options: LoadOptions): Promise<Load> {
  const folder = mkdtempSync(join(tmpdir(), "pinwright-stations-"));
  const data = join(folder, "data");
  const store = options.store === null ? [] : ["--store", options.store];
  const server = new ServerProcess(options.program, ["--data", data, ...store]);
  try {
    await server.start();
    const owner = new Owner(server.address);
    await owner.setUp();
    const units = await unitsOf(owner, options);
    const done = await work(options, server, owner, units, join(folder, "journals"));
    await server.stop();
    const place: StorePlace =
      options.store === null
        ? { kind: "sqlite", file: join(data, "pinwright.sqlite") }
        : { kind: "postgres", url: options.store };
    const kept = await openStore(place, { now: () => new Date().toISOString(), newId: () => "" });
    try {
      const verdict = await judge(kept.records, done.journals.map(readJournal));
      return { ...done, kills: server.kills, complaints: server.complaints.join(""), verdict };
    } finally {
      await kept.close();
    }
  } finally {
    await server.stop();
    rmSync(folder, { recursive: true, force: true });
  }
}

async function work(
  { seconds, stations: count, kills, outages, restarts, pauseMs, seed }: LoadOptions,
  server: ServerProcess,
  owner: Owner,
  units: readonly Units[],
  folder: string,
) {
  mkdirSync(folder);
  const random = seededRandom(seed);
  const network = new BadNetwork({
    to: server.port,
    share: HARMED,
    delayMs: LONGEST_DELAY_MS,
    random: seededRandom(seed + 1),
  });
  const port = await network.open();
  const seen: Seen = { posts: [], readMs: [], acknowledgedMs: [], errors: [] };
  const stations = Array.from(
    { length: count },
    (_, i) =>
      new Station({
        server,
        port: () => port,
        network,
        journal: join(folder, `${i}.jsonl`),
        random: seededRandom(seed * 1000 + i),
        seen,
      }),
  );
  network.heal();
  for (let i = 0; i < count; i += AT_ONCE)
    await Promise.all(
      stations.slice(i, i + AT_ONCE).map(async (station, j) => {
        await owner.addBuilder(i + j);
        await station.signIn(`builder ${i + j}`, codeOf(i + j));
      }),
    );
  network.harm();
  const startMs = performance.now();
  const at = (second: number): Promise<void> =>
    sleep(Math.max(0, startMs + second * 1000 - performance.now()));
  const apart = Math.min(10, seconds / (2 * kills + 2));
  const faults = [
    (async () => {
      for (const second of moments(kills, seconds, apart, random)) {
        await at(second);
        await server.killAndStart();
      }
    })(),
    (async () => {
      for (const second of moments(outages, seconds, 0, random)) {
        await at(second);
        network.away();
        await sleep(1000 + random() * 4000);
        network.back();
      }
    })(),
    (async () => {
      for (const second of moments(restarts, seconds, 0, random)) {
        await at(second);
        stations[Math.floor(random() * count)]?.restart();
      }
    })(),
  ];
  const untilMs = startMs + seconds * 1000;
  await Promise.all([
    ...faults,
    ...stations.map((station, i) => {
      const own = units[i];
      if (own === undefined) throw new Error("A station has no units.");
      const mine = seededRandom(seed * 2000 + i);
      return station.work(untilMs, pauseMs, (lastFact) => batchesOf(benchOf(i), own, mine, lastFact));
    }),
  ]);
  const workedMs = performance.now() - startMs;
  network.heal();
  const finished = Promise.all(stations.map((station) => station.finish())).then(() => true);
  if (!(await Promise.race([finished, sleep(LONGEST_FINISH_MS, false, { ref: false })])))
    throw new Error(`Not everything came to the server. ${seen.errors.slice(0, 3).join(" ")}`);
  const renewals = stations.reduce((sum, station) => sum + station.renewals, 0);
  for (const station of stations) station.close();
  const counts = { ...network.counts };
  await network.close();
  return {
    seen,
    network: counts,
    renewals,
    workedMs,
    journals: stations.map((_, i) => join(folder, `${i}.jsonl`)),
  };
}
