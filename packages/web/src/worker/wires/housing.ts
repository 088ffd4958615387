import { type Landing, type LineResult, wireEntryCell } from "@pinwright/engine";
import { type Both, bothOf, printedNo, wiresAt } from "./wires-at.ts";

/** A wire in a cavity or on a terminal. */
interface CavityWire {
  readonly id: string;
  readonly number: number;
  readonly printed: string;
  readonly colour: string;
  readonly harnessId: string;
  /** Point or splice at its other end, and the landing there. */
  readonly otherEnd: string;
}

interface Cavity {
  readonly pointId: string;
  /** Cavity number, or the name of a terminal. */
  readonly name: string;
  /** What it carries by its type. */
  readonly use: string;
  readonly netId: string | null;
  readonly net: Both;
  readonly wires: readonly CavityWire[];
  readonly state: "wired" | "key" | "spare" | "empty";
  readonly column: number;
  readonly row: number;
}

/** A housing from the side where the wires enter, or the bare terminals of a device. */
export interface Housing {
  readonly landingId: string;
  readonly itemId: string;
  readonly item: Both;
  /** What the connector is for; blank for terminals. */
  readonly label: string;
  readonly isHousing: boolean;
  readonly half: "a" | "b" | null;
  readonly ways: number;
  readonly columns: number;
  readonly rows: number;
  readonly housingPartId: string | null;
  readonly family: Both;
  readonly stripMm: number | null;
  readonly tool: string;
  readonly cavities: readonly Cavity[];
}

/** Ends of the book by point: which net a point belongs to, wired or not. */
const netsByPoint = new WeakMap<LineResult["machine"]["ends"], ReadonlyMap<string, string>>();

export function netOfPoint({ machine }: LineResult, pointId: string): string | null {
  const known =
    netsByPoint.get(machine.ends) ?? new Map(machine.ends.map((end) => [end.point, end.net] as const));
  netsByPoint.set(machine.ends, known);
  return known.get(pointId) ?? null;
}

/** How a landing is loaded by all harnesses that reach it. */
export function housingOf(line: LineResult, landing: Landing): Housing {
  const { machine } = line;
  const { connector } = landing;
  const item = machine.items.get(landing.itemId);
  const family = machine.points.get(landing.pointIds[0] ?? "")?.family;
  const keys = line.keys.get(landing.id) ?? landing.keyPins;
  const cavities = landing.pointIds.flatMap((pointId, i): readonly Cavity[] => {
    const point = machine.points.get(pointId);
    if (point === undefined) return [];
    const wires = wiresAt(line, pointId);
    const netId = netOfPoint(line, pointId);
    const isKey = point.pin !== null && keys.includes(point.pin);
    const cell = point.pin === null ? { column: i, row: 0 } : wireEntryCell(machine, landing, point.pin);
    return [
      {
        pointId,
        name: point.pin === null ? point.localId : String(point.pin),
        use: point.label,
        netId,
        net: bothOf(netId === null ? undefined : machine.nets.get(netId)),
        wires: wires.map(({ wire, harness }) => ({
          id: wire.id,
          number: wire.number,
          printed: printedNo(harness, wire),
          colour: wire.colour,
          harnessId: harness.harness.id,
          otherEnd: wire.a === pointId ? wire.b : wire.a,
        })),
        state: wires.length > 0 ? "wired" : isKey ? "key" : point.use === "spare" ? "spare" : "empty",
        ...cell,
      },
    ];
  });
  return {
    landingId: landing.id,
    itemId: landing.itemId,
    item: item?.labels ?? { en: "", zh: "" },
    label: connector?.label ?? "",
    isHousing: connector !== null,
    half: landing.half,
    ways: connector?.ways ?? cavities.length,
    columns: connector === null ? cavities.length : Math.ceil(connector.ways / connector.rows),
    rows: connector?.rows ?? 1,
    housingPartId:
      connector === null ? null : landing.half === "b" ? connector.mate_part : connector.housing_part,
    family: bothOf(family),
    stripMm: family?.strip_mm ?? null,
    tool: family?.tool ?? "",
    cavities,
  };
}
