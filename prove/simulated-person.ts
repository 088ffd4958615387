import { Agent, request } from "node:http";
import { setTimeout as sleep } from "node:timers/promises";
import {
  acknowledgedSchema,
  bookRowsSchema,
  type ChangeSet,
  changeSetSchema,
  eventSchema,
  problemSchema,
  statusSchema,
  TOKEN_HEADER,
} from "@pinwright/contract";

/** What was seen and measured of all people together. */
export interface Seen {
  /** Times of changes and undos, ms, from sending to the last byte of the answer. */
  readonly writeMs: number[];
  readonly readMs: number[];
  /** From a change's acknowledgement to its event at another person's, ms. */
  readonly pushMs: number[];
  /** Numbers of change sets that were acknowledged. */
  readonly acknowledged: Map<number, string>;
  /** When each was, by the clock of this process. */
  readonly acknowledgedAt: Map<number, number>;
  readonly errors: string[];
  conflicts: number;
  events: number;
}

interface Answer {
  readonly status: number;
  readonly text: string;
  readonly cookie: string;
}

const setsSchema = changeSetSchema.array();

/** Someone at a browser of their own: one session, one connection to ask on, one that events come by. */
export class Person {
  readonly #address: string;
  readonly #book: string;
  readonly #number: number;
  readonly #seen: Seen;
  readonly #random: () => number;
  readonly #agent = new Agent({ keepAlive: true, maxSockets: 1 });
  readonly #listening = new AbortController();
  #cookie = "";
  #token = "";
  #changeNo = 0;
  #sent = 0;
  /** Cells that this person edits, with what they say as far as known. */
  #cells: { table: string; row: string; column: string; now: string }[] = [];

  constructor(address: string, book: string, number: number, seen: Seen, random: () => number) {
    this.#address = address;
    this.#book = book;
    this.#number = number;
    this.#seen = seen;
    this.#random = random;
  }

  async signIn(name: string, secret: string): Promise<void> {
    const { cookie } = await this.#send("POST", "/api/sign-in", { name, secret });
    this.#cookie = cookie;
    const { text } = await this.#send("GET", "/api/status");
    this.#token = statusSchema.parse(JSON.parse(text)).token ?? "";
  }

  /** The session's cookie. */
  get cookie(): string {
    return this.#cookie;
  }

  /** Opens the book as the app does. */
  async open(): Promise<void> {
    const { text } = await this.#send("GET", `/api/books/${this.#book}/rows`);
    const { book, tables } = bookRowsSchema.parse(JSON.parse(text));
    this.#changeNo = book.changeNo;
    const rows = Object.entries(tables.devices ?? {});
    // A tenth of the devices, so that several people share each, and an area of one's own.
    this.#cells = rows
      .filter((_, i) => i % 10 === this.#number % 10)
      .flatMap(([row, cells]) =>
        ["x_mm", "y_mm"].map((column) => ({ table: "devices", row, column, now: cells[column] ?? "" })),
      );
    this.#listen();
  }

  /** Works until the time is over: thinks a little, edits or reads, and again. */
  async work(untilMs: number): Promise<void> {
    while (performance.now() < untilMs) {
      await sleep(200 + this.#random() * 800);
      const what = this.#random();
      if (what < 0.5) await this.#edit();
      else if (what < 0.55) await this.#undo();
      else if (what < 0.85) await this.#read(`/changes?since=${Math.max(1, this.#changeNo - 5)}`);
      else if (what < 0.97) await this.#read("/history?limit=50");
      else await this.#read("/rows");
    }
  }

  close(): void {
    this.#listening.abort();
    this.#agent.destroy();
  }

  async #edit(): Promise<void> {
    const count = 1 + Math.floor(this.#random() * 4);
    const chosen = new Set(
      Array.from({ length: count }, () => this.#cells[Math.floor(this.#random() * this.#cells.length)]),
    );
    const changes = [...chosen].flatMap((cell) =>
      cell === undefined
        ? []
        : [
            {
              table: cell.table,
              row: cell.row,
              column: cell.column,
              from: cell.now,
              to: (this.#random() * 500).toFixed(1),
            },
          ],
    );
    const body = { id: `load-${this.#number}-${++this.#sent}`, note: "Moved", changes };
    const before = performance.now();
    const { status, text } = await this.#send("POST", `/api/books/${this.#book}/changes`, body);
    this.#seen.writeMs.push(performance.now() - before);
    if (status === 200) this.#acknowledge(acknowledgedSchema.parse(JSON.parse(text)).no, body.id);
    else this.#refused("change", status, text, ["conflict"]);
  }

  async #undo(): Promise<void> {
    const id = `load-${this.#number}-${++this.#sent}`;
    const before = performance.now();
    const { status, text } = await this.#send("POST", `/api/books/${this.#book}/undo`, { id });
    this.#seen.writeMs.push(performance.now() - before);
    if (status === 200) this.#acknowledge(changeSetSchema.parse(JSON.parse(text)).no, id);
    else this.#refused("undo", status, text, ["conflict", "nothing-to-undo"]);
  }

  #acknowledge(no: number, id: string): void {
    this.#seen.acknowledged.set(no, id);
    this.#seen.acknowledgedAt.set(no, performance.now());
  }

  async #read(path: string): Promise<void> {
    const before = performance.now();
    const { status, text } = await this.#send("GET", `/api/books/${this.#book}${path}`);
    this.#seen.readMs.push(performance.now() - before);
    if (status !== 200) this.#seen.errors.push(`read ${path}: ${status} ${text.slice(0, 200)}`);
    else if (path.startsWith("/changes"))
      for (const set of setsSchema.parse(JSON.parse(text))) this.#take(set);
  }

  /** An expected refusal: someone was quicker, or there is nothing left to take back. What stands there now is noted. */
  #refused(what: string, status: number, text: string, expected: readonly string[]): void {
    const problem = problemSchema.safeParse(JSON.parse(text));
    if (!problem.success || !expected.includes(problem.data.code)) {
      this.#seen.errors.push(`${what}: ${status} ${text.slice(0, 200)}`);
      return;
    }
    this.#seen.conflicts++;
    for (const { row, column, found } of problem.data.conflicts ?? []) {
      const cell = this.#cells.find((c) => c.row === row && c.column === column);
      if (cell !== undefined) cell.now = found;
    }
  }

  #take({ no, changes }: ChangeSet): void {
    if (no <= this.#changeNo) return;
    this.#changeNo = no;
    for (const { table, row, column, to } of changes) {
      const cell = this.#cells.find((c) => c.table === table && c.row === row && c.column === column);
      if (cell !== undefined) cell.now = to;
    }
  }

  #listen(): void {
    const headers = { cookie: this.#cookie };
    const stream = request(`${this.#address}/api/events`, {
      headers,
      agent: false,
      signal: this.#listening.signal,
    });
    stream.on("error", (error) => {
      if (!this.#listening.signal.aborted) this.#seen.errors.push(`events: ${error.message}`);
    });
    stream.on("response", (answer) => {
      let text = "";
      answer.setEncoding("utf8");
      answer.on("error", () => undefined);
      answer.on("end", () => {
        if (!this.#listening.signal.aborted) this.#seen.errors.push("events: the stream ended");
      });
      answer.on("data", (part: string) => {
        text += part;
        for (let end = text.indexOf("\n\n"); end >= 0; end = text.indexOf("\n\n")) {
          const data = text
            .slice(0, end)
            .split("\n")
            .find((line) => line.startsWith("data: "));
          text = text.slice(end + 2);
          if (data !== undefined) this.#heard(data.slice(6));
        }
      });
    });
    stream.end();
  }

  #heard(data: string): void {
    const event = eventSchema.parse(JSON.parse(data));
    if (event.type !== "change" || event.book !== this.#book) return;
    this.#seen.events++;
    const at = this.#seen.acknowledgedAt.get(event.no);
    if (at !== undefined) this.#seen.pushMs.push(performance.now() - at);
    if (event.set !== null) this.#take(event.set);
  }

  #send(method: string, path: string, body?: unknown): Promise<Answer> {
    const content = body === undefined ? undefined : JSON.stringify(body);
    const headers = {
      cookie: this.#cookie,
      [TOKEN_HEADER]: this.#token,
      ...(content === undefined
        ? {}
        : { "content-type": "application/json", "content-length": String(Buffer.byteLength(content)) }),
    };
    return new Promise((resolve, reject) => {
      const sent = request(`${this.#address}${path}`, { method, headers, agent: this.#agent }, (answer) => {
        const parts: Buffer[] = [];
        answer.on("data", (part: Buffer) => parts.push(part));
        answer.on("error", reject);
        answer.on("end", () =>
          resolve({
            status: answer.statusCode ?? 0,
            text: Buffer.concat(parts).toString("utf8"),
            cookie: answer.headers["set-cookie"]?.[0]?.split(";")[0] ?? "",
          }),
        );
      });
      sent.on("error", reject);
      sent.end(content);
    });
  }
}
