/**
 * A site that was cut off from the server for a day comes back: tablets with 5,000 facts each in their outboxes, while 200
 * stations of another site work, and while nobody else does; with requests of 200 facts, as the floor's sender makes them,
 * and of 500, the most that a request may hold. How long it takes, and what it does to the posts of the others meanwhile.
 * Writes `results/catch-up.json`.
 *
 *     npx tsx prove/catch-up.ts [--seconds 60] [--stations 200] [--facts 5000] [--program dist/server/main.mjs]
 */
import { loadavg } from "node:os";
import { parseArgs } from "node:util";
import { startPostgres } from "../packages/store/src/testing/postgres.ts";
import { goesFirst } from "./goes-first.ts";
import { spread } from "./stations/figures.ts";
import type { FloorOptions } from "./stations/floor.ts";
import { isGood } from "./stations/judge.ts";
import { runLoad } from "./stations/load.ts";
import { buildServer } from "./stations/server-process.ts";
import type { Post } from "./stations/station.ts";
import { writeJson } from "./write-json.ts";

const { values } = parseArgs({
  options: {
    seconds: { type: "string", default: "60" },
    stations: { type: "string", default: "200" },
    facts: { type: "string", default: "5000" },
    program: { type: "string" },
  },
});
const facts = Number(values.facts);
const calm: Omit<FloorOptions, "stations" | "seconds"> = {
  ...{ kills: 0, outages: 0, restarts: 0, harmed: 0 },
  ...{ pauseMs: 3000, seed: 11 },
  late: [
    { facts, atOnce: 200 },
    { facts, atOnce: 500 },
  ],
};
const round = (value: number): number => Math.round(value * 10) / 10;
const built = values.program === undefined ? await buildServer() : null;
const program = values.program ?? built?.program ?? "";

async function run(name: string, store: string | null, stations: number, seconds: number) {
  const load = await runLoad({ ...calm, stations, seconds, program, store });
  const isWithin = ({ startMs, ms }: Post): boolean =>
    load.late.some((late) => startMs < late.startMs + late.ms && startMs + ms > late.startMs);
  // Posts of tablets that catch up hold far more than those of a station.
  const others = load.seen.posts.filter((post) => post.facts < 50);
  const found = {
    store: name,
    stations,
    caughtUp: load.late.map((late) => ({
      ...{ facts: late.facts, atOnce: late.atOnce, requests: late.requests, ms: round(late.ms) },
      factsPerSecond: Math.round(late.facts / (late.ms / 1000)),
    })),
    othersMeanwhile: spread(others.filter(isWithin).map(({ ms }) => ms)),
    othersOtherwise: spread(others.filter((post) => !isWithin(post)).map(({ ms }) => ms)),
    verdict: load.verdict,
  };
  process.stderr.write(`${JSON.stringify(found)}\n`);
  return found;
}

const loadBefore = round(loadavg()[0] ?? 0);
const stations = Number(values.stations);
const seconds = Number(values.seconds);
const runs = [await run("sqlite", null, 1, seconds / 3), await run("sqlite", null, stations, seconds)];
const postgres = await startPostgres({ durable: true });
try {
  for (const [count, time] of [
    [1, seconds / 3],
    [stations, seconds],
  ] as const)
    runs.push(await run("postgresql", await postgres.newPlace(), count, time));
} finally {
  await postgres.stop();
}
built?.remove();
writeJson("catch-up.json", {
  goesFirst: goesFirst(),
  loadAverage: { before: loadBefore, after: round(loadavg()[0] ?? 0) },
  runs,
});
process.exitCode = runs.every(({ verdict }) => isGood(verdict)) ? 0 : 1;
