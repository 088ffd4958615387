import { compareText } from "@pinwright/kernel";
import type { Item, Languages, Machine, PlacedElement } from "../../model/index.ts";
import { loadVolts } from "./load.ts";
import type { Control } from "./trace.ts";
import { type Traced, traces } from "./traces.ts";

/** One point of a board that the game program uses for a device: a row of the map. */
export interface ProgramPoint {
  readonly deviceId: string;
  readonly labels: Languages;
  /** Service number; null where there is none, as in a mechanism. */
  readonly number: number | null;
  /** Placed element of the device: a flipper coil has two windings. */
  readonly elementId: string;
  readonly boardId: string;
  /** Address that is set on the board; null when it has none. */
  readonly address: number | null;
  /** Whether the bus ends at the board. */
  readonly terminated: boolean;
  /** Connector and cavity on the board. */
  readonly connector: string;
  readonly pin: number | null;
  readonly pointId: string;
  readonly kind: "driver" | "input" | "both";
  /** Name that the board gives the point: the control of its element, or of both that pull it down and up. */
  readonly control: string;
  /** `low`: the point pulls down, or reads by being pulled down; `high`: up; `both`: either, as in a bridge. */
  readonly polarity: "low" | "high" | "both";
  /** Of a contact: whether it is closed while nothing acts on it. Null for a load. */
  readonly closedAtRest: boolean | null;
  /** What moves a contact or a knob, and the winding's or lamp's own name. */
  readonly acts: string;
  readonly pulseMs: number | null;
  readonly repeatMs: number | null;
  readonly holdMs: number | null;
  readonly holdDutyPct: number | null;
  /** Time after which the board switches it off by itself; null: never. */
  readonly timeoutMs: number | null;
  /** Volts of the supply that feeds it; null when the nets do not say. */
  readonly supplyV: number | null;
  /** Boards between the point and the device, from the device on; empty when the point is wired to it. */
  readonly through: readonly string[];
}

/** A point that is reached, with the boards that pass its command on. */
interface Reached {
  readonly control: Control;
  readonly through: readonly string[];
}

/**
 * The map for the game program: for every device that a program drives or reads, which point of which board does it
 * and how it is to be used. Sorted by device, element and point in code-point order.
 *
 * A driver whose `control` names a point of its own board follows the input at that point; the map then tells the
 * point that drives this input, and the board between. A switch in a matrix has two points, its column's driver and
 * its row's input; a motor in a bridge has its four drivers.
 */
export function programMap(machine: Machine): readonly ProgramPoint[] {
  const found = traces(machine);
  const inputs = inputsByPoint(machine);
  const activity = new Map(machine.book.tables.activity.map((row) => [row.item, row]));
  const rows: ProgramPoint[] = [];
  for (const traced of found.values()) {
    const item = machine.items.get(traced.element.itemId);
    if (item === undefined || item.kind === "fastener") continue;
    const used = activity.get(item.id);
    for (const [pointId, reached] of pointsOf(machine, traced, found, inputs)) {
      const { control, through } = reached[0];
      const board = machine.items.get(control.element.itemId);
      const point = machine.points.get(pointId);
      if (board === undefined || point === undefined) continue;
      rows.push({
        deviceId: item.id,
        labels: item.labels,
        number: item.kind === "device" ? item.number : null,
        elementId: traced.element.id,
        boardId: board.id,
        address: addressOf(board),
        terminated: machine.book.tables.boards.some((b) => b.id === board.id && b.terminated),
        connector: machine.landings.get(point.landingId)?.connector?.name ?? "",
        pin: point.pin,
        pointId,
        kind: kindOf(reached.map((r) => r.control)),
        control: reached.map((r) => r.control.element.row.control ?? "").join(" / "),
        polarity: polarityOf(reached.map((r) => r.control)),
        closedAtRest: traced.element.row.kind === "contact" ? traced.element.row.normally === "closed" : null,
        acts: traced.element.row.control ?? "",
        pulseMs: used?.pulse_ms ?? null,
        repeatMs: used?.repeat_ms ?? null,
        holdMs: used?.hold_ms ?? null,
        holdDutyPct: used?.hold_duty_pct ?? null,
        timeoutMs: used?.timeout_ms ?? null,
        supplyV: loadVolts(machine, traced.element),
        through,
      });
    }
  }
  return rows.sort(
    (a, b) =>
      compareText(a.deviceId, b.deviceId) ||
      compareText(a.elementId, b.elementId) ||
      compareText(a.pointId, b.pointId),
  );
}

const addressOf = (item: Item): number | null => (item.kind === "board" ? item.address : null);

function kindOf(controls: readonly Control[]): ProgramPoint["kind"] {
  const kinds = new Set(controls.map((control) => control.element.row.kind));
  if (kinds.size > 1) return "both";
  return kinds.has("driver") ? "driver" : "input";
}

function polarityOf(controls: readonly Control[]): ProgramPoint["polarity"] {
  const ends = new Set(controls.map((control) => control.end));
  if (ends.size > 1) return "both";
  return ends.has("from") ? "low" : "high";
}

/** Inputs of boards by the board and the name that a driver of the same board can follow it by. */
function inputsByPoint(machine: Machine): ReadonlyMap<string, PlacedElement> {
  const inputs = new Map<string, PlacedElement>();
  for (const element of machine.elements)
    if (element.row.kind === "input") inputs.set(`${element.itemId}:${element.row.from}`, element);
  return inputs;
}

/** The points of a device's element, each with what was found there. */
function pointsOf(
  machine: Machine,
  traced: Traced,
  found: ReadonlyMap<string, Traced>,
  inputs: ReadonlyMap<string, PlacedElement>,
): ReadonlyMap<string, readonly [Reached, ...Reached[]]> {
  const { element } = traced;
  const points = new Map<string, [Reached, ...Reached[]]>();
  const isSignal = element.row.kind === "driver" || element.row.kind === "input";
  for (const control of traced.controls) {
    if (control.element.itemId === element.itemId) continue;
    // Boards that drive or read each other are in the map only where one that the program can address reads.
    if (isSignal && !readsOtherBoard(machine, element, control)) continue;
    for (const reached of followed({ control, through: [] }, found, inputs)) {
      const own = points.get(reached.control.pointId);
      if (own === undefined) points.set(reached.control.pointId, [reached]);
      else own.push(reached);
    }
  }
  return points;
}

const readsOtherBoard = (machine: Machine, element: PlacedElement, { element: by }: Control): boolean => {
  const board = machine.items.get(by.itemId);
  return (
    element.row.kind === "driver" &&
    by.row.kind === "input" &&
    board !== undefined &&
    addressOf(board) !== null
  );
};

/** The points that a control follows, or itself when it follows none. */
function followed(
  reached: Reached,
  found: ReadonlyMap<string, Traced>,
  inputs: ReadonlyMap<string, PlacedElement>,
): readonly Reached[] {
  const { element } = reached.control;
  const input =
    element.row.kind === "driver" ? inputs.get(`${element.itemId}:${element.row.control ?? ""}`) : undefined;
  if (input === undefined || reached.through.includes(element.itemId)) return [reached];
  const drivers = (found.get(input.id)?.controls ?? []).filter(
    ({ element: by }) => by.row.kind === "driver" && by.itemId !== element.itemId,
  );
  if (drivers.length === 0) return [reached];
  const through = [...reached.through, element.itemId];
  return drivers.flatMap((control) => followed({ control, through }, found, inputs));
}

/**
 * The map as text that is the same whenever the map is: what its version is the hash of. JSON with the keys in one
 * order and no spaces, a point a line.
 */
export const programMapText = (points: readonly ProgramPoint[]): string =>
  points
    .map((point) => `${JSON.stringify(Object.entries(point).sort(([a], [b]) => compareText(a, b)))}\n`)
    .join("");
