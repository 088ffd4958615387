import type { LineResult } from "@pinwright/engine";

/** Whether two results of the line say the same, told by identity: what did not change is the same object. */
const sameResults = (a: LineResult, b: LineResult): boolean =>
  a.findings === b.findings &&
  a.harnesses.size === b.harnesses.size &&
  [...a.harnesses].every(([id, result]) => b.harnesses.get(id) === result);

/** Remembers what the line said before, so that a screen can tell what a change did. */
export class Bases {
  #rest: LineResult | null = null;
  #before: LineResult | null = null;

  /**
   * The line that a newer one is to be compared with: as it was before the drag, or before the last change that
   * changed something.
   */
  baseOf(line: LineResult, preview: boolean): LineResult {
    if (preview) return this.#rest ?? line;
    if (this.#rest !== null && !sameResults(this.#rest, line)) this.#before = this.#rest;
    this.#rest = line;
    return this.#before ?? line;
  }
}
