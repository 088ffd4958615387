import type { Fault, FaultCode } from "./fault.ts";
import { LIMITS } from "./limits.ts";
import { shorten } from "./text/shorten.ts";

/** What a fault needs to be told; everything that is not about a cell may be left out. */
export interface FaultNote {
  readonly code: FaultCode;
  readonly file: string;
  readonly row?: number | null;
  readonly column?: string | null;
  readonly value?: string | null;
  readonly expected: string;
  readonly nearest?: string | null;
}

/** Collects faults in the order in which they are found, up to the limit of one file. */
export class FaultLog {
  readonly #faults: Fault[] = [];
  readonly #perFile = new Map<string, number>();

  add(note: FaultNote): void {
    const count = (this.#perFile.get(note.file) ?? 0) + 1;
    this.#perFile.set(note.file, count);
    if (count > LIMITS.faultsPerFile) return;
    this.#faults.push({
      code: note.code,
      file: note.file,
      row: note.row ?? null,
      column: note.column ?? null,
      value: note.value === undefined || note.value === null ? null : shorten(note.value),
      expected: note.expected,
      nearest: note.nearest ?? null,
    });
  }

  /** All faults, sorted by nothing: file by file, cells before references before rules. */
  list(): readonly Fault[] {
    const more = [...this.#perFile].flatMap(([file, count]): Fault[] =>
      count <= LIMITS.faultsPerFile
        ? []
        : [
            {
              code: "faults-too-many",
              file,
              row: null,
              column: null,
              value: String(count - LIMITS.faultsPerFile),
              expected: `mend the first ${LIMITS.faultsPerFile} faults of this file; ${count - LIMITS.faultsPerFile} more are not listed`,
              nearest: null,
            },
          ],
    );
    return [...this.#faults, ...more];
  }
}
