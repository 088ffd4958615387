import { CsvGuard } from "../csv/guard.ts";
import { bookPath } from "../csv/paths.ts";
import type { FaultNote } from "../fault-log.ts";
import { LIMITS } from "../limits.ts";
import { Utf8Reader } from "./utf8.ts";

/** Most bytes that a file of a book may have, by what it is. */
function byteLimit(path: string): number {
  const { kind } = bookPath(path);
  if (kind === "machine") return LIMITS.machineBytes;
  if (kind === "outline") return LIMITS.outlineBytes;
  return LIMITS.fileBytes;
}

/** Bytes that all files of one book have used so far. */
export interface Budget {
  bytesLeft: number;
}

export const newBudget = (): Budget => ({ bytesLeft: LIMITS.bookBytes });

/**
 * Takes a file piece by piece, decodes it strictly and watches every limit. Keeps only what is within the
 * limits; as soon as `push` returns a fault, nothing more need be read.
 */
export class TextIntake {
  readonly #path: string;
  readonly #budget: Budget;
  readonly #limit: number;
  readonly #guard: CsvGuard | null;
  readonly #utf8 = new Utf8Reader();
  #texts: string[] = [];
  #bytes = 0;

  constructor(path: string, budget: Budget, guarded: boolean = path.endsWith(".csv")) {
    this.#path = path;
    this.#budget = budget;
    this.#limit = byteLimit(path);
    this.#guard = guarded ? new CsvGuard(path) : null;
  }

  push(piece: Uint8Array, last: boolean): FaultNote | null {
    const isFirst = this.#bytes === 0;
    this.#bytes += piece.length;
    this.#budget.bytesLeft -= piece.length;
    const fault = this.#tooLarge() ?? (isFirst ? this.#utf16(piece) : null) ?? this.#take(piece, last);
    if (fault !== null) this.#texts = [];
    return fault;
  }

  text(): string {
    return this.#texts.join("");
  }

  #take(piece: Uint8Array, last: boolean): FaultNote | null {
    const text = this.#utf8.push(piece, last);
    if (typeof text !== "string") {
      const { offset, line, byte } = text;
      return {
        code: "file-encoding",
        file: this.#path,
        row: line,
        value: `0x${byte.toString(16).padStart(2, "0")}`,
        expected: `UTF-8; byte ${offset} of the file (line ${line}) is not. Save the file again as UTF-8 (in a spreadsheet: “CSV UTF-8”)`,
      };
    }
    this.#texts.push(text);
    return this.#guard?.push(text) ?? (last ? (this.#guard?.end() ?? null) : null);
  }

  #utf16(piece: Uint8Array): FaultNote | null {
    const [a, b] = piece;
    if (!((a === 0xff && b === 0xfe) || (a === 0xfe && b === 0xff))) return null;
    return {
      code: "file-encoding",
      file: this.#path,
      row: 1,
      expected: "UTF-8; this file is UTF-16. Save it again as UTF-8 (in a spreadsheet: “CSV UTF-8”)",
    };
  }

  #tooLarge(): FaultNote | null {
    if (this.#bytes > this.#limit) {
      return {
        code: "file-too-large",
        file: this.#path,
        expected: `at most ${this.#limit} bytes; the file is not read`,
      };
    }
    if (this.#budget.bytesLeft < 0) {
      return {
        code: "file-too-large",
        file: this.#path,
        expected: `at most ${LIMITS.bookBytes} bytes in all files of a book together; this file is not read`,
      };
    }
    return null;
  }
}
