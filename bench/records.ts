/**
 * A store with a million measurements: 200 invented machines of 50 boards and 25 harnesses each, on SQLite and on
 * PostgreSQL, and at a sixteenth and a quarter of that to show how times grow. Histories, recalls, control charts, the gate
 * of a machine, the live floor page, a post, a back-up; against going through all facts in memory.
 *
 *     npx tsx bench/records.ts [--machines 200] [--store sqlite|postgresql]
 *
 * Filling takes most of the time. Only a run with all machines replaces the results of its store. On a machine that other
 * work keeps busy, `chrt -r 10 npx tsx …` lets this go first.
 */
import { mkdtemp, rm, stat } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { parseArgs } from "node:util";
import { ROUTES } from "@pinwright/contract";
import { controlStudy } from "@pinwright/engine";
import { openStore, type Store, type StorePlace } from "@pinwright/store";
import { TestStream } from "../packages/store/src/testing/facts.ts";
import { startPostgres } from "../packages/store/src/testing/postgres.ts";
import { repeated, tenth, timed, writeResults } from "./measure.ts";
import { openServer } from "./records/ask.ts";
import { Filler } from "./records/fill.ts";
import {
  COMMON_TEST,
  instrumentOf,
  lotOf,
  partOf,
  personOf,
  READINGS,
  RecordingFloor,
  revisionOf,
  timeOf,
} from "./records/floor.ts";
import { InMemory } from "./records/in-memory.ts";

const { values } = parseArgs({
  options: { machines: { type: "string", default: "200" }, store: { type: "string" } },
});
const MACHINES = Number(values.machines);
/** Machines of a million readings. */
const FULL = 200;
const SIZES = [16, 4, 1].map((part) => Math.max(1, Math.round(MACHINES / part)));
const TIMES = 7;
const HISTORY_MS = 50;
const QUERY_MS = 1000;
const LIMITS = { lower: 4.8, upper: 5.2 };

type Row = Readonly<Record<string, string | number>>;
let rows: Row[] = [];
const say = (line: string): void => void process.stderr.write(`${line}\n`);

/** The same question put to all facts in memory, when everything else is measured: so much memory slows what is beside it. */
interface Other {
  readonly row: { -readonly [K in keyof Row]: Row[K] };
  readonly ask: (memory: InMemory) => number;
}

/** Measures questions at a store. */
class Bench {
  readonly #store: string;
  readonly #machines: number;
  readonly #others: Other[] = [];

  constructor(store: string, machines: number) {
    this.#store = store;
    this.#machines = machines;
  }

  async ask(
    what: string,
    limitMs: number | null,
    work: () => Promise<number>,
    inMemory?: Other["ask"],
    times = TIMES,
  ): Promise<void> {
    let found = 0;
    const { coldMs, medianMs, maxMs } = await repeated(times, async () => {
      found = await work();
    });
    const row = this.tell({
      what,
      found,
      limit_ms: limitMs ?? "",
      cold_ms: tenth(coldMs),
      median_ms: tenth(medianMs),
      most_ms: tenth(maxMs),
    });
    if (inMemory !== undefined) this.#others.push({ row, ask: inMemory });
  }

  tell(row: Row): Other["row"] {
    const full = {
      store: this.#store,
      machines: this.#machines,
      readings: this.#machines * READINGS,
      ...row,
    };
    rows.push(full);
    say(JSON.stringify(full));
    return full;
  }

  /** Goes through all facts in memory for the questions that say how. */
  async compare(memory: InMemory): Promise<void> {
    for (const { row, ask } of this.#others) {
      const { medianMs } = await repeated(2, () => ask(memory));
      row.in_memory_ms = tenth(medianMs);
      row.times_faster = tenth(medianMs / Math.max(Number(row.median_ms), 0.1));
      say(`${row.what}: ${row.in_memory_ms} ms in memory`);
    }
  }
}

async function measure(store: Store, kind: string, machines: number, folder: string): Promise<void> {
  const bench = new Bench(kind, machines);
  const { records } = store;
  const middle = Math.floor(machines / 2);
  const unit = `m-${String(middle + 1).padStart(6, "0")}`;
  const board = `b-${String(middle * 50 + 7).padStart(6, "0")}`;
  const length = async (list: Promise<readonly unknown[]>): Promise<number> => (await list).length;

  await bench.ask(
    "history of a machine with all inside",
    HISTORY_MS,
    () => length(records.ofUnit(unit)),
    (memory) => memory.history(unit).length,
  );
  await bench.ask("history of a board", HISTORY_MS, () => length(records.ofUnit(board)));

  const [part, lot, person, instrument] = [
    partOf(3),
    lotOf(3, middle),
    personOf(3),
    instrumentOf(3),
  ] as const;
  const [from, to, monthTo] = [timeOf(middle), timeOf(middle + 1), timeOf(middle + 20)] as const;
  await bench.ask(
    "recall: a lot of a part",
    QUERY_MS,
    () => length(records.trace({ part, lot })),
    (memory) =>
      memory.recall(({ body }) => body.kind === "lot-used" && body.part === part && body.lot === lot).size,
  );
  await bench.ask("recall: a part of every lot", QUERY_MS, () => length(records.trace({ part })));
  await bench.ask("recall: a board type and revision", QUERY_MS, () =>
    length(records.trace({ type: "bt.lamp16", revision: revisionOf(middle) })),
  );
  await bench.ask(
    "recall: a builder",
    QUERY_MS,
    () => length(records.trace({ person })),
    (memory) => memory.recall((fact) => fact.person === person).size,
    3,
  );
  await bench.ask("recall: a builder in a month", QUERY_MS, () =>
    length(records.trace({ person, from, to: monthTo })),
  );
  await bench.ask(
    "recall: an instrument",
    QUERY_MS,
    () => length(records.trace({ instrument })),
    (memory) => memory.recall(({ body }) => body.kind === "reading" && body.instrument === instrument).size,
    3,
  );
  await bench.ask("recall: an instrument in a month", QUERY_MS, () =>
    length(records.trace({ instrument, from, to: monthTo })),
  );
  await bench.ask("recall: everything of a day and a half", QUERY_MS, () =>
    length(records.trace({ from, to })),
  );
  await bench.ask("recall: everything of a month", QUERY_MS, () =>
    length(records.trace({ from, to: monthTo })),
  );
  await bench.ask("recall: a part by a builder in a month", QUERY_MS, () =>
    length(records.trace({ part, person, from, to: monthTo })),
  );

  await bench.ask("control charts of a test: last thousand readings", QUERY_MS, async () => {
    const study = controlStudy(await records.readings(COMMON_TEST, 1000), LIMITS);
    return study?.readings.length ?? 0;
  });
  await bench.ask(
    "control charts of a test: all readings of all boards",
    QUERY_MS,
    async () => controlStudy(await records.readings(COMMON_TEST, 100_000), LIMITS)?.readings.length ?? 0,
    (memory) => memory.readings(COMMON_TEST).length,
  );
  await throughServer(bench, store, unit, machines, folder);
  await bench.ask("check of every chain and look-up", null, () => length(records.verify()), undefined, 1);
  const file = join(folder, `${kind}-${machines}.zip`);
  const { ms } = await timed(() => store.backUp(file));
  bench.tell({ what: "back-up", median_ms: tenth(ms), found: (await stat(file)).size });
  const loaded = await timed(() => InMemory.of(store));
  bench.tell({ what: "all facts read into memory", median_ms: tenth(loaded.ms) });
  await bench.compare(loaded.result);
}

/** What goes through the server: its own work and the JSON are in the times. */
async function throughServer(
  bench: Bench,
  store: Store,
  unit: string,
  machines: number,
  folder: string,
): Promise<void> {
  const server = await openServer(store, join(folder, "temp"));
  // Machine after machine was recorded: the last month before the end of the last one.
  const since = timeOf(Math.max(0, machines - 20));
  const size = async (path: string): Promise<number> => (await server.get(path)).length;
  try {
    await bench.ask("API: history of a machine (found: bytes)", null, () => size(`/api/units/${unit}`));
    await bench.ask("API: gate of a machine", null, async () => {
      const gate = ROUTES.unitGate.answer.parse(JSON.parse(await server.get(`/api/units/${unit}/gate`)));
      return gate.blocks.length;
    });
    await bench.ask("API: where every unit stands", null, () => size("/api/unit-summaries?book=tidewatch"));
    const floor = `/api/floor?book=tidewatch&since=${timeOf(machines - 1)}`;
    await bench.ask("API: live floor page", null, () => size(floor));
    await bench.ask("API: defects", null, () => size("/api/defects?book=tidewatch"));
    await bench.ask("API: yields", null, () => size("/api/passes?book=tidewatch"));
    await bench.ask("API: yields of a month", null, () => size(`/api/passes?book=tidewatch&from=${since}`));
    const stream = new TestStream(`post-${Date.now()}`);
    await bench.ask(
      "API: a post of three facts",
      100,
      async () => {
        const facts = [1, 2, 3].map((i) =>
          stream.write({ kind: "reading", unit, test: `t.machine-${i}`, value: 5, good: true }, "local"),
        );
        return (await server.post("/api/facts", { facts })).length;
      },
      undefined,
      50,
    );
    await bench.ask("API: live floor page after a post", null, async () => {
      await server.post("/api/facts", { facts: [stream.write({ kind: "noted", unit, says: "x" }, "local")] });
      return size(floor);
    });
  } finally {
    await server.close();
  }
}

async function run(kind: string, place: StorePlace, folder: string, bytes: () => Promise<number>) {
  rows = [];
  let ids = 0;
  const store = await openStore(place, {
    now: () => new Date().toISOString(),
    newId: () => `id-${++ids}`,
  });
  try {
    const filler = new Filler(store, new RecordingFloor());
    for (const size of SIZES) {
      say(`filling ${kind} ${size}`);
      const before = filler.facts;
      const { ms } = await timed(() => filler.fillTo(size));
      const perSecond = Math.round((filler.facts - before) / (ms / 1000));
      say(`measuring ${kind} ${size}`);
      await measure(store, kind, size, folder);
      const bench = new Bench(kind, size);
      bench.tell({ what: "bytes kept", found: await bytes() });
      bench.tell({ what: "facts", found: filler.facts });
      bench.tell({ what: "facts taken per second up to here", found: perSecond });
    }
  } finally {
    await store.close();
  }
  if (MACHINES >= FULL) writeResults(`records-${kind}`, rows);
}

const folder = await mkdtemp(join(tmpdir(), "pinwright-records-"));
try {
  if (values.store !== "postgresql") {
    const file = join(folder, "store.sqlite");
    await run("sqlite", { kind: "sqlite", file }, folder, async () => {
      const sizes = await Promise.all([file, `${file}-wal`].map((path) => stat(path)));
      return sizes.reduce((sum, { size }) => sum + size, 0);
    });
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
