import {
  type AnswerOf,
  atLeast,
  type BodyOf,
  bookId,
  type PathPart,
  type QueryOf,
  ROUTES,
  type Route,
  type RouteName,
  TOKEN_HEADER,
} from "@pinwright/contract";
import { type Context, Hono } from "hono";
import type { z } from "zod";
import type { Caller } from "../accounts/caller.ts";
import type { Place } from "./place.ts";
import { Refused } from "./problem.ts";
import { readJson } from "./read-body.ts";

/** What a request brings along besides itself. */
export interface AppEnv {
  readonly Bindings: { readonly place: Place };
}

type CallerOf<N extends RouteName> = (typeof ROUTES)[N]["role"] extends "anyone" ? Caller | null : Caller;

/** A request that was checked: who asks, and everything that was sent, as the contract says. */
interface Call<N extends RouteName> {
  readonly parts: Readonly<Record<PathPart<N>, string>>;
  readonly query: QueryOf<N>;
  readonly body: BodyOf<N>;
  readonly caller: CallerOf<N>;
  readonly request: Request;
  readonly place: Place;
}

/** Answers as the contract says; or with a response of its own, which is a file, a stream, or the same in pieces. */
export type Handlers = {
  readonly [N in RouteName]: (call: Call<N>) => Promise<AnswerOf<N> | Response>;
};

/** Who asks; null: nobody that is signed in. */
export type FindCaller = (request: Request, place: Place) => Promise<Caller | null>;

/** Whether a token is the caller's; takes the same time for every wrong one. */
type IsToken = (caller: Caller, token: string) => boolean;

export interface BindOptions {
  readonly findCaller: FindCaller;
  readonly isToken: IsToken;
  /** Whether answers are held against the contract: tests do. */
  readonly checkAnswers: boolean;
}

const PART = /^[^\p{Cc}\p{Surrogate}]{1,200}$/u;

function partsOf(path: string, c: Context<AppEnv>): Readonly<Record<string, string>> {
  const parts: Record<string, string> = {};
  for (const [, name = ""] of path.matchAll(/:(\w+)/g)) {
    const value = c.req.param(name) ?? "";
    const fits =
      name === "no" ? /^\d{1,15}$/.test(value) : name === "book" ? isBookId(value) : PART.test(value);
    // A name that nothing can have is one that nothing has.
    if (!fits) throw new Refused("not-found", `There is no ${name} of this name.`);
    parts[name] = value;
  }
  return parts;
}

const isBookId = (text: string): boolean => bookId.safeParse(text).success;

function checked(schema: z.ZodType, value: unknown, where: string): unknown {
  const result = schema.safeParse(value);
  if (result.success) return result.data;
  const places = result.error.issues.slice(0, 20).map((issue) => ({
    at: issue.path.map(String).join("."),
    expected: issue.message,
  }));
  const [first] = places;
  const place = first === undefined || first.at === "" ? "" : ` at ${first.at}`;
  throw new Refused("bad-request", `The ${where} is not as it should be${place}: ${first?.expected ?? ""}.`, {
    places,
  });
}

function queryOf(schema: z.ZodType | undefined, url: string): unknown {
  const given: Record<string, string> = {};
  for (const [name, value] of new URL(url).searchParams) {
    if (!/^[^\p{Cc}\p{Surrogate}]*$/u.test(value))
      throw new Refused("bad-request", `The query "${name.slice(0, 40)}" has a control character.`);
    if (Object.hasOwn(given, name))
      throw new Refused("bad-request", `The query "${name.slice(0, 40)}" comes twice.`);
    given[name] = value;
  }
  return schema === undefined ? undefined : checked(schema, given, "query");
}

function checkRights(
  route: Route,
  name: RouteName,
  caller: Caller | null,
  request: Request,
  isToken: IsToken,
): void {
  if (route.role !== "anyone") {
    if (caller === null) throw new Refused("not-signed-in", "Sign in first.");
    if (!atLeast(caller.person.role, route.role))
      throw new Refused(
        "not-allowed",
        `This takes the role ${route.role} or above; yours is ${caller.person.role}.`,
      );
  }
  // Nobody who signs in has a token yet; who has a session has one, and it goes with everything that changes something.
  if (route.method === "get" || caller === null || name === "signIn") return;
  if (!isToken(caller, request.headers.get(TOKEN_HEADER) ?? ""))
    throw new Refused(
      "forged",
      `The header ${TOKEN_HEADER} is missing or of another session. Load the page again.`,
    );
}

async function answer<N extends RouteName>(
  handlers: Handlers,
  name: N,
  c: Context<AppEnv>,
  { findCaller, isToken, checkAnswers }: BindOptions,
): Promise<Response> {
  const route: Route = ROUTES[name];
  const request = c.req.raw;
  const parts = partsOf(route.path, c);
  const { place } = c.env;
  const caller = await findCaller(request, place);
  checkRights(route, name, caller, request, isToken);
  const query = queryOf(route.query, request.url);
  const body = route.body === undefined ? undefined : checked(route.body, await readJson(request), "body");
  // The same entry of ROUTES that the type is made from was checked a line above, the role included.
  const call = { parts, query, body, caller, request, place } as Call<N>;
  const result = await handlers[name](call);
  if (result instanceof Response) return result;
  if (checkAnswers) route.answer?.parse(result);
  return new Response(JSON.stringify(result), {
    headers: { "content-type": "application/json; charset=utf-8", "cache-control": "no-store" },
  });
}

const isRouteName = (name: string): name is RouteName => Object.hasOwn(ROUTES, name);

/** The whole API: every route of the contract, checked before its handler sees anything. */
export function bindRoutes(handlers: Handlers, options: BindOptions): Hono<AppEnv> {
  const app = new Hono<AppEnv>();
  const methods = new Map<string, string[]>();
  for (const name of Object.keys(ROUTES).filter(isRouteName)) {
    const { method, path }: Route = ROUTES[name];
    app.on(method.toUpperCase(), path, (c) => answer(handlers, name, c, options));
    methods.set(path, [...(methods.get(path) ?? []), method.toUpperCase()]);
  }
  for (const [path, allowed] of methods)
    app.all(path, () => {
      throw new Refused(
        "wrong-method",
        `This takes ${allowed.join(" and ")}.`,
        {},
        { allow: allowed.join(", ") },
      );
    });
  app.all("/api/*", () => {
    throw new Refused(
      "not-found",
      "There is nothing at this address. /api/openapi.json lists what there is.",
    );
  });
  return app;
}
