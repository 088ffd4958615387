import { ASIDE_REASONS, type Fact, factSchema } from "@pinwright/contract";
import { ended, found, writing } from "./database.ts";
import { freshEnd } from "./outbox.ts";
import { picturesOf } from "./sender.ts";
import type { KeptFact, OutboxStore, StreamEnd } from "./store.ts";

const END = "end";
/** The end of the stream, and which of the streams of this device it is: facts of an older one are sent first. */
interface Turn {
  readonly end: StreamEnd;
  readonly turn: number;
}
type Row = KeptFact & { readonly turn: number };

/** A row of a shelf; what this device did not write itself throws. */
function rowOf(held: unknown): Row {
  if (typeof held !== "object" || held === null) throw new Error("The device's memory holds something else.");
  const { fact, sentAt, why, turn }: { fact?: unknown; sentAt?: unknown; why?: unknown; turn?: unknown } =
    held;
  return {
    fact: factSchema.parse(fact),
    sentAt: typeof sentAt === "string" ? sentAt : null,
    why: ASIDE_REASONS.find((reason) => reason === why) ?? null,
    turn: typeof turn === "number" ? turn : 0,
  };
}

function turnOf(held: unknown): Turn | null {
  if (typeof held !== "object" || held === null) return null;
  const { end, turn }: { end?: unknown; turn?: unknown } = held;
  if (typeof end !== "object" || end === null || typeof turn !== "number") return null;
  const { stream, seq, hash }: { stream?: unknown; seq?: unknown; hash?: unknown } = end;
  return typeof stream === "string" && typeof seq === "number" && typeof hash === "string"
    ? { end: { stream, seq, hash }, turn }
    : null;
}

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
    const done = ended(transaction);
    const { end } = await endOf(transaction);
    await done;
    return end;
  };

  readonly append = async (after: StreamEnd, facts: readonly Fact[]): Promise<boolean> => {
    const transaction = writing(this.#database, "single", "waiting");
    const done = ended(transaction);
    const { end, turn } = await endOf(transaction);
    const isThere = end.stream === after.stream && end.seq === after.seq && end.hash === after.hash;
    const last = facts.at(-1);
    if (isThere && last !== undefined) {
      const shelf = transaction.objectStore("waiting");
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

  readonly waiting = async (limit: number): Promise<readonly Fact[]> => {
    const shelf = this.#database.transaction("waiting").objectStore("waiting");
    return (await found(shelf.getAll(null, limit))).map((row) => rowOf(row).fact);
  };

  readonly settle = async (facts: readonly KeptFact[]): Promise<void> => {
    const settled = new Map(facts.map((one) => [one.fact.hash, one]));
    await this.#move("waiting", "sent", (row) => {
      const now = settled.get(row.fact.hash);
      return now === undefined ? null : { ...row, sentAt: now.sentAt, why: now.why };
    });
  };

  readonly sendAgain = (stream: string, fromSeq: number): Promise<void> =>
    this.#move("sent", "waiting", (row) =>
      row.fact.stream === stream && row.fact.seq >= fromSeq ? { ...row, sentAt: null, why: null } : null,
    );

  readonly renew = async (): Promise<void> => {
    const transaction = writing(this.#database, "single");
    const done = ended(transaction);
    const { turn } = await endOf(transaction);
    transaction.objectStore("single").put({ end: freshEnd(), turn: turn + 1 }, END);
    await done;
  };

  readonly all = async (): Promise<readonly KeptFact[]> => {
    const transaction = this.#database.transaction(["sent", "waiting"]);
    const [sent, waiting] = await Promise.all([
      found(transaction.objectStore("sent").getAll()),
      found(transaction.objectStore("waiting").getAll()),
    ]);
    const rows = [...sent, ...waiting].map((row) => rowOf(row));
    return rows.sort((a, b) => a.turn - b.turn || a.fact.seq - b.fact.seq);
  };

  readonly forget = async (sentBefore: string): Promise<void> => {
    const transaction = writing(this.#database, "sent", "pictures");
    const done = ended(transaction);
    const shelf = transaction.objectStore("sent");
    for (const held of await found(shelf.getAll())) {
      const row = rowOf(held);
      if (row.sentAt === null || row.sentAt >= sentBefore) continue;
      shelf.delete(keyOf(row));
      // The server has the picture for as long as its fact.
      for (const picture of picturesOf([row.fact])) transaction.objectStore("pictures").delete(picture);
    }
    await done;
  };

  /** Keeps a picture under the hash that facts name it by. */
  readonly keepPicture = async (hash: string, picture: Blob): Promise<void> => {
    const transaction = writing(this.#database, "pictures");
    const done = ended(transaction);
    transaction.objectStore("pictures").put(picture, hash);
    await done;
  };

  /** A picture that this device took; null: it was another device. */
  readonly picture = async (hash: string): Promise<Blob | null> => {
    const held: unknown = await found(
      this.#database.transaction("pictures").objectStore("pictures").get(hash),
    );
    return held instanceof Blob ? held : null;
  };

  /** Moves what `moved` makes a new row of to the other shelf, in one transaction. */
  async #move(
    from: "waiting" | "sent",
    to: "waiting" | "sent",
    moved: (row: Row) => Row | null,
  ): Promise<void> {
    const transaction = writing(this.#database, "waiting", "sent");
    const done = ended(transaction);
    const shelf = transaction.objectStore(from);
    for (const held of await found(shelf.getAll())) {
      const row = moved(rowOf(held));
      if (row === null) continue;
      shelf.delete(keyOf(row));
      transaction.objectStore(to).put(row, keyOf(row));
    }
    await done;
  }
}

/** The end of the stream within a transaction; a stream is begun when there is none. */
async function endOf(transaction: IDBTransaction): Promise<Turn> {
  const shelf = transaction.objectStore("single");
  const held = turnOf(await found(shelf.get(END)));
  if (held !== null) return held;
  const fresh = { end: freshEnd(), turn: 1 };
  shelf.put(fresh, END);
  return fresh;
}
