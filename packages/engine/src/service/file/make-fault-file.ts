import { compareText } from "@pinwright/kernel";
import type { HarnessResult, Machine } from "../../model/index.ts";
import {
  FaultModel,
  FaultTable,
  type MachineFunction,
  machineFunctions,
  type ServiceFault,
  type ServiceNetwork,
  type Suspect,
  serviceNetwork,
  suspectsOf,
} from "../faults/index.ts";
import { type BuiltRecords, failureCounts } from "../odds/index.ts";
import { fileElement } from "./element-row.ts";
import {
  FAULT_FILE_FORMAT,
  type FaultFile,
  type FileClass,
  type FileElement,
  type FileFunction,
  type FileFuse,
  type FileHarness,
  type FileJoint,
  type FileSource,
  type FileSuspect,
  type FileWire,
} from "./fault-file.ts";
import { FilePlaces, fileLabels } from "./places.ts";

/** What a fault file is made from: a line, or as much of it. */
export interface FaultFileLine {
  readonly machine: Machine;
  readonly harnesses: ReadonlyMap<string, HarnessResult>;
}

export interface FaultFileOptions {
  /** Name of the revision; null: a draft; without it the one that the book gives itself. */
  readonly revision?: string | null;
  /** What was built and what failed on it, by the records: the odds follow these. */
  readonly built?: BuiltRecords;
  /** `later`: what each suspect would do is left to whoever opens the file, who then waits for it. */
  readonly table?: "now" | "later";
}

/** The fault file of a machine. It takes seconds for a machine of full size unless the table is left for later. */
export function faultFileOf(line: FaultFileLine, options: FaultFileOptions = {}): FaultFile {
  const { machine } = line;
  const wires = [...line.harnesses.values()].flatMap((harness) => harness.wires);
  const network = serviceNetwork(machine, wires);
  const model = new FaultModel(network, machineFunctions(machine, network));
  const usual = suspectsOf(machine, network, model.functions, null);
  const { built } = options;
  const counts = built === undefined ? null : failureCounts(machine, usual, built);
  const suspects = counts === null ? usual : suspectsOf(machine, network, model.functions, counts);
  const places = new FilePlaces(machine);
  for (const node of network.nodes) places.point(pointOf(node));
  const { joints, elements } = fileJoints(network, wires, places);
  const mains = mainsOf(network, wires);
  const sources = fileSources(machine, network, mains, places);
  const functions = model.functions.map((one) => fileFunction(one, places));
  const files = suspects.map((suspect) => fileSuspect(suspect, places));
  const table = options.table === "later" ? null : new FaultTable(model, suspects);
  return {
    format: FAULT_FILE_FORMAT,
    machine: {
      id: machine.book.machine.id,
      labels: fileLabels(machine.book.machine, machine.book.machine.id),
    },
    revision: options.revision === undefined ? machine.book.machine.revision : options.revision,
    options: [...machine.options].sort(compareText),
    panels: places.panels(),
    items: places.items(),
    landings: places.landings(),
    points: places.points(),
    ...fileWires(line),
    elements,
    nodes: network.nodes,
    joints,
    sources,
    fuses: fileFuses(machine, network),
    messages: network.messages,
    mains: [...mains].sort((p, q) => p - q),
    functions,
    suspects: files,
    odds: suspects.map(({ odds }) => Number(odds.toPrecision(6))),
    classes: table === null ? null : fileClasses(table),
  };
}

/** Classes of a table as a fault file keeps them. */
function fileClasses(table: FaultTable): readonly FileClass[] {
  return table.classes.map(({ suspects, symptoms }) => [
    suspects,
    [...symptoms].flatMap(([f, symptom]) => (symptom === "works" ? [] : [[f, symptom] as const])),
  ]);
}

/** Point of a node: the same on either side of its contact. */
export const pointOf = (node: string): string => (node.startsWith("wire:") ? node.slice(5) : node);

function fileWires(line: FaultFileLine): {
  readonly harnesses: readonly FileHarness[];
  readonly wires: readonly FileWire[];
} {
  const harnesses = [...line.harnesses.values()];
  return {
    harnesses: harnesses.map(({ harness, labels }) => ({
      id: harness.id,
      number: harness.number,
      labels: [labels.en, labels.zh],
    })),
    wires: harnesses.flatMap(({ wires }, h) =>
      wires.map(({ id, number, colour, wireType, netId }) => ({
        id,
        harness: h,
        number,
        colour,
        type: fileLabels(wireType, wireType.id),
        net: fileLabels(line.machine.nets.get(netId) ?? { label: "" }, netId),
      })),
    ),
  };
}

function fileJoints(
  network: ServiceNetwork,
  wires: readonly { readonly id: string }[],
  places: FilePlaces,
): { readonly joints: readonly FileJoint[]; readonly elements: readonly FileElement[] } {
  const wireOf = new Map(wires.map(({ id }, n) => [id, n]));
  const elements: FileElement[] = [];
  const elementOf = new Map<string, number>();
  const joints = network.joints.map(({ id, kind, a, b, element }, n): FileJoint => {
    const leads = network.leads[n] === true ? 1 : 0;
    if (kind === "wire") return ["w", a, b, wireOf.get(id) ?? -1, leads];
    if (kind === "contact" || element === null) return ["c", a, b, places.point(id), leads];
    const known = elementOf.get(element.row.id) ?? elements.length;
    if (known === elements.length) {
      elementOf.set(element.row.id, known);
      elements.push(fileElement(element.row));
    }
    return ["e", a, b, known, leads, places.item(element.itemId)];
  });
  return { joints, elements };
}

function fileFunction(one: MachineFunction, places: FilePlaces): FileFunction {
  const { id, kind, joint, controls, signals, between, commands } = one;
  const boards = one.boardIds.map((board) => places.item(board));
  const light = one.light === null ? {} : { light: one.light };
  const item = places.item(one.itemId);
  return { id, item, kind, joint, controls, signals, between, boards, commands, ...light };
}

function fileSuspect({ kind, fault }: Suspect, places: FilePlaces): FileSuspect {
  const [way, p, q] = faultCode(fault, places);
  return [kind, way, p, q];
}

function faultCode(fault: ServiceFault, places: FilePlaces): readonly [FileSuspect[1], number, number] {
  switch (fault.kind) {
    case "open":
      return ["o", fault.joint, 0];
    case "closed":
      return ["c", fault.joint, 0];
    case "short":
      return ["s", fault.a, fault.b];
    case "swapped":
      return ["w", fault.a, fault.b];
    case "dead":
      return ["d", places.item(fault.itemId), 0];
    case "mechanical":
      return ["m", fault.joint, fault.stuck ? 1 : 0];
  }
}

/** Nodes on wires of the mains, and what these lead to over contacts, fuses and switches. */
function mainsOf(
  network: ServiceNetwork,
  wires: readonly { readonly id: string; readonly netClass: string }[],
): ReadonlySet<number> {
  const ofMains = new Set(wires.flatMap(({ id, netClass }) => (netClass === "mains" ? [id] : [])));
  const found = new Set(
    network.joints.flatMap(({ id, kind, a, b }) => (kind === "wire" && ofMains.has(id) ? [a, b] : [])),
  );
  const isPassed = (n: number): boolean =>
    network.leads[n] === true || network.joints[n]?.element?.row.kind === "contact";
  for (let grows = true; grows; ) {
    const before = found.size;
    network.joints.forEach(({ a, b }, n) => {
      if (isPassed(n) && (found.has(a) || found.has(b))) found.add(a).add(b);
    });
    grows = found.size > before;
  }
  return found;
}

function fileSources(
  machine: Machine,
  network: ServiceNetwork,
  mains: ReadonlySet<number>,
  places: FilePlaces,
): readonly FileSource[] {
  const rows = machine.book.tables.supplies;
  const elements = new Map(machine.elements.map((element) => [element.id, element]));
  return network.sources.map(({ id, itemId, plus, minus }) => {
    const supply = rows.find(
      (row) => row.positive === network.nodes[plus] && row.negative === network.nodes[minus],
    );
    const item = machine.items.get(itemId)?.labels;
    const isMains = mains.has(plus) || mains.has(minus);
    return {
      id,
      item: places.item(itemId),
      plus,
      minus,
      labels: supply === undefined ? [item?.en ?? itemId, item?.zh ?? itemId] : fileLabels(supply, supply.id),
      volts: supply?.volts ?? elements.get(id)?.row.volt ?? 0,
      storedJ: supply?.stored_j ?? 0,
      isMains,
    };
  });
}

function fileFuses(machine: Machine, network: ServiceNetwork): readonly FileFuse[] {
  const { nodes, joints } = network;
  return machine.book.tables.fuses.flatMap((row) => {
    const joint = joints.findIndex(({ element, a, b }) => {
      if (element?.row.kind !== "fuse") return false;
      return (nodes[a] === row.from && nodes[b] === row.to) || (nodes[a] === row.to && nodes[b] === row.from);
    });
    return joint < 0 ? [] : [{ joint, labels: fileLabels(row, row.id), ratedA: row.rated_a, size: row.size }];
  });
}
