import type { Finding } from "@pinwright/engine";
import { view } from "./view.ts";

/** The book in figures, for the frame around every section. */
export interface Summary {
  readonly label: string;
  readonly labelZh: string;
  readonly revision: string;
  readonly errors: number;
  readonly warnings: number;
  readonly notes: number;
  readonly accepted: number;
  readonly harnesses: number;
  readonly wires: number;
  readonly swaps: number;
}

const open = (findings: readonly Finding[], severity: Finding["severity"]): number =>
  findings.filter((finding) => finding.severity === severity && finding.accepted === null).length;

export const summary = view<null, Summary>({
  uses: ({ book, line }) => [book.machine, line.findings, line.harnesses.size],
  entries: ({ book: { machine }, line }) =>
    new Map([
      [
        "",
        {
          label: machine.label,
          labelZh: machine.label_zh,
          revision: machine.revision,
          errors: open(line.findings, "error"),
          warnings: open(line.findings, "warning"),
          notes: open(line.findings, "note"),
          accepted: line.findings.filter((finding) => finding.accepted !== null).length,
          harnesses: line.harnesses.size,
          wires: [...line.harnesses.values()].reduce((sum, harness) => sum + harness.wires.length, 0),
          swaps: line.swaps.value,
        },
      ],
    ]),
});
