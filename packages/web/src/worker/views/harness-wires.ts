import {
  fromToList,
  type HarnessResult,
  type LineResult,
  type ListEnd,
  type SizedWire,
} from "@pinwright/engine";
import { type Both, bothOf, type EndPlace, endPlace, gaugeOf, printedNo } from "../wires/wires-at.ts";
import { view } from "./view.ts";

/** An end of a wire as the lists tell it. */
interface WireEnd extends EndPlace {
  readonly made: ListEnd["made"];
  readonly stripMm: number;
  /** Crimped at the cutting bench, before the wire is laid. */
  readonly crimpedFirst: boolean;
  readonly contactPartId: string | null;
}

/** A wire of a harness: from-to list and cut list in one. */
export interface WireLine {
  readonly id: string;
  readonly number: number;
  readonly printed: string;
  readonly netId: string;
  readonly net: Both;
  readonly netClass: string;
  readonly colour: string;
  readonly wireTypeId: string;
  readonly gauge: string;
  readonly areaMm2: number;
  readonly from: WireEnd;
  readonly to: WireEnd;
  readonly finishedMm: number;
  readonly tolerancePlusMm: number;
  readonly cutMm: number;
  readonly cableId: string | null;
}

const endOf = (line: LineResult, end: ListEnd): WireEnd => ({
  ...endPlace(line, end.id),
  made: end.made,
  stripMm: end.stripMm,
  crimpedFirst: end.crimpedFirst,
  contactPartId: end.contactPartId,
});

function linesOf(line: LineResult, harness: HarnessResult): readonly WireLine[] {
  const byId = new Map<string, SizedWire>(harness.wires.map((wire) => [wire.id, wire]));
  return fromToList(line.machine, harness).flatMap((row): readonly WireLine[] => {
    const wire = byId.get(row.wireId);
    if (wire === undefined) return [];
    return [
      {
        id: wire.id,
        number: wire.number,
        printed: printedNo(harness, wire),
        netId: wire.netId,
        net: bothOf(line.machine.nets.get(wire.netId)),
        netClass: wire.netClass,
        colour: wire.colour,
        wireTypeId: wire.wireType.id,
        gauge: gaugeOf(wire.wireType),
        areaMm2: wire.wireType.area_mm2,
        from: endOf(line, row.from),
        to: endOf(line, row.to),
        finishedMm: wire.finishedMm,
        tolerancePlusMm: row.tolerancePlusMm,
        cutMm: wire.cutMm,
        cableId: wire.cableId,
      },
    ];
  });
}

/** The wires of a harness in the order of their numbers, by wire id. */
export const harnessWires = view<string, WireLine>({
  uses: ({ line }, id) => [line.harnesses.get(id), line.machine.items, line.machine.nets],
  entries: ({ line }, id) => {
    const harness = line.harnesses.get(id);
    return new Map(harness === undefined ? [] : linesOf(line, harness).map((one) => [one.id, one]));
  },
  restsInPreview: true,
});
