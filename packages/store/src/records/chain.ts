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

/** What only its writer takes back: what holds a unit, and what lifts that. Others mend, lift or end it instead. */
function isKeptFor(body: FactBody): boolean {
  switch (body.kind) {
    case "defect":
    case "override":
    case "recall":
    case "recall-ended":
    case "problem":
    case "problem-note":
    case "problem-ended":
      return true;
    case "alternate":
      return body.allowed === "concession";
    default:
      return false;
  }
}

/** Whether a correction may take the place of a fact. What the server wrote nobody corrects. */
export const mayCorrect = (
  correction: Pick<Fact, "person">,
  target: Pick<Fact, "stream" | "person" | "body">,
): boolean =>
  target.stream !== SERVER_STREAM && (!isKeptFor(target.body) || correction.person === target.person);

/** Where a fact stands, as one text. */
export const placeOf = ({ stream, seq }: { readonly stream: string; readonly seq: number }): string =>
  `${seq} ${stream}`;

/** Units that a fact speaks of, each once. */
export function unitsOf(body: FactBody): readonly string[] {
  switch (body.kind) {
    case "correction":
    case "recall":
    case "recall-ended":
    // What is wrong with the design is no record of one unit, though it may have been seen on one.
    case "problem":
    case "problem-note":
    case "problem-ended":
      return [];
    case "fitted":
      return [...new Set([body.unit, body.into])];
    case "removed":
      return [...new Set([body.unit, body.from])];
    default:
      return [body.unit];
  }
}
