import { randomBytes } from "node:crypto";
import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { type CellTables, RANK } from "@pinwright/book";
import { type Problem, problemSchema, type Status, statusSchema, TOKEN_HEADER } from "@pinwright/contract";
import { openStore, type Store, type StorePlace } from "@pinwright/store";
import { programRoot } from "../root.ts";
import { createServer, type PinwrightServer } from "../server.ts";

export const HOST = "127.0.0.1:4180";
export const PASSWORD = "correct horse battery";

/** A small book: three switches and a machine. */
export const SMALL: CellTables = new Map([
  [
    "machine",
    new Map([
      [
        "machine",
        new Map([
          [RANK, "a0"],
          ["id", '"small"'],
          ["label", '"Small"'],
        ]),
      ],
    ]),
  ],
  [
    "devices",
    new Map(
      ["sw.left", "sw.right", "sw.top"].map((id, i) => [
        String(i + 1),
        new Map([
          [RANK, `a${i}`],
          ["id", id],
          ["x_mm", String(10 * i)],
        ]),
      ]),
    ),
  ],
]);

export interface Sent {
  readonly method?: string;
  readonly body?: unknown;
  /** Bytes instead of JSON. */
  readonly bytes?: Uint8Array<ArrayBuffer>;
  readonly headers?: Readonly<Record<string, string>>;
}

/** Someone with a browser: keeps the cookie and the token. */
export class Visitor {
  readonly #server: TestServer;
  readonly address: string;
  cookie = "";
  token = "";

  constructor(server: TestServer, address = "127.0.0.1") {
    this.#server = server;
    this.address = address;
  }

  async send(path: string, { method = "GET", body, bytes, headers = {} }: Sent = {}): Promise<Response> {
    const given: Record<string, string> = { host: HOST };
    if (body !== undefined) given["content-type"] = "application/json";
    if (this.cookie !== "") given.cookie = this.cookie;
    if (method !== "GET" && this.token !== "") given[TOKEN_HEADER] = this.token;
    const content = bytes ?? (body === undefined ? undefined : JSON.stringify(body));
    const response = await this.#server.fetch(
      new Request(`http://${HOST}${path}`, {
        method,
        headers: { ...given, ...headers },
        ...(content === undefined ? {} : { body: content }),
      }),
      this.address,
    );
    const set = response.headers.get("set-cookie");
    if (set !== null) this.cookie = set.split(";")[0] ?? "";
    return response;
  }

  /** The JSON of a good answer. */
  async get(path: string, sent: Sent = {}): Promise<unknown> {
    const response = await this.send(path, sent);
    if (!response.ok)
      throw new Error(`${sent.method ?? "GET"} ${path}: ${response.status} ${await response.text()}`);
    return response.json();
  }

  post(path: string, body: unknown, method = "POST"): Promise<unknown> {
    return this.get(path, { method, body });
  }

  /** The problem of a refusal. */
  async refusal(path: string, sent: Sent = {}): Promise<Problem & { readonly status: number }> {
    const response = await this.send(path, sent);
    if (response.ok) throw new Error(`${path} was not refused: ${response.status}`);
    return { status: response.status, ...problemSchema.parse(await response.json()) };
  }

  /** Loads the page: learns the token. */
  async look(): Promise<Status> {
    const status = statusSchema.parse(await this.get("/api/status"));
    this.token = status.token ?? "";
    return status;
  }

  async signIn(name: string, secret: string): Promise<Status> {
    await this.post("/api/sign-in", { name, secret });
    return this.look();
  }
}

/** A server on a store of its own, without sockets and with a clock that is turned by hand. */
export class TestServer {
  readonly store: Store;
  /** What went wrong inside. */
  readonly lines: string[];
  readonly #server: PinwrightServer;
  readonly #folder: string;
  readonly #clock: { now: number };
  readonly #opened: { count: number };

  private constructor(
    folder: string,
    store: Store,
    server: PinwrightServer,
    seen: { readonly clock: { now: number }; readonly lines: string[]; readonly opened: { count: number } },
  ) {
    this.#folder = folder;
    this.store = store;
    this.#server = server;
    this.#clock = seen.clock;
    this.#opened = seen.opened;
    this.lines = seen.lines;
  }

  /** How often the network was opened. */
  get opened(): number {
    return this.#opened.count;
  }

  /**
   * @param tables the books to begin with, by id; the shop is empty
   * @param place where its store is; null: a SQLite file of its own
   */
  static async start(
    tables: Readonly<Record<string, CellTables>> = { small: SMALL },
    place: StorePlace | null = null,
  ): Promise<TestServer> {
    const folder = await mkdtemp(join(tmpdir(), "pinwright-server-"));
    const clock = { now: Date.UTC(2026, 2, 31, 9, 30) };
    let ids = 0;
    const newId = (): string => `id${++ids}`;
    const store = await openStore(place ?? { kind: "sqlite", file: join(folder, "store.sqlite") }, {
      now: () => new Date(clock.now).toISOString(),
      newId,
    });
    const program = { personId: "pinwright", personName: "Pinwright" };
    for (const [id, rows] of Object.entries({ ...tables, shop: new Map() }))
      await store.books.add(
        { id, kind: id === "shop" ? "shop" : "machine", tables: rows, note: "" },
        program,
      );
    const lines: string[] = [];
    const opened = { count: 0 };
    const server = await createServer({
      store,
      paths: { temp: join(folder, "temp"), web: null, examples: join(programRoot(), "examples") },
      reach: {
        hosts: () => new Set([HOST]),
        addresses: () => (opened.count === 0 ? [] : ["https://office.local:4181"]),
        open: async () => {
          opened.count++;
        },
      },
      version: "1",
      now: () => clock.now,
      random: (bytes) => randomBytes(bytes),
      newId,
      log: (line) => lines.push(line),
      shared: false,
      checkAnswers: true,
    });
    return new TestServer(folder, store, server, { clock, lines, opened });
  }

  fetch(request: Request, address: string): Promise<Response> {
    return Promise.resolve(this.#server.app.fetch(request, { place: { address, secure: false } }));
  }

  /** Time passes. */
  wait(ms: number): void {
    this.#clock.now += ms;
  }

  async close(): Promise<void> {
    await this.#server.close();
    await this.store.close();
    await rm(this.#folder, { recursive: true, force: true });
  }

  /** The owner, after the first account was made. */
  async owner(): Promise<Visitor> {
    const owner = new Visitor(this);
    await owner.look();
    await owner.post("/api/set-up", { name: "Olga", password: PASSWORD });
    await owner.look();
    return owner;
  }

  /** Someone with another role. */
  async person(owner: Visitor, name: string, role: string): Promise<Visitor> {
    await owner.post("/api/people", { name, role, password: PASSWORD });
    const visitor = new Visitor(this, "192.168.7.30");
    await visitor.signIn(name, PASSWORD);
    return visitor;
  }
}
