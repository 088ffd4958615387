import type { HarnessResult, Machine } from "../model/index.ts";
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
  readonly tolerancePlusMm: number;
  readonly cableId: string | null;
  readonly core: number | null;
}

/** Every wire of a harness from end to end, in the order of their numbers. */
export function fromToList(machine: Machine, harness: HarnessResult): readonly FromToRow[] {
  return byNumber(harness).map((wire) => ({
    wireId: wire.id,
    number: wire.number,
    netId: wire.netId,
    wireTypeId: wire.wireType.id,
    awg: wire.wireType.awg,
    areaMm2: wire.wireType.area_mm2,
    colour: wire.colour,
    from: listEnd(machine, wire, "a"),
    to: listEnd(machine, wire, "b"),
    finishedMm: wire.finishedMm,
    tolerancePlusMm: wire.tolerancePlusMm,
    cableId: wire.cableId,
    core: wire.core,
  }));
}
