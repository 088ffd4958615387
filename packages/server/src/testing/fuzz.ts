import { problemSchema, ROUTES, type Route, type RouteName } from "@pinwright/contract";
import { seededRandom } from "@pinwright/kernel";
import { HOST, PASSWORD, TestServer, Visitor } from "./test-server.ts";

/** Texts that have broken programs before. */
const WEIRD: readonly string[] = [
  "",
  " ",
  "../../../etc/passwd",
  "..\\..\\windows",
  "/etc/passwd",
  "C:\\keys",
  "small/../shop",
  "__proto__",
  "constructor",
  "toString",
  "null",
  "-1",
  "1e309",
  "9007199254740993",
  "\u0000",
  "a\u0000b",
  "\ud800",
  "\u202e\u0007",
  "<script>alert(1)</script>",
  "'; DROP TABLE books; --",
  "%00",
  "%2e%2e%2f",
  "{{7*7}}",
  "=HYPERLINK(1)",
  "x".repeat(5_000),
  "齊\u0301😀",
];

const PATHS: readonly string[] = [
  "/",
  "/api",
  "/api/",
  "/api/../api/books",
  "//api/books",
  "/api/books/%2e%2e/%2e%2e/keys/authority.key",
  "/api/jobs/id1/files/..%2f..%2fstore.sqlite",
  "/../../etc/passwd",
  "/assets/..%5c..%5cpackage.json",
  "/%zz",
  "/api/books/%",
  "/.git/config",
];

interface Sending {
  readonly name: RouteName | "path";
  readonly method: string;
  readonly path: string;
  readonly body: string | Uint8Array<ArrayBuffer> | undefined;
  readonly headers: Record<string, string>;
}

/** What is chosen at random, the same for the same seed. */
class Chance {
  readonly #next: () => number;

  constructor(seed: number) {
    this.#next = seededRandom(seed);
  }

  number(below: number): number {
    return Math.floor(this.#next() * below);
  }

  yes(share: number): boolean {
    return this.#next() < share;
  }

  of<T>(list: readonly T[]): T {
    const item = list[this.number(list.length)];
    if (item === undefined) throw new Error("An empty list has nothing to choose.");
    return item;
  }

  bytes(most: number): Uint8Array<ArrayBuffer> {
    return Uint8Array.from({ length: this.number(most) }, () => this.number(256));
  }

  value(depth = 0): unknown {
    const kind = this.number(depth > 3 ? 6 : 8);
    if (kind === 6) return Array.from({ length: this.number(4) }, () => this.value(depth + 1));
    if (kind === 7)
      return Object.fromEntries(
        Array.from({ length: this.number(4) }, () => [this.of(WEIRD), this.value(depth + 1)]),
      );
    return [this.of(WEIRD), this.number(1e9) - 5e8, this.yes(0.5), null, this.#next(), "small"][kind];
  }
}

/** Bodies as they should be, for those that take one. */
function goodBody(name: RouteName, chance: Chance): unknown {
  const id = `fuzz-${chance.number(1e9)}-id`;
  switch (name) {
    case "setUp":
      return { name: "Eve", password: PASSWORD };
    case "signIn":
      return {
        name: chance.of(["Olga", "Eve", ...WEIRD]),
        secret: chance.of(["wrong secret", "0000", ...WEIRD]),
      };
    case "addPerson":
      return {
        name: `p${chance.number(1000)}`,
        role: chance.of(["viewer", "builder", "owner"]),
        code: "1234",
      };
    case "changePerson":
      return chance.of<unknown>([
        { active: false },
        { code: null },
        { role: "viewer" },
        { name: chance.of(WEIRD) },
      ]);
    case "addBook":
      return { id: `book-${chance.number(50)}`, label: "Book", from: "blank" };
    case "changeBook":
      return { archived: chance.yes(0.5) };
    case "change": {
      const row = chance.of(["1", "2", "9", ...WEIRD]);
      const column = chance.of(["#", "x_mm", "id", "none", ...WEIRD]);
      const [from, to] = [chance.of(["", "0", "10", "a0"]), chance.of(["", "5", ...WEIRD])];
      return {
        id,
        changes: [{ table: chance.of(["devices", "choices", "machine", "outlines"]), row, column, from, to }],
      };
    }
    case "undo":
    case "redo":
    case "restoreSnapshot":
      return { id };
    case "addSnapshot":
      return { name: `s${chance.number(20)}` };
    case "keepMapping":
      return { table: "devices", header: [chance.of(WEIRD)], columns: ["id"] };
    case "makeSheets":
      return {
        id,
        harnessIds: [chance.of(WEIRD)],
        kinds: [chance.of(["pinboard", ...WEIRD])],
        formats: [],
        language: "en",
      };
    default:
      return {};
  }
}

/** A value with one part of it replaced. */
function spoilt(value: unknown, chance: Chance): unknown {
  if (typeof value !== "object" || value === null || chance.yes(0.2)) return chance.value();
  const entries = Object.entries(value);
  if (entries.length === 0 || chance.yes(0.2)) return { ...value, [chance.of(WEIRD)]: chance.value() };
  const at = chance.number(entries.length);
  const made = entries.flatMap(([key, inner], i) =>
    i !== at ? [[key, inner] as const] : chance.yes(0.3) ? [] : [[key, spoilt(inner, chance)] as const],
  );
  return Array.isArray(value) ? made.map(([, inner]) => inner) : Object.fromEntries(made);
}

function bodyOf(name: RouteName, route: Route, chance: Chance): Sending["body"] {
  if (route.takesFile === true)
    return chance.yes(0.5) ? chance.bytes(2_000) : `PK\u0003\u0004${chance.of(WEIRD)}`;
  if (chance.yes(0.1)) return chance.bytes(200);
  if (chance.yes(0.03)) return "[".repeat(chance.number(100_000));
  const body = goodBody(name, chance);
  const text = JSON.stringify(chance.yes(0.5) ? body : spoilt(body, chance)) ?? "";
  return chance.yes(0.05) ? text.slice(0, chance.number(text.length)) : text;
}

function queryOf(chance: Chance): string {
  if (chance.yes(0.4)) return "";
  if (chance.yes(0.4)) return chance.of(GOOD_QUERIES);
  const names = ["name", "since", "limit", "before", "format", "snapshot", "rehearse", chance.of(WEIRD)];
  const pairs = Array.from({ length: 1 + chance.number(4) }, () => {
    const value = chance.of(["1", "zip", "a.xlsx", "b.csv", "true", ...WEIRD]);
    return `${encode(chance.of(names))}=${encode(value)}`;
  });
  return `?${pairs.join("&")}`;
}

/** Queries that some route takes. */
const GOOD_QUERIES: readonly string[] = [
  "?name=a.zip",
  "?name=b.csv&rehearse=true",
  "?since=0&limit=5",
  "?format=zip",
  "?format=xlsx&snapshot=1",
  "?before=9",
];

/** Parts of paths that lead somewhere. */
const GOOD_PARTS: readonly string[] = ["small", "small", "small", "shop", "1", "2", "id1"];

/** `encodeURIComponent` that takes halves of characters. */
const encode = (text: string): string => encodeURIComponent(text.replace(/\p{Surrogate}/gu, "%"));

const NAMES = Object.keys(ROUTES).filter((name): name is RouteName => Object.hasOwn(ROUTES, name));

function sending(chance: Chance): Sending {
  const headers: Record<string, string> = {};
  if (chance.yes(0.1)) headers.origin = chance.of(["https://evil.example", "null", `http://${HOST}`, "x"]);
  if (chance.yes(0.05)) headers.host = chance.of(["evil.example", "127.0.0.1", "localhost:4180"]);
  if (chance.yes(0.05)) headers["sec-fetch-site"] = chance.of(["cross-site", "same-site", "same-origin"]);
  if (chance.yes(0.1)) headers["x-pinwright-token"] = chance.of(["x", "A".repeat(43)]);
  if (chance.yes(0.05))
    headers.cookie = chance.of(["pinwright=", `pinwright=${"A".repeat(43)}`, "a=b; ;=;pinwright"]);
  if (chance.yes(0.1)) headers["last-event-id"] = chance.of(["1", "x-9", "id1-999999999999999"]);
  if (chance.yes(0.1))
    headers["content-type"] = chance.of(["text/plain", "application/json", "multipart/form-data"]);
  if (chance.yes(0.02)) headers["content-length"] = chance.of(["-1", "999999999999", "x"]);
  if (chance.yes(0.1)) {
    const path = chance.of(PATHS);
    return { name: "path", method: chance.of(["GET", "POST"]), path, body: undefined, headers };
  }
  const name = chance.of(NAMES);
  const route: Route = ROUTES[name];
  const method = chance.yes(0.9)
    ? route.method.toUpperCase()
    : chance.of(["GET", "POST", "PUT", "DELETE", "PATCH"]);
  const path = route.path.replace(/:(\w+)/g, () =>
    encode(chance.yes(0.7) ? chance.of(GOOD_PARTS) : chance.of(WEIRD)),
  );
  const body = method === "GET" ? undefined : bodyOf(name, route, chance);
  return { name, method, path: `${path}${queryOf(chance)}`, body, headers };
}

/** What came of many requests. */
export interface Fuzzed {
  /** How many answers of each status. */
  readonly statuses: ReadonlyMap<number, number>;
  /** Requests that were answered by a fault of the server, or not as they should be. */
  readonly wrong: readonly string[];
}

/** Requests that one server gets; then there is another, so that all accounts and books are there again. */
const REQUESTS_EACH = 1_000;

/** Sends random requests of everyone to servers of their own. */
export async function fuzz(seed: number, requests: number): Promise<Fuzzed> {
  const chance = new Chance(seed);
  const statuses = new Map<number, number>();
  const wrong: string[] = [];
  for (let from = 0; from < requests; from += REQUESTS_EACH)
    await fuzzOne(chance, from, Math.min(requests, from + REQUESTS_EACH), statuses, wrong);
  return { statuses, wrong };
}

async function fuzzOne(
  chance: Chance,
  from: number,
  to: number,
  statuses: Map<number, number>,
  wrong: string[],
): Promise<void> {
  const server = await TestServer.start();
  try {
    const owner = await server.owner();
    const visitors: (readonly [Visitor, string])[] = [
      [owner, "Olga"],
      [new Visitor(server, "10.0.0.66"), ""],
    ];
    for (const role of ["owner", "designer", "lead", "builder", "viewer"])
      visitors.push([await server.person(owner, `one ${role}`, role), `one ${role}`]);
    for (let i = from; i < to; i++) {
      const { name, method, path, body, headers } = sending(chance);
      const [visitor, person] = chance.of(visitors);
      const given = { "content-type": "application/json", ...headers };
      const bytes = typeof body === "string" ? new Uint8Array(Buffer.from(body)) : body;
      const sent = { method, headers: given, ...(bytes === undefined ? {} : { bytes }) };
      const response = await visitor.send(path, sent);
      statuses.set(response.status, (statuses.get(response.status) ?? 0) + 1);
      const fault = await faultOf(response);
      if (fault !== null) wrong.push(`${i} ${name} ${method} ${path.slice(0, 200)}: ${fault}`);
      server.wait(chance.number(60_000));
      // Whoever signed out, or was signed out, comes again, unless the account was put away.
      if (response.status === 401 && person !== "")
        await visitor.signIn(person, PASSWORD).catch(() => undefined);
    }
    wrong.push(...server.lines);
  } finally {
    await server.close();
  }
}

/** What is wrong with an answer: a fault of the server, a refusal that is no problem, a page that is not kept safe. */
async function faultOf(response: Response): Promise<string | null> {
  const text = response.ok ? "" : await response.text();
  await response.body?.cancel().catch(() => undefined);
  if (response.status >= 500 && response.status !== 503) return `${response.status} ${text.slice(0, 200)}`;
  if (response.status >= 400 && !problemSchema.safeParse(parsed(text)).success)
    return `no problem: ${text.slice(0, 200)}`;
  const policy = response.headers.get("content-security-policy") ?? "";
  return policy.startsWith("default-src 'none'") ? null : "no policy";
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return undefined;
  }
}
