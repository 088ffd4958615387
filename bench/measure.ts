import { writeFileSync } from "node:fs";
import { cpus, totalmem } from "node:os";
import { join } from "node:path";

/** Milliseconds of one call, with its result. */
export async function timed<T>(
  work: () => T | Promise<T>,
): Promise<{ readonly ms: number; readonly result: T }> {
  const start = performance.now();
  const result = await work();
  return { ms: performance.now() - start, result };
}

/** Middle of several times, ms. */
export const median = (times: readonly number[]): number =>
  times.toSorted((a, b) => a - b)[Math.floor(times.length / 2)] ?? 0;

/** Middle, least and most of several runs of a job, ms; the first run, when everything is cold, is told apart. */
export async function repeated(
  runs: number,
  work: () => unknown,
): Promise<{
  readonly coldMs: number;
  readonly medianMs: number;
  readonly minMs: number;
  readonly maxMs: number;
}> {
  const { ms: coldMs } = await timed(work);
  const times: number[] = [];
  for (let i = 0; i < runs; i++) times.push((await timed(work)).ms);
  return { coldMs, medianMs: median(times), minMs: Math.min(...times), maxMs: Math.max(...times) };
}

/** Wall time of a job, and the processor's over all threads, which other programs disturb less. */
export interface JobTime {
  readonly ms: number;
  readonly cpuMs: number;
}

/** Both times of one job. */
export function once(work: () => unknown): JobTime {
  const before = process.cpuUsage();
  const start = performance.now();
  work();
  const { user, system } = process.cpuUsage(before);
  return { ms: performance.now() - start, cpuMs: (user + system) / 1000 };
}

/** To a tenth. */
export const tenth = (value: number): number => Math.round(value * 10) / 10;

/** A row of results: middle, least and most of several times of a job. */
export const figures = (what: string, times: readonly JobTime[]): Record<string, string | number> => ({
  what,
  ms: tenth(median(times.map(({ ms }) => ms))),
  least_ms: tenth(Math.min(...times.map(({ ms }) => ms))),
  most_ms: tenth(Math.max(...times.map(({ ms }) => ms))),
  cpu_ms: tenth(median(times.map(({ cpuMs }) => cpuMs))),
  least_cpu_ms: tenth(Math.min(...times.map(({ cpuMs }) => cpuMs))),
});

/** Writes a table of results beside the benches, with the machine that they were measured on. */
export function writeResults(name: string, rows: readonly Readonly<Record<string, string | number>>[]): void {
  const columns = [...new Set(rows.flatMap((row) => Object.keys(row)))];
  const lines = rows.map((row) => columns.map((c) => String(row[c] ?? "")).join(","));
  const machine = `# ${cpus().length} cores, ${Math.round(totalmem() / 2 ** 30)} GiB, Node ${process.versions.node}`;
  const text = `${machine}\n${columns.join(",")}\n${lines.join("\n")}\n`;
  writeFileSync(join(import.meta.dirname, "results", `${name}.csv`), text);
  process.stdout.write(text);
}
