import type { LineResult, SizedBranch } from "@pinwright/engine";
import { roundUpTo } from "@pinwright/kernel";
import { type Both, bothOf, type EndPlace, endPlace, gaugeOf, printedNo, type WireIn } from "./wires-at.ts";

/** A stretch of a wire's way, in the order from its one end to the other. */
interface WayStep {
  readonly branchId: string;
  readonly kind: SizedBranch["kind"];
  /** Lane, crossing or landing that it is named after. */
  readonly name: string;
  /** As it lies in the machine. */
  readonly routeMm: number;
  /** Dressing of the wires at a landing. */
  readonly dressingMm: number;
  readonly serviceLoopMm: number;
  /** What rounding up to the shop's step adds. */
  readonly roundingMm: number;
  readonly lengthMm: number;
  /** Wires that lie with it there. */
  readonly together: number;
}

/** One wire with its whole way and what its length is made of. */
export interface WireWay {
  readonly id: string;
  readonly printed: string;
  readonly number: number;
  readonly harness: { readonly id: string; readonly number: number; readonly label: Both };
  readonly netId: string;
  readonly net: Both;
  readonly netClass: string;
  readonly colour: string;
  readonly gauge: string;
  readonly wireType: Both;
  readonly wireTypeId: string;
  readonly cableId: string | null;
  readonly a: EndPlace;
  readonly b: EndPlace;
  readonly crimpedFirst: "a" | "b" | "both" | "none";
  readonly steps: readonly WayStep[];
  readonly finishedMm: number;
  readonly tolerancePlusMm: number;
  readonly stripAMm: number;
  readonly stripBMm: number;
  readonly trimMm: number;
  /** What rounding up to the cutting step adds. */
  readonly cutRoundingMm: number;
  readonly cutMm: number;
}

const rounded = (mm: number): number => Math.round(mm * 1000) / 1000;

function stepOf(line: LineResult, { harness }: WireIn, branch: SizedBranch): WayStep {
  const { length_step_mm, dressing_mm, service_loop_mm } = line.machine.shop.numbers;
  const isTail = branch.kind === "tail";
  const name = isTail ? branch.id.slice("tail:".length) : branch.id;
  const hasLoop = isTail && line.machine.landings.get(name)?.connector != null;
  const dressingMm = isTail ? dressing_mm : 0;
  const serviceLoopMm = hasLoop ? (harness.harness.service_loop_mm ?? service_loop_mm) : 0;
  const rawMm = branch.routeMm + dressingMm + serviceLoopMm;
  return {
    branchId: branch.id,
    kind: branch.kind,
    name,
    routeMm: rounded(branch.routeMm),
    dressingMm,
    serviceLoopMm,
    roundingMm: rounded(roundUpTo(rawMm, length_step_mm) - rawMm),
    lengthMm: branch.lengthMm,
    together: branch.wireIds.length,
  };
}

/** The way of a wire and the sum that its cut length is. */
export function wireWay(line: LineResult, found: WireIn): WireWay {
  const { wire, harness } = found;
  const { machine } = line;
  const branches = new Map(harness.branches.map((branch) => [branch.id, branch]));
  const strip = (end: string): number =>
    machine.points.get(end)?.family.strip_mm ?? machine.shop.numbers.splice_strip_mm;
  const stripAMm = strip(wire.a);
  const stripBMm = strip(wire.b);
  const trimMm = machine.shop.numbers.trim_mm;
  return {
    id: wire.id,
    printed: printedNo(harness, wire),
    number: wire.number,
    harness: { id: harness.harness.id, number: harness.harness.number, label: harness.labels },
    netId: wire.netId,
    net: bothOf(machine.nets.get(wire.netId)),
    netClass: wire.netClass,
    colour: wire.colour,
    gauge: gaugeOf(wire.wireType),
    wireType: bothOf(wire.wireType),
    wireTypeId: wire.wireType.id,
    cableId: wire.cableId,
    a: endPlace(line, wire.a),
    b: endPlace(line, wire.b),
    crimpedFirst: wire.crimpedFirst,
    steps: wire.path.flatMap((id) => {
      const branch = branches.get(id);
      return branch === undefined ? [] : [stepOf(line, found, branch)];
    }),
    finishedMm: wire.finishedMm,
    tolerancePlusMm: wire.tolerancePlusMm,
    stripAMm,
    stripBMm,
    trimMm,
    cutRoundingMm: rounded(wire.cutMm - wire.finishedMm - stripAMm - stripBMm - trimMm),
    cutMm: wire.cutMm,
  };
}
