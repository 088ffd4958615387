import Papa from "papaparse";
import type { FaultLog } from "../fault-log.ts";
import type { RawTable } from "../read/raw.ts";
import { detectDelimiter, type ForeignDelimiter } from "./delimiter.ts";
import { unescapeFormula } from "./formula.ts";
import { CsvGuard } from "./guard.ts";

/** A table as far as it could be read; `complete` is false when rows may be missing. */
export interface ParsedCsv {
  readonly table: RawTable | null;
  readonly complete: boolean;
}

/**
 * Parses the text of a CSV file: with or without byte-order mark; lines end in LF, CRLF or CR; cells are
 * separated by comma, semicolon or tab, whichever the heading line uses most. Line ends inside a cell read as
 * LF. Formula escapes are taken back. A text beyond the limits is refused whole, with one fault.
 */
export function parseCsv(
  file: string,
  text: string,
  log: FaultLog,
  delimiter: ForeignDelimiter | null = null,
): ParsedCsv {
  const guard = new CsvGuard(file, delimiter);
  const beyond = guard.push(text) ?? guard.end();
  if (beyond !== null) {
    log.add(beyond);
    return { table: null, complete: false };
  }
  return parseGuardedCsv(file, text, log, delimiter);
}

/** The same for a text that a `CsvGuard` has already let through. */
export function parseGuardedCsv(
  file: string,
  text: string,
  log: FaultLog,
  delimiter: ForeignDelimiter | null = null,
): ParsedCsv {
  const plain = text.charCodeAt(0) === 0xfeff ? text.slice(1) : text;
  const lines = plain.includes("\r") ? plain.replace(/\r\n?/g, "\n") : plain;
  const { data, errors } = Papa.parse<string[]>(lines, {
    delimiter: delimiter ?? detectDelimiter(lines),
    newline: "\n",
    header: false,
    skipEmptyLines: false,
  });
  const firstError = errors.find((e) => e.type === "Quotes");
  const badRow = firstError?.row;
  if (firstError !== undefined) {
    log.add({
      code: "csv-quote",
      file,
      row: (badRow ?? 0) + 1,
      expected:
        firstError.code === "MissingQuotes"
          ? "a closing double quote; the file is read up to here"
          : "a separator or the end of the line after a closing double quote; a quote inside a cell is written twice. The file is read up to here",
    });
  }
  const records = badRow === undefined ? data : data.slice(0, badRow);
  const last = records[records.length - 1];
  if (badRow === undefined && last !== undefined && last.length === 1 && last[0] === "") records.pop();
  const heading = (records.shift() ?? []).map(unescapeFormula);
  if (lines.includes("'")) {
    for (const record of records) {
      for (let i = 0; i < record.length; i++) {
        const cell = record[i];
        if (cell?.charCodeAt(0) === 0x27) record[i] = unescapeFormula(cell);
      }
    }
  }
  return { table: { file, header: heading, rows: records }, complete: badRow === undefined };
}
