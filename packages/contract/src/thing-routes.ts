import { z } from "zod";
import { changeSetSchema } from "./changes.ts";
import { type Route, route } from "./route.ts";
import { plainText } from "./text.ts";

/** Most rows whose history is asked for at once. */
export const MOST_ROWS = 60;
/** Most sets that are told; of more, the last ones. */
export const MOST_ROW_SETS = 100;

/** What is asked of one thing. */
export const THING_ROUTES = {
  rowChanges: route({
    method: "get",
    path: "/api/books/:book/row-changes",
    about: `What was changed in some rows of a book, last first: at most ${MOST_ROW_SETS} sets, of each only the cells of these rows.`,
    role: "viewer",
    query: z.strictObject({
      /** Rows as `table:id`, with commas between. */
      rows: plainText(6000).regex(/^[\w.-]+:[^,:]+(,[\w.-]+:[^,:]+)*$/u, "table:row with commas between"),
    }),
    answer: z.array(changeSetSchema),
  }),
} as const satisfies Readonly<Record<string, Route>>;
