import type { z } from "zod";
import type { Role } from "./people.ts";

/** One thing that can be asked of the server. The app, the server and the OpenAPI document all read this. */
export interface Route {
  readonly method: "get" | "post" | "patch" | "put" | "delete";
  /** Path with `:name` for its parts. */
  readonly path: string;
  readonly about: string;
  /** Least role; `anyone`: also without a session. */
  readonly role: Role | "anyone";
  readonly query?: z.ZodType;
  /** JSON body. */
  readonly body?: z.ZodType;
  /** Takes the bytes of a file as its body. */
  readonly takesFile?: true;
  /** JSON answer; absent: a file, or a stream of events. */
  readonly answer?: z.ZodType;
}

/** Keeps the exact type of a route. */
export const route = <const R extends Route>(given: R): R => given;
