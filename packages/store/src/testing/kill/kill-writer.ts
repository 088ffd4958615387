import { spawn } from "node:child_process";
import { join } from "node:path";
import { setTimeout } from "node:timers/promises";
import { build } from "esbuild";
import type { StorePlace } from "../../store.ts";
import type { WriterTask } from "./book.ts";

/** What a writer said before it was killed: the number by request id. */
export type Acknowledgements = ReadonlyMap<string, number>;

/** When a writer is killed: so many milliseconds after so many acknowledgements. */
export interface Moment {
  readonly afterSets: number;
  readonly thenMs: number;
}

/**
 * The writer as one file of plain JavaScript, which starts in a fraction of the time. It lies where Node finds the
 * packages that it needs.
 */
export async function bundleWriter(): Promise<string> {
  const outfile = join(import.meta.dirname, "../../../../../node_modules/.cache/pinwright/store-writer.mjs");
  await build({
    entryPoints: [join(import.meta.dirname, "writer.ts")],
    bundle: true,
    platform: "node",
    format: "esm",
    external: ["better-sqlite3", "kysely", "pg", "zod"],
    outfile,
  });
  return outfile;
}

/**
 * Starts a process that writes to a store, waits until it has opened it and for a moment more, does `before` and kills
 * it with SIGKILL.
 */
export async function killWriter(
  writer: string,
  place: StorePlace,
  round: number,
  { afterSets, thenMs }: Moment,
  before: () => Promise<void> = async () => {},
): Promise<Acknowledgements> {
  const task: WriterTask = { place, round };
  const child = spawn(process.execPath, [writer, JSON.stringify(task)], {
    stdio: ["ignore", "pipe", "pipe"],
  });
  let output = "";
  let complaints = "";
  const ended = new Promise<void>((resolve) => child.once("close", () => resolve()));
  const ready = new Promise<void>((resolve) => {
    child.stdout.setEncoding("utf8").on("data", (text: string) => {
      output += text;
      if (output.split("\n").length > 1 + afterSets) resolve();
    });
  });
  child.stderr.setEncoding("utf8").on("data", (text: string) => {
    complaints += text;
  });
  await Promise.race([ready, ended]);
  if (child.exitCode !== null) throw new Error(`The writer ended by itself:\n${complaints}`);
  await setTimeout(thenMs);
  await before();
  child.kill("SIGKILL");
  await ended;
  const lines = output.split("\n").slice(1, -1);
  return new Map(
    lines.map((line) => {
      const [id = "", no] = line.split(" ");
      return [id, Number(no)];
    }),
  );
}
