import { createHash } from "node:crypto";
import { atLeast, type Fact, type FactBody, factText, NO_FACT } from "@pinwright/contract";
import type { Handlers } from "../http/bind.ts";
import { Refused } from "../http/problem.ts";
import type { ServerParts } from "./parts.ts";

/** What is said, as the whole of a stream. */
function streamOf(stream: string, person: string, at: string, bodies: readonly FactBody[]): readonly Fact[] {
  const facts: Fact[] = [];
  let before = NO_FACT;
  for (const [i, body] of bodies.entries()) {
    const text = { stream, seq: i + 1, before, at, person, body };
    before = createHash("sha256").update(factText(text)).digest("hex");
    facts.push({ ...text, hash: before });
  }
  return facts;
}

/** What a lead says in person at the device of a builder. */
export function inPersonHandlers({
  deps,
  accounts,
  audit,
  hub,
}: ServerParts): Pick<Handlers, "recordInPerson"> {
  const { records } = deps.store;
  return {
    recordInPerson: async ({ body: { name, secret, stream, at, bodies }, place }) => {
      if (!(await accounts.exist()))
        throw new Refused("bad-request", "There are no accounts: whoever is here may do this already.");
      const signedIn = accounts.signIn(name, secret, place.address);
      const { person } = await signedIn.catch(async (error: unknown) => {
        // Tries during a wait are not written down: they would fill the store.
        if (error instanceof Refused && error.problem.code === "wrong-secret")
          await audit.write("sign-in-refused", name, "in person", place);
        throw error;
      });
      if (!atLeast(person.role, "lead"))
        throw new Refused(
          "not-allowed",
          `This takes the role lead or above; ${person.name} is ${person.role}.`,
        );
      const facts = streamOf(stream, person.id, at, bodies);
      const { aside, counted } = await records.take(facts, () => null);
      const last = counted.at(-1);
      if (last !== undefined) {
        hub.push({ type: "facts", no: last.no });
        await audit.write("in-person", person.name, bodies.map(({ kind }) => kind).join(" "), place);
      }
      if (aside.length > 0)
        throw new Refused(
          "conflict",
          `The stream ${stream} holds something else already, or what only the server writes.`,
        );
      return { person: person.id };
    },
  };
}
