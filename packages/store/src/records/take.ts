import type { ArrivedFact, AsideReason, StreamHead } from "@pinwright/contract";
import { type Fact, NO_FACT, SERVER_STREAM } from "@pinwright/contract";
import type { Kysely } from "kysely";
import type { Database } from "../database/database.ts";
import { inChunks } from "../database/in-chunks.ts";
import { comparable } from "../database/number.ts";
import type { Tables } from "../database/schema.ts";
import type { TakenFacts } from "../store.ts";
import { factHash, isLinked } from "./chain.ts";
import { factOf } from "./fact-row.ts";
import { asideOf, refused, type SentFacts, targetsOf } from "./judge.ts";
import { project } from "./project.ts";

/** Counter of facts; whoever takes a number holds its row to the end of the transaction. */
export const FACT_COUNTER = "facts";

const compareText = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

/** Numbers for so many facts, the first of them; whoever takes numbers waits for the one before. */
async function numbers(db: Kysely<Tables>, count: number): Promise<number> {
  const { value } = await db
    .insertInto("counters")
    .values({ name: FACT_COUNTER, value: count })
    .onConflict((conflict) =>
      conflict.column("name").doUpdateSet((row) => ({ value: row("counters.value", "+", count) })),
    )
    .returning("value")
    .executeTakeFirstOrThrow();
  return value - count + 1;
}

const AT_ONCE = 100;

/** Heads of streams, their rows locked to the end of the transaction. Locks are taken in the order of the names. */
export async function lockHeads(
  db: Kysely<Tables>,
  kind: Database["kind"],
  streams: readonly string[],
): Promise<Map<string, StreamHead>> {
  const heads = new Map<string, StreamHead>();
  for (const some of inChunks([...streams].sort(compareText), AT_ONCE)) {
    // Rows are made first, so that two devices that write the same new stream wait for each other.
    await db
      .insertInto("stream_heads")
      .values(some.map((stream) => ({ stream, seq: 0, hash: NO_FACT, at: "" })))
      .onConflict((conflict) => conflict.column("stream").doNothing())
      .execute();
    const query = db.selectFrom("stream_heads").selectAll().where("stream", "in", some).orderBy("stream");
    for (const { stream, seq, hash } of await (kind === "postgres" ? query.forUpdate() : query).execute())
      heads.set(stream, { stream, seq, hash });
  }
  return heads;
}

interface Judged {
  readonly request: number;
  readonly fact: Fact;
  readonly aside: AsideReason | null;
}

/** What is there already of the streams at hand: hashes by place in the stream. */
class Known {
  readonly #db: Kysely<Tables>;
  readonly #hashes = new Map<string, Set<string>>();
  readonly #withAside: ReadonlySet<string>;

  private constructor(db: Kysely<Tables>, withAside: ReadonlySet<string>) {
    this.#db = db;
    this.#withAside = withAside;
  }

  static async of(db: Kysely<Tables>, streams: readonly string[]): Promise<Known> {
    const found = new Set<string>();
    for (const some of inChunks(streams, AT_ONCE)) {
      const rows = await db
        .selectFrom("facts")
        .select("stream")
        .distinct()
        .where("stream", "in", some)
        .where("aside", "is not", null)
        .execute();
      for (const { stream } of rows) found.add(stream);
    }
    return new Known(db, found);
  }

  /** Whether facts of the stream wait or are kept aside. */
  hasAside(stream: string): boolean {
    return this.#withAside.has(stream);
  }

  /** Facts that only follow the head of a stream without anything aside cannot be there: nothing is read for them. */
  async read(head: StreamHead, facts: readonly Fact[]): Promise<void> {
    const seqs = facts.map(({ seq }) => seq);
    const first = Math.min(...seqs);
    if (first > head.seq && !this.hasAside(head.stream)) return;
    const rows = await this.#db
      .selectFrom("facts")
      .select(["seq", "hash"])
      .where("stream", "=", head.stream)
      .where("seq", ">=", comparable(first))
      .where("seq", "<=", comparable(Math.max(...seqs)))
      .execute();
    for (const { seq, hash } of rows) this.note(head.stream, seq, hash);
  }

  note(stream: string, seq: number, hash: string): void {
    const key = `${stream} ${seq}`;
    const hashes = this.#hashes.get(key);
    if (hashes === undefined) this.#hashes.set(key, new Set([hash]));
    else hashes.add(hash);
  }

  has({ stream, seq, hash }: Fact): boolean {
    return this.#hashes.get(`${stream} ${seq}`)?.has(hash) ?? false;
  }
}

/** Keeps facts, those that count spread out to where they are looked up. */
async function keep(
  db: Kysely<Tables>,
  judged: readonly Judged[],
  now: string,
): Promise<readonly ArrivedFact[]> {
  if (judged.length === 0) return [];
  const first = await numbers(db, judged.length);
  const rows = judged.map(({ fact, aside }, i): Tables["facts"] => ({
    no: first + i,
    stream: fact.stream,
    seq: fact.seq,
    before: fact.before,
    hash: fact.hash,
    at: fact.at,
    received_at: now,
    person: fact.person,
    kind: fact.body.kind,
    body: JSON.stringify(fact.body),
    aside,
  }));
  for (let at = 0; at < rows.length; at += 80)
    await db
      .insertInto("facts")
      .values(rows.slice(at, at + 80))
      .execute();
  const arrived = rows.map(
    (row, i): ArrivedFact => ({
      no: row.no,
      receivedAt: now,
      fact: judged[i]?.fact ?? factOf(row).fact,
      aside: judged[i]?.aside ?? null,
    }),
  );
  await project(
    db,
    arrived.filter(({ aside }) => aside === null),
  );
  return arrived;
}

/** Facts that waited for one before them, and now follow the head. */
async function promote(
  db: Kysely<Tables>,
  head: StreamHead,
  refuse: SentFacts["refuse"],
): Promise<{ readonly head: StreamHead; readonly promoted: readonly ArrivedFact[] }> {
  const promoted: ArrivedFact[] = [];
  let now = head;
  for (;;) {
    const rows = await db
      .selectFrom("facts")
      .selectAll()
      .where("stream", "=", now.stream)
      .where("seq", "=", now.seq + 1)
      .where("aside", "=", "gap")
      .execute();
    const next = rows.find((row) => row.before === now.hash);
    if (next === undefined) return { head: now, promoted };
    const found = factOf(next);
    const targets = await targetsOf(db, [found.fact]);
    const arrived = { ...found, aside: refused(found.fact, refuse, targets) };
    await db.updateTable("facts").set({ aside: arrived.aside }).where("no", "=", next.no).execute();
    if (arrived.aside === null) {
      await project(db, [arrived]);
      promoted.push(arrived);
    }
    now = { stream: now.stream, seq: next.seq, hash: next.hash };
  }
}

async function keepHeads(db: Kysely<Tables>, heads: readonly StreamHead[], at: string): Promise<void> {
  for (const some of inChunks(heads, AT_ONCE))
    await db
      .insertInto("stream_heads")
      .values(some.map((head) => ({ ...head, at })))
      .onConflict((conflict) =>
        conflict.column("stream").doUpdateSet((row) => ({
          seq: row.ref("excluded.seq"),
          hash: row.ref("excluded.hash"),
          at: row.ref("excluded.at"),
        })),
      )
      .execute();
}

/**
 * Takes in what several stations sent, inside one transaction, each answered by itself. Whatever they have in common is
 * read and written once.
 */
export async function takeFacts(
  db: Kysely<Tables>,
  kind: Database["kind"],
  requests: readonly SentFacts[],
  now: string,
): Promise<readonly TakenFacts[]> {
  const streams = [...new Set(requests.flatMap(({ facts }) => facts.map(({ stream }) => stream)))];
  const heads = await lockHeads(db, kind, streams);
  const before = new Map(heads);
  const known = await Known.of(db, streams);
  const targets = await targetsOf(
    db,
    requests.flatMap(({ facts }) => facts),
  );
  const judged: Judged[] = [];
  for (const [request, { facts, refuse }] of requests.entries()) {
    const byStream = new Map<string, Fact[]>();
    for (const fact of facts) byStream.set(fact.stream, [...(byStream.get(fact.stream) ?? []), fact]);
    for (const [stream, list] of byStream) {
      let head = heads.get(stream) ?? { stream, seq: 0, hash: NO_FACT };
      await known.read(before.get(stream) ?? head, list);
      for (const fact of list.sort((a, b) => a.seq - b.seq)) {
        if (known.has(fact)) continue;
        known.note(stream, fact.seq, fact.hash);
        const aside = asideOf(fact, head, refuse, targets);
        if (isLinked(stream, aside)) head = { stream, seq: fact.seq, hash: fact.hash };
        judged.push({ request, fact, aside });
      }
      heads.set(stream, head);
    }
  }
  const arrived = await keep(db, judged, now);
  const waiting = new Set(judged.filter(({ aside }) => aside === "gap").map(({ fact }) => fact.stream));
  const promoted = new Map<string, readonly ArrivedFact[]>();
  for (const stream of streams) {
    const head = heads.get(stream);
    if (head === undefined || (!known.hasAside(stream) && !waiting.has(stream))) continue;
    const sender = requests.findLast(({ facts }) => facts.some((fact) => fact.stream === stream));
    const followed = await promote(db, head, sender?.refuse ?? (() => null));
    heads.set(stream, followed.head);
    promoted.set(stream, followed.promoted);
  }
  const moved = [...heads.values()].filter((head) => head.seq > (before.get(head.stream)?.seq ?? 0));
  await keepHeads(db, moved, now);
  return requests.map(({ facts }, request) => {
    const own = [...new Set(facts.map(({ stream }) => stream))].sort(compareText);
    const mine = arrived.filter((_, i) => judged[i]?.request === request);
    const seqOf = (stream: string): number => heads.get(stream)?.seq ?? 0;
    return {
      heads: own.flatMap((stream) => heads.get(stream) ?? []),
      aside: mine.flatMap(({ fact: { stream, seq }, aside }) =>
        aside === null || (aside === "gap" && seq <= seqOf(stream)) ? [] : [{ stream, seq, why: aside }],
      ),
      counted: [
        ...mine.filter(({ aside }) => aside === null),
        ...own.flatMap((stream) => {
          const list = promoted.get(stream) ?? [];
          promoted.delete(stream);
          return list;
        }),
      ],
    };
  });
}

/** Adds facts to the server's own stream, inside a transaction. */
export async function addOwnFacts(
  db: Kysely<Tables>,
  kind: Database["kind"],
  bodies: readonly Fact["body"][],
  person: string,
  now: string,
): Promise<readonly ArrivedFact[]> {
  const heads = await lockHeads(db, kind, [SERVER_STREAM]);
  let head = heads.get(SERVER_STREAM) ?? { stream: SERVER_STREAM, seq: 0, hash: NO_FACT };
  const judged: Judged[] = [];
  for (const body of bodies) {
    const text = { stream: SERVER_STREAM, seq: head.seq + 1, before: head.hash, at: now, person, body };
    const hash = factHash(text);
    judged.push({ request: 0, fact: { ...text, hash }, aside: null });
    head = { stream: SERVER_STREAM, seq: text.seq, hash };
  }
  const arrived = await keep(db, judged, now);
  await keepHeads(db, [head], now);
  return arrived;
}
