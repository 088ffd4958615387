import { compareText } from "@pinwright/kernel";
import { type Traced, traces } from "../../electric/index.ts";
import type { Machine } from "../../model/index.ts";
import type { ServiceNetwork } from "./network.ts";

/** Something that a person can see working or not: a lamp, coil, motor or speaker that is driven, or a switch that is read. */
export interface MachineFunction {
  /** Id of the element of the device. */
  readonly id: string;
  readonly itemId: string;
  readonly kind: "driven" | "read";
  /** Joint of the element itself. */
  readonly joint: number;
  /** Joints of the drivers and inputs that it has to do with. */
  readonly controls: readonly number[];
  /** Node of each control on the side that leads to the element. */
  readonly signals: readonly number[];
  /** Joint of the element whose light falls on it; null: none. */
  readonly light: number | null;
  /** Joints that its current may also pass: diodes and larger resistors in series. */
  readonly between: readonly number[];
  /** Boards whose drivers or inputs these are, and those that pass their command on. */
  readonly boardIds: readonly string[];
  /** Pairs of nodes that a command passes between boards. */
  readonly commands: readonly (readonly [number, number])[];
}

const DRIVEN: ReadonlySet<string> = new Set(["coil", "led", "motor", "speaker", "load"]);

/**
 * Everything that a program drives or reads and that a person can see: of devices and of those in mechanisms, sorted by
 * item and element in code-point order. What no driver switches and no input reads is none.
 */
export function machineFunctions(machine: Machine, network: ServiceNetwork): readonly MachineFunction[] {
  const traced = traces(machine);
  const lights = lightsOf(machine, network);
  const found: MachineFunction[] = [];
  for (const one of traced.values()) {
    const { kind } = one.element.row;
    const item = machine.items.get(one.element.itemId);
    if (item === undefined || item.kind !== "device" || (!DRIVEN.has(kind) && kind !== "contact")) continue;
    const made = functionOf(network, traced, one, kind === "contact" ? "read" : "driven");
    if (made !== null) found.push({ ...made, light: lights.get(made.itemId) ?? null });
  }
  return found.sort((p, q) => compareText(p.itemId, q.itemId) || compareText(p.id, q.id));
}

/** By receiver of light the joint of the element that lights it, as the book says whose light falls on it. */
function lightsOf(machine: Machine, network: ServiceNetwork): ReadonlyMap<string, number> {
  const ledOf = new Map(
    machine.elements.flatMap(({ id, itemId, row }) => (row.kind === "led" ? [[itemId, id] as const] : [])),
  );
  return new Map(
    machine.book.tables.devices.flatMap(({ id, light_from }) => {
      const joint = network.jointOf.get(ledOf.get(light_from ?? "") ?? "");
      return joint === undefined ? [] : [[id, joint] as const];
    }),
  );
}

function functionOf(
  network: ServiceNetwork,
  traced: ReadonlyMap<string, Traced>,
  { element, controls }: Traced,
  kind: MachineFunction["kind"],
): Omit<MachineFunction, "light"> | null {
  const joint = network.jointOf.get(element.id);
  const wanted = controls.filter((control) =>
    kind === "read" ? true : control.element.row.kind === "driver",
  );
  if (joint === undefined || wanted.length === 0) return null;
  if (kind === "read" && !wanted.some((control) => control.element.row.kind === "input")) return null;
  const boardIds = new Set<string>();
  const commands: (readonly [number, number])[] = [];
  for (const control of wanted) {
    boardIds.add(control.element.itemId);
    follow(network, traced, control.element.id, boardIds, commands);
  }
  return {
    id: element.id,
    itemId: element.itemId,
    kind,
    joint,
    controls: wanted.flatMap((control) => network.jointOf.get(control.element.id) ?? []),
    signals: wanted.flatMap((control) => network.nodeOf.get(control.pointId) ?? []),
    between: besides(network, joint),
    boardIds: [...boardIds].sort(compareText),
    commands,
  };
}

/** A driver that follows an input of its own board is as good as the command that comes to this input from another board. */
function follow(
  network: ServiceNetwork,
  traced: ReadonlyMap<string, Traced>,
  driverId: string,
  boardIds: Set<string>,
  commands: (readonly [number, number])[],
): void {
  const driver =
    traced.get(driverId)?.element ?? network.joints[network.jointOf.get(driverId) ?? -1]?.element;
  const named = driver?.row.control ?? "";
  if (driver === undefined || driver === null || named === "") return;
  for (const { element, controls } of traced.values()) {
    const isFollowed =
      element.row.kind === "input" && element.itemId === driver.itemId && element.row.from === named;
    if (!isFollowed) continue;
    for (const control of controls) {
      const [from, to] = [network.nodeOf.get(control.pointId), network.nodeOf.get(element.fromPointId)];
      if (boardIds.has(control.element.itemId) || from === undefined || to === undefined) continue;
      boardIds.add(control.element.itemId);
      commands.push([from, to]);
      follow(network, traced, control.element.id, boardIds, commands);
    }
  }
}

/** Diodes and larger resistors that lie in series with an element: at its own conductors, as these are when all is sound. */
function besides(network: ServiceNetwork, joint: number): readonly number[] {
  const own = network.joints[joint];
  if (own === undefined) return [];
  const reached = new Set([...leadingFrom(network, own.a), ...leadingFrom(network, own.b)]);
  const isParallel = (a: number, b: number): boolean =>
    (leadingFrom(network, own.a).has(a) && leadingFrom(network, own.b).has(b)) ||
    (leadingFrom(network, own.a).has(b) && leadingFrom(network, own.b).has(a));
  return network.joints.flatMap(({ element, a, b }, n) => {
    const kind = element?.row.kind;
    const isSeries = (kind === "diode" || kind === "resistor") && network.leads[n] !== true;
    return isSeries && (reached.has(a) || reached.has(b)) && !isParallel(a, b) ? [n] : [];
  });
}

const known = new WeakMap<ServiceNetwork, Map<number, ReadonlySet<number>>>();
const besideOf = new WeakMap<ServiceNetwork, readonly (readonly number[])[]>();

/** Nodes beside each node by what leads. */
function leadingBeside(network: ServiceNetwork): readonly (readonly number[])[] {
  const made = besideOf.get(network);
  if (made !== undefined) return made;
  const beside: number[][] = network.nodes.map(() => []);
  network.joints.forEach(({ a, b }, n) => {
    if (network.leads[n] !== true) return;
    beside[a]?.push(b);
    beside[b]?.push(a);
  });
  besideOf.set(network, beside);
  return beside;
}

/** All nodes that one node leads to while everything is sound. */
function leadingFrom(network: ServiceNetwork, start: number): ReadonlySet<number> {
  const sets = known.get(network) ?? new Map<number, ReadonlySet<number>>();
  known.set(network, sets);
  const made = sets.get(start);
  if (made !== undefined) return made;
  const beside = leadingBeside(network);
  const found = new Set([start]);
  for (const node of found) for (const other of beside[node] ?? []) found.add(other);
  for (const node of found) sets.set(node, found);
  return found;
}
