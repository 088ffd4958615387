import type { HarnessResult } from "../model/index.ts";
import { byNumber } from "./ends.ts";

export interface WireLabel {
  readonly wireId: string;
  /** End of the wire that the label is wrapped round. */
  readonly end: "a" | "b";
  /** `12-34`: harness and wire number. */
  readonly code: string;
  /** Diameter of the wire, mm: what one turn round it shows. */
  readonly odMm: number;
  /** Where this end goes, and where the other one does. */
  readonly here: string;
  readonly there: string;
}

/** Two labels for each wire, one for each end, in the order of the wires' numbers. */
export function wireLabels(harness: HarnessResult): readonly WireLabel[] {
  return byNumber(harness).flatMap((wire) => {
    const code = `${harness.harness.number}-${wire.number}`;
    const label = (end: "a" | "b"): WireLabel => ({
      wireId: wire.id,
      end,
      code,
      odMm: wire.wireType.od_mm,
      here: shortEnd(wire[end]),
      there: shortEnd(wire[end === "a" ? "b" : "a"]),
    });
    return [label("a"), label("b")];
  });
}

/** `splice:gnd:play:2` reads `splice gnd 2`; a point keeps its id. */
function shortEnd(id: string): string {
  if (!id.startsWith("splice:")) return id;
  const parts = id.split(":");
  return `splice ${parts[1] ?? ""} ${parts.at(-1) ?? ""}`;
}
