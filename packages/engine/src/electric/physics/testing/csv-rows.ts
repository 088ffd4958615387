import { readFileSync } from "node:fs";

/** Rows of a small CSV file beside the tests, by heading. Cells in quotes may hold commas, not line ends. */
export const csvRows = (name: string): Record<string, string>[] => {
  const text = readFileSync(new URL(name, import.meta.url), "utf8");
  const [head = "", ...lines] = text.trim().split(/\r?\n/);
  const names = cells(head);
  return lines.map((line) => {
    const values = cells(line);
    return Object.fromEntries(names.map((name, i) => [name, values[i] ?? ""]));
  });
};

const cells = (line: string): string[] =>
  [...line.matchAll(/(?:^|,)(?:"((?:[^"]|"")*)"|([^",]*))/g)].map((m) =>
    m[1] === undefined ? (m[2] ?? "") : m[1].replaceAll('""', '"'),
  );
