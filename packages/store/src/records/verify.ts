import type { StreamFault, StreamHead } from "@pinwright/contract";
import { factBodySchema, NO_FACT, SERVER_STREAM } from "@pinwright/contract";
import type { Kysely } from "kysely";
import type { Database } from "../database/database.ts";
import type { Tables } from "../database/schema.ts";
import { factHash, LINKED } from "./chain.ts";

const ROWS_AT_ONCE = 5_000;

/** Reads every fact that counts, stream by stream, and says where the chain is broken. */
export async function verifyStreams(
  { longRead }: Database,
  kept: readonly StreamHead[],
): Promise<readonly StreamFault[]> {
  return longRead(async (db) => {
    const heads = new Map(
      (await db.selectFrom("stream_heads").selectAll().execute()).map((head) => [head.stream, head]),
    );
    const streams = await db.selectFrom("facts").select("stream").distinct().orderBy("stream").execute();
    const names = new Set([
      ...streams.map(({ stream }) => stream),
      ...heads.keys(),
      ...kept.map((h) => h.stream),
    ]);
    const faults: StreamFault[] = [];
    for (const stream of [...names].sort()) {
      const seen = await verifyStream(db, stream, faults);
      const head = heads.get(stream);
      if ((head?.seq ?? 0) !== seen.seq || (head?.hash ?? NO_FACT) !== seen.hash)
        faults.push({ stream, seq: head?.seq ?? 0, what: "head" });
      for (const other of kept)
        if (other.stream === stream && other.seq > 0 && seen.at.get(other.seq) !== other.hash)
          faults.push({ stream, seq: other.seq, what: seen.at.has(other.seq) ? "changed" : "missing" });
    }
    return faults;
  });
}

async function verifyStream(
  db: Kysely<Tables>,
  stream: string,
  faults: StreamFault[],
): Promise<{ readonly seq: number; readonly hash: string; readonly at: ReadonlyMap<number, string> }> {
  let [seq, hash] = [0, NO_FACT];
  const at = new Map<number, string>();
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
    if (rows.length === 0) return { seq, hash, at };
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
