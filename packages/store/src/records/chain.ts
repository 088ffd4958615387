import { createHash } from "node:crypto";
import { type AsideReason, type Fact, type FactBody, factText, SERVER_STREAM } from "@pinwright/contract";

/** Link of a fact: SHA-256 of its text. */
export const factHash = (fact: Omit<Fact, "hash">): string =>
  createHash("sha256").update(factText(fact)).digest("hex");

/** Facts that only the server writes. */
export const SERVER_ONLY: ReadonlySet<FactBody["kind"]> = new Set(["begun", "released"]);

/** Reasons for which a fact does not count, and is a link of its stream all the same. */
export const LINKED: readonly AsideReason[] = ["revoked", "not-allowed", "server-only"];

/** Whether the next fact of a stream is linked to one that is kept so. */
export const isLinked = (stream: string, aside: AsideReason | null): boolean =>
  aside === null || (stream !== SERVER_STREAM && LINKED.includes(aside));

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
