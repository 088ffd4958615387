/**
 * 200 simulated stations, each with a journal of its own, post what they record for ten minutes to a real server, as a
 * process of its own, while `kill -9` hits it ten times and the network between breaks off in the middle of requests and
 * answers; on SQLite and on PostgreSQL. Afterwards the server's records must be the union of the journals, row by row.
 * Writes `results/stations.json`.
 *
 *     npx tsx prove/stations.ts [--minutes 10] [--stations 200] [--kills 10] [--pause 3] [--seed 1]
 *       [--store sqlite|postgresql] [--program dist/server/main.mjs]
 *
 * On a machine that other work keeps busy, times say more of that work than of this: `chrt -r 10 npx tsx …` lets this go
 * first. The results say how busy the machine was. Only a run as large as the first line says replaces the results.
 */
import { loadavg } from "node:os";
import { parseArgs } from "node:util";
import { startPostgres } from "../packages/store/src/testing/postgres.ts";
import { goesFirst } from "./goes-first.ts";
import { figuresOf } from "./stations/figures.ts";
import { isGood } from "./stations/judge.ts";
import { type LoadOptions, runLoad } from "./stations/load.ts";
import { buildServer } from "./stations/server-process.ts";
import { writeJson } from "./write-json.ts";

const MOST_P99_MS = 100;
/** Exchanges that the network does something to. */
const HARMED = 0.02;

const { values } = parseArgs({
  options: {
    minutes: { type: "string", default: "10" },
    stations: { type: "string", default: "200" },
    kills: { type: "string", default: "10" },
    pause: { type: "string", default: "3" },
    seed: { type: "string", default: "1" },
    store: { type: "string" },
    program: { type: "string" },
  },
});
const built = values.program === undefined ? await buildServer() : null;
const options: LoadOptions = {
  program: values.program ?? built?.program ?? "",
  store: null,
  seconds: Number(values.minutes) * 60,
  stations: Number(values.stations),
  kills: Number(values.kills),
  outages: Math.ceil(Number(values.minutes) / 2),
  restarts: Math.ceil(Number(values.minutes) * 2),
  harmed: HARMED,
  pauseMs: Number(values.pause) * 1000,
  seed: Number(values.seed),
  late: [],
};
const round = (value: number): number => Math.round(value * 10) / 10;

async function run(store: string, place: string | null) {
  const before = loadavg()[0] ?? 0;
  const load = await runLoad({ ...options, store: place });
  for (const error of load.seen.errors.slice(0, 10)) process.stderr.write(`${error}\n`);
  process.stderr.write(load.complaints.slice(0, 4000));
  const loadAverage = { before: round(before), after: round(loadavg()[0] ?? 0) };
  const found = { store, loadAverage, ...figuresOf(options, load) };
  process.stderr.write(`${JSON.stringify(found, null, 1)}\n`);
  return found;
}

const runs = [];
if (values.store !== "postgresql") runs.push(await run("sqlite", null));
if (values.store !== "sqlite") {
  const postgres = await startPostgres({ durable: true });
  try {
    runs.push(await run("postgresql", await postgres.newPlace()));
  } finally {
    await postgres.stop();
  }
}
built?.remove();
if (options.seconds >= 600 && options.stations >= 200 && runs.length === 2)
  writeJson("stations.json", { goesFirst: goesFirst(), runs });
const good = runs.every(
  ({ verdict, answered, errors, streamsGivenUp, serverComplaints }) =>
    isGood(verdict) && answered.p99Ms <= MOST_P99_MS && errors + streamsGivenUp + serverComplaints === 0,
);
process.exitCode = good ? 0 : 1;
