import { Agent, request } from "node:http";
import { setTimeout as sleep } from "node:timers/promises";
import {
  type Fact,
  type FactBody,
  problemSchema,
  ROUTES,
  statusSchema,
  TOKEN_HEADER,
} from "@pinwright/contract";
import { Refused, Unreachable } from "../../packages/web/src/api/call.ts";
import { Outbox } from "../../packages/web/src/floor/outbox/outbox.ts";
import { Sender } from "../../packages/web/src/floor/outbox/sender.ts";
import type { BadNetwork } from "./bad-network.ts";
import { Journal } from "./journal.ts";

/** One request with facts, on the clock of `performance.now`. */
export interface Post {
  readonly startMs: number;
  readonly ms: number;
  readonly facts: number;
  /** How long the network held it up on purpose, ms. */
  readonly heldMs: number;
  /** `broken`: no answer came; `starting`: the server said that it is not ready. */
  readonly end: "answered" | "broken" | "starting";
}

/** What was seen and measured of all stations together. */
export interface Seen {
  readonly posts: Post[];
  /** Answers to what was asked about a unit, ms. */
  readonly readMs: number[];
  /** From a batch written into the journal to the server's answer, ms, with everything between. */
  readonly acknowledgedMs: number[];
  readonly errors: string[];
}

const TRY_AGAIN_MS = 100;

interface Answer {
  readonly status: number;
  readonly text: string;
  readonly cookie: string;
  readonly heldMs: number;
}

export interface StationOptions {
  readonly server: { readonly address: string };
  /** Port of the network's near end. */
  readonly port: () => number;
  readonly network: BadNetwork;
  readonly journal: string;
  readonly random: () => number;
  readonly seen: Seen;
}

/** A tablet at a bench: the floor's own outbox and sender, with a journal instead of a browser's database. */
export class Station {
  readonly #options: StationOptions;
  readonly #agent = new Agent({ keepAlive: true, maxSockets: 1 });
  #cookie = "";
  #token = "";
  #person = "";
  #journal: Journal;
  #switchedOn: Promise<unknown> = Promise.resolve();
  #writing: Promise<unknown> = Promise.resolve();
  #outbox: Outbox;
  #sender: Sender;
  #callOff: () => void = () => undefined;
  readonly #writtenMs = new Map<string, number>();

  constructor(options: StationOptions) {
    this.#options = options;
    ({ journal: this.#journal, outbox: this.#outbox, sender: this.#sender } = this.#open());
  }

  /** How often the stream was given up. */
  get renewals(): number {
    return this.#journal.renewals;
  }

  async signIn(name: string, secret: string): Promise<void> {
    const { cookie } = await this.#send("POST", "/api/sign-in", { name, secret });
    this.#cookie = cookie;
    const { person, token } = statusSchema.parse(JSON.parse((await this.#send("GET", "/api/status")).text));
    this.#token = token ?? "";
    this.#person = person?.id ?? "";
  }

  /** Writes batch after batch, each sent at once, with `pauseMs` between them. */
  async work(
    untilMs: number,
    pauseMs: number,
    batches: (lastFact: () => { stream: string; seq: number }) => Iterable<readonly FactBody[]>,
  ): Promise<void> {
    const { random } = this.#options;
    let last: Fact | null = null;
    const lastFact = (): { stream: string; seq: number } => ({
      stream: last?.stream ?? "",
      seq: last?.seq ?? 0,
    });
    await sleep(random() * pauseMs);
    for (const batch of batches(lastFact)) {
      if (performance.now() >= untilMs) return;
      last = await this.write(batch);
      this.sendSoon();
      const unit = "unit" in last.body ? last.body.unit : null;
      await sleep((0.5 + random()) * pauseMs);
      if (unit !== null && random() < 0.2) await this.#read(unit);
    }
    throw new Error("A station ran out of units.");
  }

  /** Writes a batch into the journal; returns its first fact. */
  async write(batch: readonly FactBody[]): Promise<Fact> {
    await this.#switchedOn;
    const writing = this.#outbox.write(batch, this.#person);
    this.#writing = writing.catch(() => undefined);
    const facts = await writing;
    const [first] = facts;
    const last = facts.at(-1);
    if (first === undefined || last === undefined) throw new Error("Nothing was written.");
    this.#writtenMs.set(last.hash, performance.now());
    return first;
  }

  sendSoon(): void {
    void this.#sender.send();
  }

  /** Sends until everything is at the server. */
  async finish(): Promise<void> {
    await this.#switchedOn;
    while ((await this.#journal.waiting(1)).length > 0) {
      await this.#sender.send();
      await sleep(50);
    }
  }

  /** Sends everything that waits in requests of so many facts, one after the other; returns how many requests. */
  async sendBy(atOnce: number): Promise<number> {
    for (let requests = 0; ; requests++) {
      const facts = await this.#journal.waiting(atOnce);
      if (facts.length === 0) return requests;
      try {
        await this.#post(facts);
      } catch (error) {
        // A server that is only just starting says so.
        const isStarting = error instanceof Refused && error.problem.code === "busy";
        if (!(error instanceof Unreachable) && !isStarting) throw error;
        await sleep(TRY_AGAIN_MS);
        continue;
      }
      const sentAt = new Date().toISOString();
      await this.#journal.settle(facts.map((fact) => ({ fact, sentAt, why: null })));
    }
  }

  /** The tablet is switched off and on again: it knows what it wrote, and not what the server has of it. */
  restart(): void {
    this.#callOff();
    // What is half written is written to its end first: after a real one nobody is left who would write it later.
    this.#switchedOn = this.#switchedOn
      .then(() => this.#writing)
      .then(() => {
        ({ journal: this.#journal, outbox: this.#outbox, sender: this.#sender } = this.#open());
        this.sendSoon();
      });
  }

  close(): void {
    this.#callOff();
    this.#agent.destroy();
  }

  #open(): { journal: Journal; outbox: Outbox; sender: Sender } {
    const now = (): string => new Date().toISOString();
    const journal = new Journal(this.#options.journal);
    const sender = new Sender(journal, {
      send: (facts) => this.#post(facts),
      heads: async () =>
        ROUTES.streams.answer.parse(JSON.parse((await this.#send("GET", "/api/streams")).text)),
      now,
      later: (ms, work) => {
        const timer = setTimeout(work, ms);
        this.#callOff = () => clearTimeout(timer);
        return this.#callOff;
      },
      told: (told) => {
        if (told.state === "signed-out") this.#options.seen.errors.push("signed out");
        // What a server says that is only just starting.
        else if (told.state === "refused" && !told.message.includes("is starting"))
          this.#options.seen.errors.push(told.message);
      },
    });
    return { journal, outbox: new Outbox(journal, now), sender };
  }

  async #post(facts: readonly Fact[]) {
    const { seen } = this.#options;
    const startMs = performance.now();
    const done = (end: Post["end"], heldMs: number): void =>
      void seen.posts.push({ startMs, ms: performance.now() - startMs, facts: facts.length, heldMs, end });
    try {
      const { text, heldMs } = await this.#send("POST", "/api/facts", { facts });
      done("answered", heldMs);
      const now = performance.now();
      for (const { hash } of facts) {
        const writtenMs = this.#writtenMs.get(hash);
        if (writtenMs === undefined) continue;
        seen.acknowledgedMs.push(now - writtenMs);
        this.#writtenMs.delete(hash);
      }
      return ROUTES.sendFacts.answer.parse(JSON.parse(text));
    } catch (error) {
      done(error instanceof Refused && error.problem.code === "busy" ? "starting" : "broken", 0);
      throw error;
    }
  }

  async #read(unit: string): Promise<void> {
    const startMs = performance.now();
    try {
      const { heldMs } = await this.#send("GET", `/api/units/${unit}`);
      if (heldMs === 0) this.#options.seen.readMs.push(performance.now() - startMs);
    } catch (error) {
      // It asks again another time, as a builder does.
      if (error instanceof Refused && error.problem.code !== "busy")
        this.#options.seen.errors.push(error.message);
    }
  }

  /** Throws `Unreachable` when no whole answer comes, `Refused` when it is no. */
  async #send(method: string, path: string, body?: unknown): Promise<Answer> {
    const answer = await this.#exchange(method, path, body === undefined ? "" : JSON.stringify(body));
    if (answer.status < 400) return answer;
    throw new Refused(problemSchema.parse(JSON.parse(answer.text)));
  }

  #exchange(method: string, path: string, body: string): Promise<Answer> {
    const { server, port, network } = this.#options;
    const bytes = Buffer.from(body);
    const headers: Record<string, string> = {
      host: new URL(server.address).host,
      ...(bytes.byteLength > 0
        ? { "content-type": "application/json", "content-length": String(bytes.byteLength) }
        : {}),
      ...(this.#cookie === "" ? {} : { cookie: this.#cookie }),
      ...(this.#token === "" ? {} : { [TOKEN_HEADER]: this.#token }),
    };
    return new Promise((resolve, reject) => {
      const failed = (): void => reject(new Unreachable("The server does not answer."));
      const asked = request(
        { host: "127.0.0.1", port: port(), method, path, headers, agent: this.#agent },
        (response) => {
          const near = response.socket.localPort ?? 0;
          const pieces: Buffer[] = [];
          response.on("data", (piece: Buffer) => pieces.push(piece));
          response.once("error", failed);
          response.once("aborted", failed);
          response.once("end", () => {
            if (!response.complete) return failed();
            const cookie = response.headers["set-cookie"]?.[0]?.split(";")[0] ?? "";
            const text = Buffer.concat(pieces).toString("utf8");
            resolve({ status: response.statusCode ?? 0, text, cookie, heldMs: network.heldMs(near) });
          });
        },
      );
      asked.once("error", failed);
      asked.end(bytes);
    });
  }
}
