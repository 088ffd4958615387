import { mkdirSync, writeFileSync } from "node:fs";
import { cpus, totalmem } from "node:os";

/** Writes `results/<name>`, with the machine that it was measured on. */
export const writeJson = (name: string, result: Readonly<Record<string, unknown>>): void => {
  const folder = new URL("results/", import.meta.url);
  mkdirSync(folder, { recursive: true });
  const machine = `${cpus().length} cores, ${Math.round(totalmem() / 2 ** 30)} GiB, Node ${process.versions.node}`;
  const text = `${JSON.stringify({ machine, ...result }, null, 2)}\n`;
  writeFileSync(new URL(name, folder), text);
  process.stdout.write(text);
};
