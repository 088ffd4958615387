import { expect } from "vitest";
import { csvRows } from "./csv-rows.ts";

const ROWS = new Map(csvRows("check-values.csv").map((row) => [row.id, row]));

/** Expects a value to be that of a row of `check-values.csv`, within the row's tolerance. */
export function expectChecked(id: string, value: number): void {
  const row = ROWS.get(id);
  expect(row, id).toBeDefined();
  const tolerance = Math.max(Number(row?.tolerance_abs), 1e-9);
  const wanted = Number(row?.expected);
  expect(Math.abs(value - wanted), `${id} ${row?.quantity}: ${value} against ${wanted}`).toBeLessThanOrEqual(
    tolerance,
  );
}
