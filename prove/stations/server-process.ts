import { type ChildProcess, spawn } from "node:child_process";
import { mkdirSync, mkdtempSync, rmSync } from "node:fs";
import { request } from "node:http";
import { join } from "node:path";
import { setTimeout as sleep } from "node:timers/promises";
import { bundleServer } from "../../tools/bundle-server.ts";

/** One `kill -9`, on the clock of `performance.now`. */
export interface Kill {
  readonly atMs: number;
  /** The first good answer of the server that was started at once. */
  answeredMs: number;
}

const LOOK_AGAIN_MS = 10;
const LONGEST_START_MS = 120_000;

/** A server that was bundled for runs of this process alone. */
export interface BuiltServer {
  readonly program: string;
  readonly remove: () => void;
}

/** Bundles the server as `./start` does, into a folder of its own: a build meanwhile changes nothing in a run. */
export async function buildServer(): Promise<BuiltServer> {
  const cache = join(import.meta.dirname, "../../node_modules/.cache/pinwright");
  mkdirSync(cache, { recursive: true });
  const folder = mkdtempSync(join(cache, "stations-server-"));
  await bundleServer(folder);
  return {
    program: join(folder, "main.mjs"),
    remove: () => rmSync(folder, { recursive: true, force: true }),
  };
}

/** Status of a plain question; 0: nobody answers. */
const ask = (url: string): Promise<number> =>
  new Promise((resolve) => {
    const asked = request(url, { agent: false }, (response) => {
      response.resume();
      response.once("end", () => resolve(response.statusCode ?? 0));
      response.once("error", () => resolve(0));
    });
    asked.once("error", () => resolve(0));
    asked.end();
  });

/** The server as a process of its own, which can be killed and is then started again on the same port. */
export class ServerProcess {
  readonly #program: string;
  readonly #args: readonly string[];
  #child: ChildProcess | null = null;
  #port = 0;
  readonly kills: Kill[] = [];
  /** What the server complained about. */
  readonly complaints: string[] = [];

  /** @param program the built `main.mjs`; @param args its options but for the ports */
  constructor(program: string, args: readonly string[]) {
    this.#program = program;
    this.#args = args;
  }

  get port(): number {
    return this.#port;
  }

  get address(): string {
    return `http://127.0.0.1:${this.#port}`;
  }

  /** Starts it; resolves when it answers. */
  async start(): Promise<void> {
    const args = [this.#program, ...this.#args, "--port", String(this.#port), "--network-port", "0"];
    const child = spawn(process.execPath, args, { stdio: ["ignore", "pipe", "pipe"] });
    this.#child = child;
    child.stderr.setEncoding("utf8").on("data", (text: string) => this.complaints.push(text));
    const address = await new Promise<string>((resolve, reject) => {
      child.once("exit", () => reject(new Error(`The server did not start.\n${this.complaints.join("")}`)));
      child.stdout.setEncoding("utf8").on("data", (text: string) => {
        const [found] = /http:\/\/\S+/.exec(text) ?? [];
        if (found !== undefined) resolve(found);
      });
    });
    this.#port = Number(new URL(address).port);
  }

  /** Kills it with SIGKILL and starts it again at once; resolves when it answers. */
  async killAndStart(): Promise<void> {
    const kill: Kill = { atMs: performance.now(), answeredMs: Number.POSITIVE_INFINITY };
    this.kills.push(kill);
    await this.#end("SIGKILL");
    await Promise.all([this.start(), this.#lookFor(kill)]);
  }

  /** Asks until it answers, and writes down when. */
  async #lookFor(kill: Kill): Promise<void> {
    const giveUpMs = kill.atMs + LONGEST_START_MS;
    while ((await ask(`${this.address}/api/status`)) !== 200) {
      if (performance.now() > giveUpMs) throw new Error("The server did not come back.");
      await sleep(LOOK_AGAIN_MS);
    }
    kill.answeredMs = performance.now();
  }

  stop(): Promise<void> {
    return this.#end("SIGTERM");
  }

  #end(signal: NodeJS.Signals): Promise<void> {
    const child = this.#child;
    if (child === null || child.exitCode !== null || child.signalCode !== null) return Promise.resolve();
    return new Promise((resolve) => {
      child.removeAllListeners("exit");
      child.once("exit", () => resolve());
      child.kill(signal);
    });
  }
}
