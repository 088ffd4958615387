import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { FaultLog } from "../fault-log.ts";
import type { AnyRow } from "../read/raw.ts";
import { keyText } from "../read/row.ts";
import { readTable } from "../read/table.ts";
import { ALL_TABLES } from "../schema/tables/index.ts";
import { arbitraryRow } from "../testing/arbitrary.ts";
import { parseCsv } from "./parse.ts";
import { writeCsv } from "./write.ts";

/** Rows through CSV and back. */
function throughCsv(table: (typeof ALL_TABLES)[string], rows: readonly AnyRow[]) {
  const log = new FaultLog();
  const text = writeCsv(table, rows);
  const { table: raw } = parseCsv(`${table.name}.csv`, text, log);
  if (raw === null) throw new Error("not parsed");
  return { text, rows: readTable(table, raw, log).rows, faults: log.list() };
}

describe.each(Object.values(ALL_TABLES))("$name", (table) => {
  const rows = fc.uniqueArray(arbitraryRow(table), { maxLength: 6, selector: (row) => keyText(table, row) });

  test("rows written and read are the same rows; read and written they are the same bytes", () => {
    fc.assert(
      fc.property(rows, (given) => {
        const first = throughCsv(table, given);
        expect(first.faults).toEqual([]);
        expect(first.rows).toEqual(given);
        expect(throughCsv(table, first.rows).text).toBe(first.text);
      }),
      { seed: 4, numRuns: 25 },
    );
  });
});
