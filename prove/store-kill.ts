/**
 * Kills a process that writes to a store at random moments (seeded), on SQLite and on PostgreSQL; in every fourth round
 * on PostgreSQL its server is stopped like by a pulled plug, too. After each restart every acknowledged change must be
 * there under its number, none by half, and the book must be what its log makes of nothing. A failure ends it. Writes
 * `results/store-kill.json`.
 *
 *     npx tsx prove/store-kill.ts
 */
import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { seededRandom } from "@pinwright/kernel";
import type { StorePlace } from "@pinwright/store";
import { bundleWriter, killWriter, type Moment } from "../packages/store/src/testing/kill/kill-writer.ts";
import { type Found, prepare, Survivors } from "../packages/store/src/testing/kill/survivors.ts";
import { startPostgres } from "../packages/store/src/testing/postgres.ts";

const ROUNDS = 100;
const SEED = 20;
const MOST_SETS = 60;
const MOST_MS = 12;
const SERVER_STOPS_EVERY = 4;

async function rounds(place: StorePlace, stopServer: (() => Promise<void>) | null) {
  const random = seededRandom(SEED);
  await prepare(place);
  const survivors = new Survivors(place);
  const kills: (Moment & Found & { readonly serverStopped: boolean })[] = [];
  for (let round = 0; round < ROUNDS; round += 1) {
    const moment = { afterSets: Math.floor(random() * MOST_SETS), thenMs: Math.floor(random() * MOST_MS) };
    const serverStopped = stopServer !== null && round % SERVER_STOPS_EVERY === SERVER_STOPS_EVERY - 1;
    const before = serverStopped ? stopServer : async () => {};
    const found = await survivors.look(await killWriter(writer, place, round, moment, before));
    kills.push({ ...moment, serverStopped, ...found });
    process.stdout.write(`${place.kind} ${round + 1}: ${JSON.stringify(kills.at(-1))}\n`);
  }
  const sum = (of: (kill: (typeof kills)[number]) => number) =>
    kills.reduce((all, kill) => all + of(kill), 0);
  return {
    kills: kills.length,
    serverStops: sum((kill) => (kill.serverStopped ? 1 : 0)),
    acknowledged: sum((kill) => kill.acknowledged),
    acknowledgedAndLost: 0,
    thereByHalf: 0,
    thereBeforeItWasSaid: sum((kill) => kill.unsaid),
    ...(await survivors.lookAtAll()),
    rounds: kills,
  };
}

const writer = await bundleWriter();
const folder = await mkdtemp(join(tmpdir(), "pinwright-kill-"));
const postgres = await startPostgres({ durable: true });
try {
  const sqlite = await rounds({ kind: "sqlite", file: join(folder, "store.sqlite") }, null);
  const url = await postgres.newPlace();
  const results = {
    seed: SEED,
    sqlite,
    postgres: await rounds({ kind: "postgres", url }, () => postgres.crash()),
  };
  const file = join(import.meta.dirname, "results/store-kill.json");
  await writeFile(file, `${JSON.stringify(results, null, 1)}\n`);
} finally {
  await postgres.stop();
  await rm(folder, { recursive: true, force: true });
}
