import type { FaultLog } from "../fault-log.ts";
import { MACHINE_FILE } from "../read/machine.ts";
import type { RawBook } from "../read/raw.ts";

/**
 * One step from a format of the book to the next. `apply` is a pure function over raw tables; it does not touch
 * the format number. Steps are only ever added, and an old one is never changed.
 */
export interface Migration {
  /** Format that it starts from; it leads to the next number. */
  readonly from: number;
  /** What changed, in one sentence. */
  readonly about: string;
  readonly apply: (raw: RawBook) => RawBook;
}

/** Steps from every older format to the present one. There is only one format yet. */
export const MIGRATIONS: readonly Migration[] = [];

const isRecord = (value: unknown): value is Readonly<Record<string, unknown>> =>
  typeof value === "object" && value !== null && !Array.isArray(value);

/**
 * Brings a raw book forward to `format`, before anything is validated. A newer format is a fault: the book is
 * then read as well as it goes, and should not be written back. A format number that is none is left for the
 * reading of `machine.json` to judge.
 */
export function migrate(
  raw: RawBook,
  migrations: readonly Migration[],
  format: number,
  log: FaultLog,
): RawBook {
  const found = isRecord(raw.machine) ? raw.machine.format : undefined;
  if (typeof found !== "number" || !Number.isInteger(found) || found < 1) return raw;
  if (found > format) {
    log.add({
      code: "format-unknown",
      file: MACHINE_FILE,
      column: "format",
      value: String(found),
      expected: `format ${format} or older; this book was written by a newer program. Read it with that program, and do not write it back with this one`,
      nearest: String(format),
    });
    return raw;
  }
  let book = raw;
  for (let from = found; from < format; from++) {
    const step = migrations.find((migration) => migration.from === from);
    if (step === undefined) {
      log.add({
        code: "format-unknown",
        file: MACHINE_FILE,
        column: "format",
        value: String(found),
        expected: `format ${format}; there is no way from format ${from} to ${from + 1}`,
      });
      return book;
    }
    const next = step.apply(book);
    book = { ...next, machine: { ...(isRecord(next.machine) ? next.machine : {}), format: from + 1 } };
  }
  return book;
}
