import { deepEqual, Query } from "@pinwright/kernel";
import type { Finding, Machine } from "../model/index.ts";
import { checkDrawings, checkFiles, checkSamples } from "./checks.ts";
import type { FileFacts } from "./drawings.ts";

/**
 * What the book's own tables say of drawings and dimensions, with a memory. It reads neither files nor the shop:
 * `outsideFindings` adds what these tell.
 */
export class OutsideSolver {
  readonly #findings = new Query<readonly Finding[]>(deepEqual);

  solve(machine: Machine): { readonly findings: readonly Finding[] } {
    const { parts, drawings, dimensions } = machine.book.tables;
    return {
      findings: this.#findings.ask("all", [parts, drawings, dimensions], () =>
        checkDrawings(parts, drawings, dimensions),
      ),
    };
  }

  sweep(): void {
    this.#findings.sweep();
  }

  /** How often findings had to be computed so far, for tests of growth. */
  get computed(): number {
    return this.#findings.computed;
  }
}

/**
 * What files and samples tell of what is made outside, beyond what `OutsideSolver` finds in the book's tables.
 * @param files files that are at hand; null: not known, so that nothing is said of them
 */
export const outsideFindings = (machine: Machine, files: FileFacts | null): readonly Finding[] => [
  ...(files === null ? [] : checkFiles(machine.book.tables.drawings, files)),
  ...checkSamples(machine),
];
