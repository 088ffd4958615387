import type { HarnessResult, LineResult, Optimum } from "@pinwright/engine";
import { textTable } from "./text-table.ts";

const percent = (gap: number): string => `${(gap * 100).toFixed(1)} %`;

/** `12.4 ≥ 11.9 (4.2 %)`: the value, what nothing can beat, and how far apart they are. */
const optimumText = ({ value, lowerBound, gap }: Optimum, digits: number): string =>
  `${value.toFixed(digits)} ≥ ${lowerBound.toFixed(digits)} (${percent(gap)})`;

const thickest = (harness: HarnessResult): string => {
  const bundle = harness.branches.map((branch) => branch.bundle).sort((a, b) => b.laidMm - a.laidMm)[0];
  if (bundle === undefined) return "-";
  return `${bundle.wires}: ${bundle.packedMm.toFixed(1)} ≥ ${bundle.lowerBoundMm.toFixed(1)}, laid ${bundle.laidMm.toFixed(1)}, rule ${bundle.ruleMm.toFixed(1)}`;
};

const HEADINGS = [
  "harness",
  "wires",
  "min",
  "m",
  "work, min ≥ bound (gap)",
  "alike + reels ≥ bound (gap)",
  "thickest bundle, wires: packed ≥ bound, laid, rule of thumb, mm",
  "pinboard, mm",
] as const;

/** Every harness with its figures, each optimum beside its bound, as aligned columns. */
export function harnessTable(result: LineResult): string {
  const rows = [...result.harnesses.values()].map((harness) => [
    `${harness.harness.number} ${harness.harness.id}`,
    String(harness.wires.length),
    harness.route.work.minutes.toFixed(1),
    harness.route.work.metres.toFixed(1),
    optimumText(harness.route.work.total, 1),
    optimumText(harness.colours, 0),
    thickest(harness),
    `${Math.round(harness.pinboard.widthMm)} × ${Math.round(harness.pinboard.heightMm)} ${harness.pinboard.kind}`,
  ]);
  return textTable([HEADINGS, ...rows]);
}
