import {
  type AnswerOf,
  type BodyIn,
  type PathPart,
  type Problem,
  pathTo,
  problemSchema,
  type QueryIn,
  ROUTES,
  type Route,
  type RouteName,
  TOKEN_HEADER,
} from "@pinwright/contract";

/** The server's refusal of a request, with its reasons. */
export class Refused extends Error {
  readonly problem: Problem;
  constructor(problem: Problem) {
    super(problem.message);
    this.problem = problem;
  }
}

/** Nobody answered: the server is stopped, or the network is down. What was asked may be asked again. */
export class Unreachable extends Error {}

/** What goes with a call: parts of the path, query, JSON body or bytes of a file, the session's token. */
export interface CallOptions<N extends RouteName> {
  readonly parts: Readonly<Record<PathPart<N>, string>>;
  readonly query?: QueryIn<N>;
  readonly body?: BodyIn<N>;
  readonly file?: Blob;
  readonly token?: string | null;
  readonly signal?: AbortSignal;
}

/** Asks the server; throws `Refused` or `Unreachable`. */
export async function call<N extends RouteName>(name: N, options: CallOptions<N>): Promise<AnswerOf<N>> {
  const route: Route = ROUTES[name];
  const headers: Record<string, string> = {};
  if (options.token) headers[TOKEN_HEADER] = options.token;
  if (options.body !== undefined) headers["content-type"] = "application/json";
  else if (options.file !== undefined) headers["content-type"] = "application/octet-stream";
  const response = await fetch(pathTo(name, options.parts, options.query), {
    method: route.method.toUpperCase(),
    headers,
    body: options.file ?? (options.body === undefined ? null : JSON.stringify(options.body)),
    signal: options.signal ?? null,
    credentials: "same-origin",
  }).catch((error: unknown) => {
    if (error instanceof DOMException && error.name === "AbortError") throw error;
    throw new Unreachable("The server does not answer.");
  });
  const answer: unknown = await response.json().catch(() => null);
  if (response.ok && route.answer !== undefined) {
    // `answer` of the route is the schema that `AnswerOf` is made from.
    return route.answer.parse(answer) as AnswerOf<N>;
  }
  const problem = problemSchema.safeParse(answer);
  if (problem.success) throw new Refused(problem.data);
  if (response.status >= 502 && response.status <= 504) throw new Unreachable("The server does not answer.");
  throw new Refused({
    code: "internal",
    message: `The server answered ${response.status} without a reason.`,
  });
}
