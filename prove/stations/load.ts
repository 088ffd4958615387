import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { openStore, type StorePlace } from "@pinwright/store";
import type { BadNetwork } from "./bad-network.ts";
import { type CaughtUp, Floor, type FloorOptions } from "./floor.ts";
import { readJournal } from "./journal.ts";
import { judge, type Verdict } from "./judge.ts";
import { Owner } from "./owner.ts";
import { type Kill, ServerProcess } from "./server-process.ts";
import type { Seen } from "./station.ts";

/** What a load is made of. */
export interface LoadOptions extends FloorOptions {
  /** The built server. */
  readonly program: string;
  /** Where the server keeps things; null: a SQLite file of its own. */
  readonly store: string | null;
}

/** What happened in a load, and how the records compare with the journals. */
export interface Load {
  readonly seen: Seen;
  readonly late: readonly CaughtUp[];
  readonly kills: readonly Kill[];
  readonly network: BadNetwork["counts"];
  readonly renewals: number;
  /** Lines that the server wrote about what went wrong inside. */
  readonly complaints: string;
  readonly workedMs: number;
  readonly verdict: Verdict;
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
    const floor = new Floor(options, server, join(folder, "journals"));
    await floor.open(owner);
    const workedMs = await floor.work();
    await floor.finish();
    await server.stop();
    const place: StorePlace =
      options.store === null
        ? { kind: "sqlite", file: join(data, "pinwright.sqlite") }
        : { kind: "postgres", url: options.store };
    const kept = await openStore(place, { now: () => new Date().toISOString(), newId: () => "" });
    try {
      const verdict = await judge(kept.records, floor.journals.map(readJournal));
      const { seen, late, network, renewals } = floor;
      const counts = { ...network.counts };
      const { kills, complaints } = server;
      return {
        ...{ seen, late, kills, network: counts, renewals },
        ...{ complaints: complaints.join(""), workedMs, verdict },
      };
    } finally {
      await kept.close();
    }
  } finally {
    await server.stop();
    rmSync(folder, { recursive: true, force: true });
  }
}
