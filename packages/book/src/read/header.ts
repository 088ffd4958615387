import type { FaultLog } from "../fault-log.ts";
import type { Table } from "../schema/table.ts";
import { nearest } from "../text/nearest.ts";
import type { RawTable } from "./raw.ts";
import { columnStem, columnUnit } from "./units.ts";

/** For each column of the schema its place in the file, or -1 when the file does not have it. */
export function readHeader(table: Table, raw: RawTable, log: FaultLog): readonly number[] {
  const names = Object.keys(table.columns);
  const places = new Map<string, number>();
  const unknown: { name: string; at: number }[] = [];
  raw.header.forEach((heading, at) => {
    const name = heading.trim();
    if (name === "" && raw.rows.every((row) => (row[at] ?? "").trim() === "")) return;
    if (!names.includes(name)) unknown.push({ name, at });
    else if (places.has(name)) {
      log.add({
        code: "column-duplicate",
        file: raw.file,
        row: 1,
        column: name,
        value: name,
        expected: `each column once; the first \`${name}\` counts, remove the other`,
      });
    } else places.set(name, at);
  });
  for (const { name } of unknown) unknownColumn(table, raw, name, names, places, log);
  for (const [name, column] of Object.entries(table.columns)) {
    if (column.required && !places.has(name)) {
      log.add({
        code: "column-missing",
        file: raw.file,
        row: 1,
        column: name,
        expected: `a column \`${name}\`: ${column.about}`,
        nearest: name,
      });
    }
  }
  return names.map((name) => places.get(name) ?? -1);
}

function unknownColumn(
  table: Table,
  raw: RawTable,
  name: string,
  names: readonly string[],
  places: ReadonlyMap<string, number>,
  log: FaultLog,
): void {
  const fault = { code: "column-unknown", file: raw.file, row: 1, column: name, value: name } as const;
  const stem = columnStem(name);
  const otherUnit = names.find(
    (n) => n.toLowerCase() !== name.toLowerCase() && stem !== null && columnStem(n) === stem,
  );
  if (otherUnit !== undefined) {
    const unit = columnUnit(otherUnit) ?? otherUnit;
    log.add({
      ...fault,
      expected: `\`${otherUnit}\`: this table takes the value in ${unit}; convert the numbers and rename the column`,
      nearest: otherUnit,
    });
    return;
  }
  const free = names.filter((n) => !places.has(n));
  log.add({
    ...fault,
    expected:
      name === ""
        ? "a heading above every column that holds values"
        : `a column of \`${table.name}\`: ${names.join(", ")}; the values below are not read`,
    nearest: nearest(name, free.length > 0 ? free : names),
  });
}
