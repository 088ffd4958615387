import type { Finding, HarnessResult } from "@pinwright/engine";
import { findingsOf } from "../wires/findings-of.ts";
import type { Both } from "../wires/wires-at.ts";
import { view } from "./view.ts";

/** A harness in the list of harnesses. */
export interface HarnessLine {
  readonly id: string;
  readonly number: number;
  readonly label: Both;
  readonly wires: number;
  /** Wire as cut, m. */
  readonly metres: number;
  /** Minutes on the pinboard by the shop's times. */
  readonly minutes: number;
  readonly errors: number;
  readonly warnings: number;
  readonly notes: number;
}

const open = (findings: readonly Finding[], severity: Finding["severity"]): number =>
  findings.filter((finding) => finding.severity === severity && finding.accepted === null).length;

export function harnessLine(harness: HarnessResult, all: readonly Finding[]): HarnessLine {
  const findings = findingsOf(all, harness);
  return {
    id: harness.harness.id,
    number: harness.harness.number,
    label: harness.labels,
    wires: harness.wires.length,
    metres: harness.wires.reduce((sum, wire) => sum + wire.cutMm, 0) / 1000,
    minutes: harness.route.work.minutes,
    errors: open(findings, "error"),
    warnings: open(findings, "warning"),
    notes: open(findings, "note"),
  };
}

/** Every harness with its figures, in the order of their numbers. */
export const harnesses = view<null, HarnessLine>({
  uses: ({ line }) => [line.findings, ...line.harnesses.values()],
  entries: ({ line }) =>
    new Map([...line.harnesses].map(([id, harness]) => [id, harnessLine(harness, line.findings)])),
  restsInPreview: true,
});
