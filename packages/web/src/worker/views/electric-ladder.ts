import {
  type LadderNode,
  type LadderPart,
  type LineResult,
  type LoadVolts,
  loadLadders,
  type Spread,
} from "@pinwright/engine";
import {
  elementOf,
  type LoadKind,
  loadKindOf,
  type Named,
  namedElement,
  namedSupply,
} from "../electric/naming.ts";
import { type EndPlace, endPlace, findWire, printedNo } from "../wires/wires-at.ts";
import { view } from "./view.ts";

/** A part that is passed, with its name and what it drops at its largest current. */
interface PassedPart {
  readonly kind: LadderPart["kind"];
  readonly id: string;
  /** `4-6` of a wire; of a fuse its row. */
  readonly name: string;
  readonly dropV: Spread | null;
}

/** A load at its rung. */
interface RungLoad extends Named {
  readonly kind: LoadKind;
  readonly volts: LoadVolts;
}

/** A point of a ladder with everything that is said at it. */
export interface LadderPoint extends Omit<LadderNode, "parts" | "loadIds"> {
  readonly place: EndPlace;
  readonly parts: readonly PassedPart[];
  readonly loads: readonly RungLoad[];
}

/** The ladder of one supply, or of the part of it that passes a net. */
export interface Ladder {
  readonly supply: Named;
  readonly out: readonly LadderPoint[];
  readonly back: readonly LadderPoint[];
}

function partName(line: LineResult, { kind, id }: LadderPart): string {
  if (kind === "wire") {
    const found = findWire(line, id);
    return found === null ? id : printedNo(found.harness, found.wire);
  }
  if (kind !== "fuse") return id;
  const element = elementOf(line, id);
  const row = line.machine.book.tables.fuses.find(
    ({ from, to }) =>
      (from === element?.fromPointId && to === element?.toPointId) ||
      (to === element?.fromPointId && from === element?.toPointId),
  );
  return row?.id ?? id;
}

function pointOf(line: LineResult, { parts, loadIds, ...node }: LadderNode): LadderPoint {
  return {
    ...node,
    place: endPlace(line, node.pointId ?? node.nodeId),
    parts: parts.map((part) => ({
      kind: part.kind,
      id: part.id,
      name: partName(line, part),
      dropV: part.carried?.dropV ?? null,
    })),
    loads: loadIds.flatMap((loadId): readonly RungLoad[] => {
      const volts = line.electric.loads.get(loadId);
      if (volts === undefined) return [];
      return [{ ...namedElement(line, loadId), kind: loadKindOf(line, loadId), volts }];
    }),
  };
}

/** Ladders of a supply or net, by supply; nothing when no load hangs on it. */
export const electricLadder = view<string, Ladder>({
  uses: ({ line }) => [line.electric, line.machine.items, line.machine.nets, ...line.harnesses.values()],
  entries: ({ line }, id) => {
    if (id === "") return new Map();
    const subject = line.machine.nets.has(id) ? { netId: id } : { supplyId: id };
    const ladders = loadLadders(line.machine, line.harnesses, line.electric, subject);
    return new Map(
      ladders.map(({ supplyId, out, back }) => [
        supplyId,
        {
          supply: namedSupply(line, supplyId),
          out: out.map((node) => pointOf(line, node)),
          back: back.map((node) => pointOf(line, node)),
        },
      ]),
    );
  },
  restsInPreview: true,
});
