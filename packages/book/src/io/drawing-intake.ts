import { drawingProblem } from "../drawing/drawing-file.ts";
import type { FaultNote } from "../fault-log.ts";
import { LIMITS } from "../limits.ts";

/** Files and bytes that the drawings of one book may still have. */
export interface DrawingBudget {
  filesLeft: number;
  bytesLeft: number;
}

export const newDrawingBudget = (): DrawingBudget => ({
  filesLeft: LIMITS.drawingFiles,
  bytesLeft: LIMITS.drawingsBytes,
});

/**
 * Takes a drawing piece by piece and watches its limits. Keeps only what is within them; as soon as `push` returns a
 * fault, nothing more need be read.
 */
export class DrawingIntake {
  readonly #path: string;
  readonly #name: string;
  readonly #budget: DrawingBudget;
  #pieces: Uint8Array[] = [];
  #length = 0;

  /** @param path path in the folder of the book, as faults name it */
  constructor(path: string, name: string, budget: DrawingBudget) {
    this.#path = path;
    this.#name = name;
    this.#budget = budget;
    budget.filesLeft--;
  }

  push(piece: Uint8Array, last: boolean): FaultNote | null {
    this.#length += piece.length;
    this.#budget.bytesLeft -= piece.length;
    const fault = this.#tooLarge();
    if (fault !== null) {
      this.#pieces = [];
      return fault;
    }
    // Whoever reads may use the memory of a piece again.
    this.#pieces.push(piece.slice());
    const expected = last ? drawingProblem(this.#name, this.bytes()) : null;
    if (expected === null) return null;
    this.#pieces = [];
    return { code: "file-unreadable", file: this.#path, expected: `${expected}; this file is not read` };
  }

  bytes(): Uint8Array {
    const [first] = this.#pieces;
    if (first !== undefined && this.#pieces.length === 1) return first;
    const all = new Uint8Array(this.#pieces.reduce((sum, piece) => sum + piece.length, 0));
    let at = 0;
    for (const piece of this.#pieces) {
      all.set(piece, at);
      at += piece.length;
    }
    this.#pieces = [all];
    return all;
  }

  #tooLarge(): FaultNote | null {
    const { filesLeft, bytesLeft } = this.#budget;
    const expected =
      filesLeft < 0
        ? `at most ${LIMITS.drawingFiles} drawings`
        : this.#length > LIMITS.drawingBytes
          ? `at most ${LIMITS.drawingBytes} bytes`
          : bytesLeft < 0
            ? `at most ${LIMITS.drawingsBytes} bytes in all drawings of a book together`
            : null;
    return expected === null
      ? null
      : { code: "file-too-large", file: this.#path, expected: `${expected}; this file is not read` };
  }
}
