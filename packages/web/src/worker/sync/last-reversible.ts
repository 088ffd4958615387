import type { ChangeHead } from "@pinwright/contract";
import { call } from "../../api/call.ts";

/** Sets of a history in which a person's own last one is looked for. */
const REACH = 200;

/** Of a person's sets that can still be taken back, or made again, the last; null when there is none. */
export const lastOwn = (
  what: "undo" | "redo",
  person: string,
  heads: readonly ChangeHead[],
): ChangeHead | null =>
  heads
    .filter((head) => head.person === person && head.undoneBy === null)
    .filter((head) => (head.kind === "undo") === (what === "redo"))
    .reduce<ChangeHead | null>((last, head) => (last === null || head.no > last.no ? head : last), null);

/**
 * Which of several books a person changed last: undo and redo go back in the order in which things were done, whether
 * to the machine or to the shop. The first book when none has anything to take back.
 */
export async function lastReversible(
  what: "undo" | "redo",
  person: string,
  books: readonly string[],
): Promise<string | null> {
  const lasts = await Promise.all(
    books.map(async (book) => {
      const heads = await call("history", { parts: { book }, query: { limit: REACH } });
      return { book, at: lastOwn(what, person, heads)?.at ?? "" };
    }),
  );
  // UTC text sorts as time does.
  return lasts.toSorted((a, b) => (a.at < b.at ? 1 : a.at > b.at ? -1 : 0))[0]?.book ?? null;
}
