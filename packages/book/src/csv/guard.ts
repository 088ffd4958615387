import type { FaultNote } from "../fault-log.ts";
import { LIMITS } from "../limits.ts";
import { detectDelimiter, type ForeignDelimiter } from "./delimiter.ts";

const QUOTE = 34;
const LF = 10;
const CR = 13;

/**
 * Watches a CSV text go by in pieces and says as soon as a cell, a row or the table passes its limit, so that
 * reading can stop there. It keeps counters only, and until the heading line is complete that line.
 */
export class CsvGuard {
  readonly #file: string;
  #heading = "";
  #delimiter: ForeignDelimiter | null;
  #row = 1;
  #cells = 1;
  #chars = 0;
  #quoted = false;
  #cellIsQuoted = false;
  #atStart = true;
  #afterCr = false;

  /** The heading line tells the separator unless it is given. */
  constructor(file: string, delimiter: ForeignDelimiter | null = null) {
    this.#file = file;
    this.#delimiter = delimiter;
  }

  /** Takes the next piece of text; returns the fault that stops the reading, or null. */
  push(text: string): FaultNote | null {
    if (this.#delimiter !== null) return this.#scan(text, this.#delimiter);
    this.#heading += text;
    if (!/[\n\r]/.test(this.#heading) && this.#heading.length <= LIMITS.cellChars * 2) return null;
    return this.#start();
  }

  /** To be called after the last piece. */
  end(): FaultNote | null {
    return this.#delimiter === null ? this.#start() : null;
  }

  #start(): FaultNote | null {
    const heading = this.#heading;
    this.#heading = "";
    this.#delimiter = detectDelimiter(heading);
    return this.#scan(heading, this.#delimiter);
  }

  #scan(text: string, delimiter: ForeignDelimiter): FaultNote | null {
    const separator = delimiter.charCodeAt(0);
    for (let i = 0; i < text.length; i++) {
      const c = text.charCodeAt(i);
      const afterCr = this.#afterCr;
      this.#afterCr = c === CR;
      if (c === QUOTE && this.#atStart) {
        this.#quoted = true;
        this.#cellIsQuoted = true;
        this.#atStart = false;
      } else if (c === QUOTE && this.#cellIsQuoted) {
        // An end, or the second of two that stand for one: then the cell goes on.
        if (!this.#quoted) this.#chars++;
        this.#quoted = !this.#quoted;
      } else if (this.#quoted) {
        this.#chars++;
      } else if (c === separator) {
        this.#nextCell();
        if (this.#cells > LIMITS.cellsPerRow) return this.#tooWide();
      } else if (c === LF || c === CR) {
        if (c === LF && afterCr) continue;
        this.#nextRow();
        // The heading is row 1, so that the last allowed row is one further.
        if (this.#row > LIMITS.rowsPerTable + 2) return this.#tooLong();
      } else {
        this.#chars++;
        this.#atStart = false;
      }
      if (this.#chars > LIMITS.cellChars) return this.#tooBig();
    }
    return null;
  }

  #nextCell(): void {
    this.#cells++;
    this.#chars = 0;
    this.#cellIsQuoted = false;
    this.#atStart = true;
  }

  #nextRow(): void {
    this.#row++;
    this.#cells = 0;
    this.#nextCell();
  }

  #tooWide(): FaultNote {
    return {
      code: "row-ragged",
      file: this.#file,
      row: this.#row,
      expected: `at most ${LIMITS.cellsPerRow} cells in a row; the file is not read`,
    };
  }

  #tooLong(): FaultNote {
    return {
      code: "rows-too-many",
      file: this.#file,
      row: LIMITS.rowsPerTable + 2,
      expected: `at most ${LIMITS.rowsPerTable} rows in a table; the file is not read`,
    };
  }

  #tooBig(): FaultNote {
    return {
      code: "cell-too-long",
      file: this.#file,
      row: this.#row,
      column: `cell ${this.#cells}`,
      expected: `at most ${LIMITS.cellChars} characters in a cell; a quote that is not closed would explain it. The file is not read`,
    };
  }
}
