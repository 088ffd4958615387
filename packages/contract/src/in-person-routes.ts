import { z } from "zod";
import { factBodySchema } from "./facts.ts";
import { type Route, route } from "./route.ts";
import { plainText, utcTime } from "./text.ts";

/** A stream that somebody begins at another's device: it holds what was said there once, and nothing more. */
const PERSON_STREAM = /^p-[0-9a-z]{9,40}$/;

/** What somebody records in person at a device where another works, whose session goes on. */
export const IN_PERSON_ROUTES = {
  recordInPerson: route({
    method: "post",
    path: "/api/facts/in-person",
    about:
      "Records what somebody with more rights than the one who works at the device says there, with their own name and password; nobody is signed in or out. The same stream sent twice counts once. Without accounts there is nothing to show.",
    role: "builder",
    body: z.strictObject({
      name: plainText(200).min(1),
      secret: z.string().min(1).max(200),
      /** Made up by the device. */
      stream: z.string().regex(PERSON_STREAM, "p- and at least nine letters or digits"),
      /** Time of the device. */
      at: utcTime,
      bodies: z.array(factBodySchema).min(1).max(50),
    }),
    answer: z.object({ person: z.string() }),
  }),
} as const satisfies Readonly<Record<string, Route>>;
