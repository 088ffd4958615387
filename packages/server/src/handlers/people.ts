import type { Status } from "@pinwright/contract";
import type { Caller } from "../accounts/caller.ts";
import { endCookie } from "../accounts/sessions.ts";
import type { Handlers } from "../http/bind.ts";
import { Refused } from "../http/problem.ts";
import type { ServerParts } from "./parts.ts";

type Names = "status" | "setUp" | "signIn" | "signOut" | "people" | "addPerson" | "changePerson" | "audit";

const withCookie = (answer: unknown, cookie: string): Response =>
  new Response(JSON.stringify(answer), {
    headers: {
      "content-type": "application/json; charset=utf-8",
      "cache-control": "no-store",
      "set-cookie": cookie,
    },
  });

/** Accounts, sessions, and what was done to them. */
export function peopleHandlers({ deps, accounts, sessions, hub, audit }: ServerParts): Pick<Handlers, Names> {
  const status = async (caller: Caller | null): Promise<Status> => ({
    version: deps.version,
    accounts: await accounts.exist(),
    person: caller?.person ?? null,
    token: caller?.token ?? null,
    addresses: caller === null ? [] : [...deps.reach.addresses()],
  });
  const signedIn = async (...given: Parameters<typeof sessions.start>): Promise<Response> => {
    const { caller, cookie } = await sessions.start(...given);
    return withCookie(await status(caller), cookie);
  };
  return {
    status: ({ caller }) => status(caller),
    setUp: async ({ body, caller, place }) => {
      if (caller === null && !(await accounts.exist()))
        throw new Refused("not-allowed", "The first account is made at the computer that Pinwright runs on.");
      const person = await accounts.setUp(body.name, body.password);
      await audit.write("set-up", person.name, "", place);
      await deps.reach.open();
      return signedIn(person, "office", place);
    },
    signIn: async ({ body, place }) => {
      if (!(await accounts.exist()))
        throw new Refused("bad-request", "There are no accounts yet. Make the first one.");
      try {
        const { person, kind } = await accounts.signIn(body.name, body.secret, place.address);
        await audit.write("sign-in", person.name, kind, place);
        return await signedIn(person, kind, place);
      } catch (error) {
        // Tries during a wait are not written down: they would fill the store.
        if (error instanceof Refused && error.problem.code === "wrong-secret")
          await audit.write("sign-in-refused", body.name, "", place);
        throw error;
      }
    },
    signOut: async ({ caller, place }) => {
      if (caller !== null && caller.sessionHash !== null) {
        await deps.store.people.endSession(caller.sessionHash);
        sessions.changed();
        hub.endOf(caller.person.id, caller.sessionHash);
        await audit.write("sign-out", caller.person.name, "", place);
      }
      return withCookie({ done: true }, endCookie(place));
    },
    people: async () => [...(await deps.store.people.list())],
    addPerson: async ({ body, caller, place }) => {
      if (!(await accounts.exist()))
        throw new Refused("not-allowed", "Make the owner's account first: until then everyone is the owner.");
      const person = await accounts.add(body);
      await audit.write("person-added", caller.person.name, `${person.name}: ${person.role}`, place);
      return person;
    },
    changePerson: async ({ parts, body, caller, place }) => {
      const { person, mayLess } = await accounts.change(parts.person, body);
      sessions.changed();
      if (mayLess) hub.endOf(person.id);
      // Which things were changed, never to what secret.
      const what = Object.keys(body).join(" ");
      await audit.write("person-changed", caller.person.name, `${person.name}: ${what}`, place);
      return person;
    },
    audit: async ({ query }) => [...(await deps.store.audit.list(query.before, query.limit))],
  };
}
