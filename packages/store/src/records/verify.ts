import { setImmediate } from "node:timers/promises";
import type { StreamFault, StreamHead } from "@pinwright/contract";
import { factBodySchema, NO_FACT, SERVER_STREAM } from "@pinwright/contract";
import type { Kysely } from "kysely";
import type { Database } from "../database/database.ts";
import type { Tables } from "../database/schema.ts";
import { factHash, LINKED } from "./chain.ts";
import { verifyLookUps } from "./verify-look-ups.ts";

/** Rows that are read at once; others go first in between, for a database in this process lets nobody else in meanwhile. */
const ROWS_AT_ONCE = 1_000;

/** Hashes that a place of a stream must have, by its number. */
type Kept = Map<number, Set<string>>;

/** Heads that were written down elsewhere, by stream: those that were given, and those of every release. */
class KeptHeads {
  readonly #byStream = new Map<string, Kept>();

  add({ stream, seq, hash }: StreamHead): void {
    const kept = this.#byStream.get(stream) ?? new Map<number, Set<string>>();
    this.#byStream.set(stream, kept.set(seq, new Set([...(kept.get(seq) ?? []), hash])));
  }

  names(): Iterable<string> {
    return this.#byStream.keys();
  }

  of(stream: string): Kept {
    return this.#byStream.get(stream) ?? new Map();
  }
}

/**
 * Reads every fact that counts, stream by stream, and says where the chain is broken, and which facts are not found by what
 * they say. A release holds the heads of all streams at its time: a stream that was cut short or chained anew does not have
 * them any more.
 */
export async function verifyStreams(
  { longRead }: Database,
  given: readonly StreamHead[],
): Promise<readonly StreamFault[]> {
  return longRead(async (db) => {
    const heads = new Map(
      (await db.selectFrom("stream_heads").selectAll().execute()).map((head) => [head.stream, head]),
    );
    const streams = await db.selectFrom("facts").select("stream").distinct().orderBy("stream").execute();
    const kept = new KeptHeads();
    for (const head of given) if (head.seq > 0) kept.add(head);
    const faults: StreamFault[] = [];
    // The server's own first: it holds the heads of the others.
    const releases = await verifyStream(db, SERVER_STREAM, faults);
    for (const head of releases.heads) kept.add(head);
    const names = new Set([...streams.map(({ stream }) => stream), ...heads.keys(), ...kept.names()]);
    for (const stream of [...names].sort()) {
      const seen = stream === SERVER_STREAM ? releases : await verifyStream(db, stream, faults);
      const head = heads.get(stream);
      if ((head?.seq ?? 0) !== seen.seq || (head?.hash ?? NO_FACT) !== seen.hash)
        faults.push({ stream, seq: head?.seq ?? 0, what: "head" });
      for (const [seq, hashes] of kept.of(stream))
        if (hashes.size > 1 || !hashes.has(seen.at.get(seq) ?? ""))
          faults.push({ stream, seq, what: seen.at.has(seq) ? "changed" : "missing" });
    }
    const told = new Set(faults.map(({ stream, seq }) => `${seq} ${stream}`));
    const lookUps = await verifyLookUps(db);
    return [...faults, ...lookUps.filter(({ stream, seq }) => !told.has(`${seq} ${stream}`))];
  });
}

interface SeenStream {
  /** The last fact. */
  readonly seq: number;
  readonly hash: string;
  /** Hash of each fact by its place. */
  readonly at: ReadonlyMap<number, string>;
  /** Heads of streams that releases in it hold. */
  readonly heads: readonly StreamHead[];
}

async function verifyStream(db: Kysely<Tables>, stream: string, faults: StreamFault[]): Promise<SeenStream> {
  let [seq, hash] = [0, NO_FACT];
  const at = new Map<number, string>();
  const heads: StreamHead[] = [];
  for (let no = -1; ; ) {
    const rows = await db
      .selectFrom("facts")
      .selectAll()
      .where("stream", "=", stream)
      .where((row) =>
        stream === SERVER_STREAM
          ? row("aside", "is", null)
          : row.or([row("aside", "is", null), row("aside", "in", LINKED)]),
      )
      .where((row) => row.or([row("seq", ">", seq), row.and([row("seq", "=", seq), row("no", ">", no)])]))
      .orderBy("seq")
      .orderBy("no")
      .limit(ROWS_AT_ONCE)
      .execute();
    if (rows.length === 0) return { seq, hash, at, heads };
    await setImmediate();
    for (const row of rows) {
      no = row.no;
      const body = parsedBody(row.body);
      const text = { stream, seq: row.seq, before: row.before, at: row.at, person: row.person };
      const isOwn = body !== null && factHash({ ...text, body }) === row.hash && body.kind === row.kind;
      if (row.seq === seq) faults.push({ stream, seq: row.seq, what: "inserted" });
      else if (row.seq > seq + 1) faults.push({ stream, seq: seq + 1, what: "missing" });
      if (row.seq === seq) continue;
      if (!isOwn) faults.push({ stream, seq: row.seq, what: "changed" });
      else if (row.seq === seq + 1 && row.before !== hash)
        faults.push({ stream, seq: row.seq, what: "inserted" });
      at.set(row.seq, row.hash);
      if (body?.kind === "released")
        heads.push(...body.heads.map(([name, no, link]) => ({ stream: name, seq: no, hash: link })));
      [seq, hash] = [row.seq, row.hash];
    }
  }
}

function parsedBody(text: string) {
  try {
    return factBodySchema.parse(JSON.parse(text));
  } catch {
    return null;
  }
}
