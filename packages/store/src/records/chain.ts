import { createHash } from "node:crypto";
import { type Fact, type FactBody, factText } from "@pinwright/contract";

/** Stream of what the server itself writes. */
export const SERVER_STREAM = "server";

/** Link of a fact: SHA-256 of its text. */
export const factHash = (fact: Omit<Fact, "hash">): string =>
  createHash("sha256").update(factText(fact)).digest("hex");

/** Facts that only the server writes. */
export const SERVER_ONLY: ReadonlySet<FactBody["kind"]> = new Set(["begun", "released"]);

/** Units that a fact speaks of, each once. */
export function unitsOf(body: FactBody): readonly string[] {
  switch (body.kind) {
    case "correction":
    case "recall":
    case "recall-ended":
      return [];
    case "fitted":
      return [...new Set([body.unit, body.into])];
    case "removed":
      return [...new Set([body.unit, body.from])];
    default:
      return [body.unit];
  }
}
