import {
  type AsideReason,
  atLeast,
  type Fact,
  type FactBody,
  type KeptUnit,
  type Role,
} from "@pinwright/contract";
import { LOCAL_PERSON } from "../accounts/caller.ts";
import type { Handlers } from "../http/bind.ts";
import { done, Refused } from "../http/problem.ts";
import { typesWith } from "../units/types-with.ts";
import type { ServerParts } from "./parts.ts";

type Names = "sendFacts" | "facts" | "streams" | "units" | "addUnits" | "unitFacts" | "trace" | "readings";

/** Least role of whoever writes a fact, where a builder may not; it counts only when the writer sends it. */
const LEAST: Readonly<Partial<Record<FactBody["kind"], Role>>> = {
  override: "lead",
  recall: "lead",
  "recall-ended": "lead",
  "problem-ended": "lead",
};

/** The least role that a fact needs; null: whoever may work on the floor. */
function leastRole(body: FactBody): Role | null {
  if (body.kind === "alternate" && body.allowed === "concession") return "lead";
  // Anybody on the floor sees and tries; what is to be done about it is not for everybody to say.
  if (body.kind === "problem-note" && body.did === "decided") return "lead";
  return LEAST[body.kind] ?? null;
}

/** What was recorded on the floor. */
export function recordHandlers({ deps, accounts, shelf, hub }: ServerParts): Pick<Handlers, Names> {
  const { records } = deps.store;

  /** Roles of those who may come in, by id; null while there are no accounts. */
  const active = async (): Promise<ReadonlyMap<string, Role> | null> => {
    if (!(await accounts.exist())) return null;
    const all = await accounts.everyone();
    return new Map(all.filter((person) => person.active).map(({ id, role }) => [id, role]));
  };

  return {
    sendFacts: async ({ body: { facts }, caller }) => {
      const present = await active();
      const refuse = ({ person, body }: Fact): AsideReason | null => {
        const role = present === null ? caller.person.role : present.get(person);
        if (role === undefined) return "revoked";
        if (!atLeast(role, "builder")) return "not-allowed";
        const least = leastRole(body);
        const isWriter = person === caller.person.id;
        if (least !== null) return isWriter && atLeast(caller.person.role, least) ? null : "not-allowed";
        // Nobody takes back in the name of a lead what the lead wrote.
        const isNamed = body.kind === "correction" && atLeast(role, "lead");
        return isNamed && !isWriter ? "not-allowed" : null;
      };
      const { heads, aside, counted } = await records.take(facts, refuse);
      const last = counted.at(-1);
      if (last !== undefined) hub.push({ type: "facts", no: last.no });
      return { heads: [...heads], aside: [...aside] };
    },
    facts: async ({ query: { after, limit } }) => [...(await records.after(after, limit))],
    streams: async () => [...(await records.heads())],
    units: async ({ query }) => [...(await records.units(query))],
    addUnits: async ({ body: { book, count, revision: asked, ...unit }, caller }) => {
      const info = done({ done: await shelf.now(book) }, `book ${book}`).info;
      if (info.kind === "shop") throw new Refused("bad-request", "The shop is no machine: name a book.");
      const releases = done(await deps.store.releases.list(book), `book ${book}`);
      const release = releases.find(({ name }) => asked === undefined || name === asked);
      if (release === undefined && asked !== undefined)
        throw new Refused(
          "not-found",
          `Book ${book} has no release ${asked}. Release it first, or name another.`,
        );
      const revision = release?.name ?? `@${info.changeNo}`;
      const made = await records.begin(
        Array.from({ length: count }, () => ({ ...unit, book, revision })),
        caller.sessionHash === null ? LOCAL_PERSON.id : caller.person.id,
      );
      hub.push({ type: "facts", no: made.at(-1)?.no ?? 0 });
      return made.flatMap(({ fact: { body } }): KeptUnit[] =>
        body.kind === "begun"
          ? [
              {
                unit: body.unit,
                what: body.what,
                type: body.type,
                book: body.book,
                revision: body.revision,
                run: body.run ?? "",
              },
            ]
          : [],
      );
    },
    unitFacts: async ({ parts: { unit } }) => [...(await records.ofUnit(unit))],
    trace: async ({ query }) => {
      if (Object.values(query).every((value) => value === undefined))
        throw new Refused(
          "bad-request",
          "Say what to look for: a part, lot, type, revision, person, instrument or time.",
        );
      const { part, lot } = query;
      const types = part === undefined || lot !== undefined ? [] : await typesWith(deps.store, shelf, part);
      return [...(await records.trace({ ...query, types }))];
    },
    readings: async ({ query: { test, limit } }) => [...(await records.readings(test, limit))],
  };
}
