import { z } from "zod";
import { changeSetSchema } from "./changes.ts";
import { jobSchema } from "./jobs.ts";
import { releaseJobSchema } from "./releases.ts";
import { serviceBookJobSchema } from "./service-book-routes.ts";

/** What the server pushes to every open browser. */
export const eventSchema = z.discriminatedUnion("type", [
  /** Change sets of more cells than `EVENT_CELLS` come without them, with `set` null: ask for them. */
  z.object({
    type: z.literal("change"),
    book: z.string(),
    no: z.number().int(),
    set: changeSetSchema.nullable(),
  }),
  /** The list of books, or what it says of one, is no longer the same. */
  z.object({ type: z.literal("books") }),
  /** The files of a book are no longer the same. */
  z.object({ type: z.literal("files"), book: z.string() }),
  /** Something was recorded on the floor; the number is that of the last fact that counts. */
  z.object({ type: z.literal("facts"), no: z.number().int() }),
  z.object({ type: z.literal("job"), job: jobSchema }),
  /** A release is being made, or was. */
  z.object({ type: z.literal("release"), job: releaseJobSchema }),
  /** A service book is being made, or was. */
  z.object({ type: z.literal("service-book"), job: serviceBookJobSchema }),
  /** The rights of the person who listens changed, or the session ended. */
  z.object({ type: z.literal("session") }),
]);
export type ServerEvent = z.infer<typeof eventSchema>;

/** Most cells of a change set that is pushed whole. */
export const EVENT_CELLS = 2_000;
