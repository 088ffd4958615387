import type { HarnessResult, Machine, SizedWire } from "../model/index.ts";
import { byNumber, type ListEnd, listEnd } from "./ends.ts";

export interface FromToRow {
  readonly wireId: string;
  readonly number: number;
  readonly netId: string;
  readonly wireTypeId: string;
  readonly awg: number | null;
  readonly areaMm2: number;
  /** IEC 60757 code. */
  readonly colour: string;
  readonly from: ListEnd;
  readonly to: ListEnd;
  readonly finishedMm: number;
  /** Allowed excess of the finished length, mm: never more than the cut leaves. */
  readonly tolerancePlusMm: number;
  readonly cableId: string | null;
  readonly core: number | null;
}

/** How much longer than its finished length a wire can become: what its cut leaves beyond both bare ends, mm. */
function spareMm(wire: SizedWire, from: ListEnd, to: ListEnd): number {
  return Math.max(0, wire.cutMm - wire.finishedMm - from.stripMm - to.stripMm);
}

/** Every wire of a harness from end to end, in the order of their numbers. */
export function fromToList(machine: Machine, harness: HarnessResult): readonly FromToRow[] {
  return byNumber(harness).map((wire) => {
    const from = listEnd(machine, wire, "a");
    const to = listEnd(machine, wire, "b");
    return {
      wireId: wire.id,
      number: wire.number,
      netId: wire.netId,
      wireTypeId: wire.wireType.id,
      awg: wire.wireType.awg,
      areaMm2: wire.wireType.area_mm2,
      colour: wire.colour,
      from,
      to,
      finishedMm: wire.finishedMm,
      tolerancePlusMm: Math.min(wire.tolerancePlusMm, spareMm(wire, from, to)),
      cableId: wire.cableId,
      core: wire.core,
    };
  });
}
