import { z } from "zod";
import { type Route, route } from "./route.ts";
import { utcTime } from "./text.ts";

/** Where somebody is signed in. */
const sessionSchema = z.object({
  /** Stands for the session and opens nothing. */
  id: z.string(),
  /** Begun with a password, or on the floor with a short code. */
  kind: z.enum(["office", "floor"]),
  startedAt: utcTime,
  endsAt: utcTime,
  /** Address of the device when it signed in; blank: nobody noted it. */
  from: z.string(),
  /** Whether it is the one that asks. */
  isOwn: z.boolean(),
});
export type PersonSession = z.infer<typeof sessionSchema>;

const done = z.object({ done: z.literal(true) });

/** Sessions of others: a tablet that is lost, or somebody who is gone. */
export const SESSION_ROUTES = {
  sessions: route({
    method: "get",
    path: "/api/people/:person/sessions",
    about: "Where a person is signed in, last first.",
    role: "owner",
    answer: z.array(sessionSchema),
  }),
  endSession: route({
    method: "delete",
    path: "/api/people/:person/sessions/:session",
    about:
      "Ends a session at once. What its device recorded and has not sent yet can still be sent by the next person.",
    role: "owner",
    answer: done,
  }),
  endSessions: route({
    method: "delete",
    path: "/api/people/:person/sessions",
    about: "Ends all sessions of a person at once, but for the one that asks.",
    role: "owner",
    answer: done,
  }),
} as const satisfies Readonly<Record<string, Route>>;
