import { mkdirSync, writeFileSync } from "node:fs";

/** Rows of a plain CSV text without its heading; its cells hold no commas. */
export const cells = (csv: string): string[][] =>
  csv
    .trim()
    .split("\n")
    .slice(1)
    .map((line) => line.split(","));

/** How far a value lies above another, in percent. */
export const percent = (value: number, base: number): string => (100 * (value / base - 1)).toFixed(4);

/** Writes `results/<name>`. */
export const writeResults = (name: string, heading: string, rows: readonly string[]): void => {
  const folder = new URL("results/", import.meta.url);
  mkdirSync(folder, { recursive: true });
  writeFileSync(new URL(name, folder), `${[heading, ...rows].join("\n")}\n`);
};
