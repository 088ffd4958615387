import { LOCAL_PERSON } from "../accounts/caller.ts";
import type { Handlers } from "../http/bind.ts";
import { Refused } from "../http/problem.ts";
import type { ServerParts } from "./parts.ts";

type Names = "unitGate" | "releaseUnit" | "asideFacts" | "checkRecords";

/** Units that are held and released, and whether their records are what was written. */
export function unitHandlers({ deps, gates, hub }: ServerParts): Pick<Handlers, Names> {
  const { records } = deps.store;
  return {
    unitGate: ({ parts: { unit } }) => gates.gate(unit),
    releaseUnit: async ({ parts: { unit }, caller }) => {
      const person = caller.sessionHash === null ? LOCAL_PERSON.id : caller.person.id;
      const { fact, gate, isNew } = await gates.release(unit, person);
      if (isNew) hub.push({ type: "facts", no: fact.no });
      return { fact, gate };
    },
    asideFacts: async ({ query: { after, limit } }) => [...(await records.aside(after, limit))],
    checkRecords: async ({ query: { stream, seq, hash } }) => {
      const given = [stream, seq, hash].filter((value) => value !== undefined).length;
      if (given !== 0 && given !== 3)
        throw new Refused("bad-request", "A head that was kept elsewhere is a stream, a number and a hash.");
      const kept =
        stream === undefined || seq === undefined || hash === undefined ? [] : [{ stream, seq, hash }];
      return { faults: [...(await records.verify(kept))], heads: [...(await records.heads())] };
    },
  };
}
