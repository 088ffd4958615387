import { ASIDE_REASONS, type Fact, factSchema } from "@pinwright/contract";
import { z } from "zod";
import { ended, found, writing } from "./database.ts";
import { freshEnd } from "./outbox.ts";
import type { KeptFact, OutboxStore, StreamEnd } from "./store.ts";

const END = "end";
const endSchema = z.object({ stream: z.string(), seq: z.number(), hash: z.string() });
const keptSchema = z.object({
  fact: factSchema,
  sentAt: z.string().nullable(),
  why: z.enum(ASIDE_REASONS).nullable(),
  /** When its stream was begun: facts of an older stream are sent first. */
  turn: z.number(),
});
type Row = z.infer<typeof keptSchema>;

/** Keys sort as facts are sent: stream after stream as they were begun, each in its order. */
const keyOf = ({ fact, turn }: Row): IDBValidKey => [turn, fact.stream, fact.seq];

/** What this device keeps, in its browser's database. */
export class DeviceStore implements OutboxStore {
  readonly #database: IDBDatabase;

  constructor(database: IDBDatabase) {
    this.#database = database;
  }

  readonly end = async (): Promise<StreamEnd> => {
    const transaction = writing(this.#database, "single");
    const { end } = await endOf(transaction);
    await ended(transaction);
    return end;
  };

  readonly append = async (after: StreamEnd, facts: readonly Fact[]): Promise<boolean> => {
    const transaction = writing(this.#database, "single", "facts");
    const done = ended(transaction);
    const { end, turn } = await endOf(transaction);
    const isThere = end.stream === after.stream && end.seq === after.seq && end.hash === after.hash;
    const last = facts.at(-1);
    if (isThere && last !== undefined) {
      const shelf = transaction.objectStore("facts");
      for (const fact of facts) {
        const row: Row = { fact, sentAt: null, why: null, turn };
        shelf.add(row, keyOf(row));
      }
      const next: StreamEnd = { stream: last.stream, seq: last.seq, hash: last.hash };
      transaction.objectStore("single").put({ end: next, turn }, END);
    }
    await done;
    return isThere;
  };

  readonly waiting = async (limit: number): Promise<readonly Fact[]> =>
    (await this.#rows())
      .filter(({ sentAt }) => sentAt === null)
      .slice(0, limit)
      .map(({ fact }) => fact);

  readonly settle = async (facts: readonly KeptFact[]): Promise<void> => {
    const settled = new Map(facts.map((one) => [one.fact.hash, one]));
    await this.#change((row) => {
      const now = settled.get(row.fact.hash);
      return now === undefined ? row : { ...row, sentAt: now.sentAt, why: now.why };
    });
  };

  readonly sendAgain = (stream: string, fromSeq: number): Promise<void> =>
    this.#change((row) =>
      row.fact.stream === stream && row.fact.seq >= fromSeq ? { ...row, sentAt: null, why: null } : row,
    );

  readonly renew = async (): Promise<void> => {
    const transaction = writing(this.#database, "single");
    const done = ended(transaction);
    const { turn } = await endOf(transaction);
    transaction.objectStore("single").put({ end: freshEnd(), turn: turn + 1 }, END);
    await done;
  };

  readonly all = (): Promise<readonly KeptFact[]> => this.#rows();

  readonly forget = (sentBefore: string): Promise<void> =>
    this.#change((row) => (row.sentAt !== null && row.sentAt < sentBefore ? null : row));

  async #rows(): Promise<readonly Row[]> {
    const shelf = this.#database.transaction("facts").objectStore("facts");
    return (await found(shelf.getAll())).map((row) => keptSchema.parse(row));
  }

  /** Puts in place of each fact what `change` makes of it; null takes it away. */
  async #change(change: (row: Row) => Row | null): Promise<void> {
    const transaction = writing(this.#database, "facts");
    const done = ended(transaction);
    const shelf = transaction.objectStore("facts");
    for (const held of await found(shelf.getAll())) {
      const row = keptSchema.parse(held);
      const next = change(row);
      if (next === null) shelf.delete(keyOf(row));
      else if (next !== row) shelf.put(next, keyOf(row));
    }
    await done;
  }
}

/** The end of the stream within a transaction; a stream is begun when there is none. */
async function endOf(
  transaction: IDBTransaction,
): Promise<{ readonly end: StreamEnd; readonly turn: number }> {
  const shelf = transaction.objectStore("single");
  const held = z.object({ end: endSchema, turn: z.number() }).safeParse(await found(shelf.get(END)));
  if (held.success) return held.data;
  const fresh = { end: freshEnd(), turn: 1 };
  shelf.put(fresh, END);
  return fresh;
}
