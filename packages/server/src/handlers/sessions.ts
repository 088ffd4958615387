import { createHash } from "node:crypto";
import type { Handlers } from "../http/bind.ts";
import { Refused } from "../http/problem.ts";
import type { ServerParts } from "./parts.ts";

type Names = "sessions" | "endSession" | "endSessions";

/** A name for a session that tells nothing of its secret, nor of the hash that the store knows it by. */
const idOf = (hash: string): string =>
  createHash("sha256").update(`session ${hash}`).digest("hex").slice(0, 24);

/** Where people are signed in, and what ends that. */
export function sessionHandlers({
  deps: { store },
  sessions,
  hub,
  audit,
}: ServerParts): Pick<Handlers, Names> {
  const personOf = async (id: string) => {
    const person = await store.people.byId(id);
    if (person === null) throw new Refused("not-found", "There is no such person.");
    return person;
  };
  const end = async (personId: string, hash: string): Promise<void> => {
    await store.people.endSession(hash);
    sessions.changed();
    hub.endOf(personId, hash);
  };

  return {
    sessions: async ({ parts: { person }, caller }) => {
      const { id } = await personOf(person);
      return (await store.people.sessionsOf(id)).map(({ hash, kind, createdAt, expiresAt, from }) => ({
        ...{ id: idOf(hash), kind, startedAt: createdAt, endsAt: expiresAt, from },
        isOwn: hash === caller.sessionHash,
      }));
    },
    endSession: async ({ parts: { person, session }, caller, place }) => {
      const { id, name } = await personOf(person);
      const found = (await store.people.sessionsOf(id)).find(({ hash }) => idOf(hash) === session);
      if (found === undefined) throw new Refused("not-found", "This session has ended already.");
      await end(id, found.hash);
      await audit.write("session-ended", caller.person.name, `${name}: ${found.kind} ${found.from}`, place);
      return { done: true };
    },
    endSessions: async ({ parts: { person }, caller, place }) => {
      const { id, name } = await personOf(person);
      const others = (await store.people.sessionsOf(id)).filter(({ hash }) => hash !== caller.sessionHash);
      for (const { hash } of others) await end(id, hash);
      await audit.write("session-ended", caller.person.name, `${name}: ${others.length}`, place);
      return { done: true };
    },
  };
}
