import type { Conflict, Problem, ProblemCode } from "@pinwright/contract";
import type { Outcome } from "@pinwright/store";

/** HTTP status of each reason for a refusal. */
const STATUS: Readonly<Record<ProblemCode, number>> = {
  "bad-request": 400,
  "bad-json": 400,
  "too-large": 413,
  "not-signed-in": 401,
  "not-allowed": 403,
  forged: 403,
  "wrong-secret": 401,
  "too-many-tries": 429,
  "not-found": 404,
  taken: 409,
  conflict: 409,
  "nothing-to-undo": 409,
  "nothing-to-redo": 409,
  busy: 503,
  unreadable: 422,
  "wrong-method": 405,
  internal: 500,
};

/** A request that is not done, and why. Thrown anywhere below a handler; answered as a `Problem`. */
export class Refused extends Error {
  readonly problem: Problem;
  readonly headers: Readonly<Record<string, string>>;

  constructor(
    code: ProblemCode,
    message: string,
    more: Omit<Problem, "code" | "message"> = {},
    headers: Readonly<Record<string, string>> = {},
  ) {
    super(message);
    this.problem = { code, message, ...more };
    this.headers = headers;
  }
}

/** The answer that says a problem. */
export function problemResponse(problem: Problem, headers: Readonly<Record<string, string>> = {}): Response {
  return new Response(JSON.stringify(problem), {
    status: STATUS[problem.code],
    headers: { "content-type": "application/json; charset=utf-8", "cache-control": "no-store", ...headers },
  });
}

const MESSAGES = {
  taken: "There is one of this name already. Choose another name.",
  "nothing-to-undo": "You have nothing left to take back in this book.",
  "nothing-to-redo": "You have taken nothing back in this book that could be made again.",
} as const;

const conflictText = (conflicts: readonly Conflict[]): string => {
  const [first] = conflicts;
  if (first === undefined)
    return "The book was changed meanwhile. Load it again and repeat what you wanted to do.";
  const place = `${first.table} ${first.row} ${first.column}`;
  return `${place} was changed meanwhile: it says "${first.found.slice(0, 80)}", not "${first.from.slice(0, 80)}". Nothing was changed; look at it and do it again.`;
};

/** What the store did, or the refusal that says why not. `what` is what was looked for: `book tidewatch`. */
export function done<T>(outcome: Outcome<T>, what: string): T {
  if ("done" in outcome) return outcome.done;
  if (outcome.refused === "conflict")
    throw new Refused("conflict", conflictText(outcome.conflicts), { conflicts: [...outcome.conflicts] });
  if (outcome.refused === "not-found") throw new Refused("not-found", `There is no ${what}.`);
  throw new Refused(outcome.refused, MESSAGES[outcome.refused]);
}
