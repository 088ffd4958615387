import { type AsideReason, type Fact, SERVER_STREAM, type StreamHead } from "@pinwright/contract";
import type { Kysely } from "kysely";
import type { Tables } from "../database/schema.ts";
import { factHash, mayCorrect, placeOf, SERVER_ONLY } from "./chain.ts";
import { factOf } from "./fact-row.ts";

/** Facts that somebody sent. */
export interface SentFacts {
  readonly facts: readonly Fact[];
  /** Why a fact does not count although it is linked as it should be. */
  readonly refuse: (fact: Fact) => AsideReason | null;
}

/** Facts that corrections speak of, by their place. */
export type Targets = ReadonlyMap<string, Pick<Fact, "stream" | "person" | "body">>;

/** Facts that count and that corrections speak of, as far as they are here. */
export async function targetsOf(db: Kysely<Tables>, facts: readonly Fact[]): Promise<Targets> {
  const found = new Map<string, Pick<Fact, "stream" | "person" | "body">>();
  for (const { body } of facts) {
    if (body.kind !== "correction") continue;
    const row = await db
      .selectFrom("facts")
      .selectAll()
      .where("stream", "=", body.stream)
      .where("seq", "=", body.seq)
      .where("aside", "is", null)
      .executeTakeFirst();
    if (row !== undefined) found.set(placeOf(body), factOf(row).fact);
  }
  return found;
}

/** Why a fact that is linked as it should be does not count. */
export function refused(fact: Fact, refuse: SentFacts["refuse"], targets: Targets): AsideReason | null {
  const { body } = fact;
  if (SERVER_ONLY.has(body.kind)) return "server-only";
  if (body.kind === "correction") {
    const target = targets.get(placeOf(body));
    if (body.stream === SERVER_STREAM || (target !== undefined && !mayCorrect(fact, target)))
      return "not-allowed";
  }
  return refuse(fact);
}

/** Why a fact does not count, if it does not. */
export function asideOf(
  fact: Fact,
  head: StreamHead,
  refuse: SentFacts["refuse"],
  targets: Targets,
): AsideReason | null {
  if (factHash(fact) !== fact.hash) return "hash";
  if (fact.stream === SERVER_STREAM) return "server-only";
  if (fact.seq <= head.seq) return "fork";
  if (fact.seq > head.seq + 1) return "gap";
  if (fact.before !== head.hash) return "link";
  return refused(fact, refuse, targets);
}
