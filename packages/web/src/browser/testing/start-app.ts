import { type ChildProcess, spawn } from "node:child_process";
import { mkdtemp, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { builtApp, ROOT } from "./built-app.ts";

/** A server with the built app, a free port and a folder of its own. */
export interface RunningApp {
  readonly address: string;
  /** Ends the server and removes what it kept. */
  readonly stop: () => Promise<void>;
}

const OPEN = /Pinwright is open at (\S+)/u;

/** Waits until the server says where it is; what it said otherwise is the reason why not. */
function opened(server: ChildProcess): Promise<string> {
  return new Promise((done, failed) => {
    let said = "";
    const hear = (text: unknown): void => {
      said += String(text);
      const address = OPEN.exec(said)?.[1];
      if (address !== undefined) done(address);
    };
    server.stdout?.on("data", hear);
    server.stderr?.on("data", hear);
    server.once("exit", (code) => failed(new Error(`The server ended with ${code}:\n${said}`)));
    server.once("error", failed);
  });
}

/** Starts the server as a person does, with everything that a first start makes. */
export async function startApp(): Promise<RunningApp> {
  const web = await builtApp();
  const data = await mkdtemp(join(tmpdir(), "pinwright-browser-"));
  const options = ["--data", data, "--web", web, "--port", "0", "--network-port", "0"];
  const main = join(ROOT, "packages", "server", "src", "main.ts");
  const server = spawn(process.execPath, ["--import", "tsx", main, ...options], {
    cwd: ROOT,
    stdio: ["ignore", "pipe", "pipe"],
  });
  const stop = async (): Promise<void> => {
    if (server.exitCode === null && server.signalCode === null) {
      const ended = new Promise((done) => server.once("exit", done));
      server.kill("SIGTERM");
      await ended;
    }
    await rm(data, { recursive: true, force: true });
  };
  try {
    return { address: await opened(server), stop };
  } catch (error) {
    await stop();
    throw error;
  }
}
