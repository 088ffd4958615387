import { mkdirSync } from "node:fs";
import { join } from "node:path";
import { setTimeout as sleep } from "node:timers/promises";
import { seededRandom } from "@pinwright/kernel";
import { BadNetwork } from "./bad-network.ts";
import { builder, type Owner } from "./owner.ts";
import type { ServerProcess } from "./server-process.ts";
import { type Seen, Station } from "./station.ts";
import { type Bench, batchesOf, type Units } from "./work.ts";

/** A tablet that was without a network for a day. */
interface LateOptions {
  /** Facts that wait in it at least. */
  readonly facts: number;
  /** Facts that it sends at once. */
  readonly atOnce: number;
}

/** How it caught up, on the clock of `performance.now`. */
export interface CaughtUp extends LateOptions {
  readonly startMs: number;
  readonly ms: number;
  readonly requests: number;
}

/** What happens on a floor. */
export interface FloorOptions {
  readonly seconds: number;
  readonly stations: number;
  readonly kills: number;
  /** How often the network goes away for all at once. */
  readonly outages: number;
  /** Stations that are switched off and on. */
  readonly restarts: number;
  /** Share of exchanges that the network does something to. */
  readonly harmed: number;
  /** Mean time between two batches of a station, ms. */
  readonly pauseMs: number;
  readonly seed: number;
  /** Tablets that come back, one after the other over the time. */
  readonly late: readonly LateOptions[];
}

const BENCHES: readonly Bench[] = ["board", "harness", "board", "machine"];
const TYPES: Readonly<Record<Bench, string>> = {
  board: "bt.driver",
  harness: "hs.main",
  machine: "tidewatch",
};
const BATCHES: Readonly<Record<Bench, number>> = { board: 6, harness: 5, machine: 40 };
/** Fewest facts that are recorded of a board. */
const FACTS_OF_BOARD = 12;
const LONGEST_DELAY_MS = 2_000;
/** So many sign in at once. */
const AT_ONCE = 4;
const LONGEST_FINISH_MS = 180_000;
/** Least time between two kills, and from both ends, s. */
const APART = 10;

const benchOf = (i: number): Bench => BENCHES[i % BENCHES.length] ?? "board";

/** Moments in a time, in order, at least so far apart and from both ends. */
function moments(count: number, seconds: number, apart: number, random: () => number): readonly number[] {
  const free = Math.max(0, seconds - apart * (count + 1));
  return Array.from({ length: count }, () => random() * free)
    .sort((a, b) => a - b)
    .map((at, i) => at + apart * (i + 1));
}

/** All stations with what happens to them. */
export class Floor {
  readonly #options: FloorOptions;
  readonly #server: ServerProcess;
  readonly #random: () => number;
  readonly #stations: readonly Station[];
  readonly #units: Units[] = [];
  #port = 0;
  #startMs = 0;
  readonly network: BadNetwork;
  readonly journals: readonly string[];
  readonly seen: Seen = { posts: [], readMs: [], acknowledgedMs: [], errors: [] };
  readonly late: CaughtUp[] = [];

  /** @param folder for the journals; it must not be there yet */
  constructor(options: FloorOptions, server: ServerProcess, folder: string) {
    const { seed, harmed, stations, late } = options;
    mkdirSync(folder);
    this.#options = options;
    this.#server = server;
    this.#random = seededRandom(seed);
    this.network = new BadNetwork({
      to: server.port,
      share: harmed,
      delayMs: LONGEST_DELAY_MS,
      random: seededRandom(seed + 1),
    });
    this.journals = Array.from({ length: stations + late.length }, (_, i) => join(folder, `${i}.jsonl`));
    this.#stations = this.journals.map(
      (journal, i) =>
        new Station({
          server,
          port: () => this.#port,
          network: this.network,
          journal,
          random: seededRandom(seed * 1000 + i),
          seen: this.seen,
        }),
    );
  }

  /** How often a stream was given up. */
  get renewals(): number {
    return this.#stations.reduce((sum, station) => sum + station.renewals, 0);
  }

  /** Gives everyone an account, a session and units, and tablets that come late what they recorded meanwhile. */
  async open(owner: Owner): Promise<void> {
    this.network.heal();
    this.#port = await this.network.open();
    for (let i = 0; i < this.#stations.length; i += AT_ONCE)
      await Promise.all(
        this.#stations.slice(i, i + AT_ONCE).map(async (station, j) => {
          await owner.addBuilder(i + j);
          await station.signIn(builder(i + j).name, builder(i + j).code);
        }),
      );
    const made: string[] = [];
    for (let i = 0; i < this.#options.stations; i++) {
      const bench = benchOf(i);
      const own = await owner.begin(bench, TYPES[bench], this.#unitsOf(bench));
      if (bench !== "machine") made.push(...own);
      // What the benches before it make, each piece once.
      this.#units.push({ own, toFit: bench === "machine" ? made.splice(0) : [] });
    }
    for (const [i, { facts }] of this.#options.late.entries()) {
      const own = await owner.begin("board", TYPES.board, Math.ceil(facts / FACTS_OF_BOARD));
      await this.#fill(this.#options.stations + i, own, facts);
    }
  }

  /** Works for the time that was asked for, with everything that happens meanwhile; returns how long it took, ms. */
  async work(): Promise<number> {
    const { seconds, stations, pauseMs, seed } = this.#options;
    this.network.harm();
    this.#startMs = performance.now();
    const untilMs = this.#startMs + seconds * 1000;
    await Promise.all([
      this.#kill(),
      this.#loseNetwork(),
      this.#restart(),
      this.#catchUp(),
      ...this.#stations.slice(0, stations).map((station, i) => {
        const own = this.#units[i];
        if (own === undefined) throw new Error("A station has no units.");
        const mine = seededRandom(seed * 2000 + i);
        return station.work(untilMs, pauseMs, (lastFact) => batchesOf(benchOf(i), own, mine, lastFact));
      }),
    ]);
    return performance.now() - this.#startMs;
  }

  /** Has everyone send what waits, over a good network, and closes. */
  async finish(): Promise<void> {
    this.network.heal();
    const finished = Promise.all(this.#stations.map((station) => station.finish())).then(() => true);
    const isDone = await Promise.race([finished, sleep(LONGEST_FINISH_MS, false, { ref: false })]);
    for (const station of this.#stations) station.close();
    await this.network.close();
    if (!isDone)
      throw new Error(`Not everything came to the server. ${this.seen.errors.slice(0, 3).join(" ")}`);
  }

  /** A unit takes at least so many batches; half as many units again for luck. */
  #unitsOf(bench: Bench): number {
    const { seconds, pauseMs } = this.#options;
    return Math.ceil(((seconds * 1000) / pauseMs / BATCHES[bench]) * 1.5) + 1;
  }

  async #fill(i: number, own: readonly string[], facts: number): Promise<void> {
    const station = this.#stations[i];
    const mine = seededRandom(this.#options.seed * 3000 + i);
    const last = { stream: "", seq: 0 };
    let written = 0;
    for (const batch of batchesOf("board", { own, toFit: [] }, mine, () => last)) {
      if (written >= facts || station === undefined) return;
      const { stream, seq } = await station.write(batch);
      [last.stream, last.seq] = [stream, seq];
      written += batch.length;
    }
    throw new Error("A tablet ran out of units.");
  }

  #at(second: number): Promise<void> {
    return sleep(Math.max(0, this.#startMs + second * 1000 - performance.now()));
  }

  async #kill(): Promise<void> {
    const { kills, seconds } = this.#options;
    const apart = Math.min(APART, seconds / (2 * kills + 2));
    for (const second of moments(kills, seconds, apart, this.#random)) {
      await this.#at(second);
      await this.#server.killAndStart();
    }
  }

  async #loseNetwork(): Promise<void> {
    const { outages, seconds } = this.#options;
    for (const second of moments(outages, seconds, 0, this.#random)) {
      await this.#at(second);
      this.network.away();
      await sleep(1000 + this.#random() * 4000);
      this.network.back();
    }
  }

  async #restart(): Promise<void> {
    const { restarts, seconds, stations } = this.#options;
    for (const second of moments(restarts, seconds, 0, this.#random)) {
      await this.#at(second);
      this.#stations[Math.floor(this.#random() * stations)]?.restart();
    }
  }

  async #catchUp(): Promise<void> {
    const { late, seconds, stations } = this.#options;
    for (const [i, options] of late.entries()) {
      await this.#at((seconds * (i + 1)) / (late.length + 1));
      const startMs = performance.now();
      const requests = (await this.#stations[stations + i]?.sendBy(options.atOnce)) ?? 0;
      this.late.push({ ...options, startMs, ms: performance.now() - startMs, requests });
    }
  }
}
