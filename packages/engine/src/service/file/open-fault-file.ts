import type { PlacedElement } from "../../model/index.ts";
import {
  type FaultClass,
  FaultModel,
  type FaultTable,
  FaultTableMaker,
  type Joint,
  type MachineFunction,
  type ServiceFault,
  type ServiceNetwork,
  type Suspect,
} from "../faults/index.ts";
import { elementRow } from "./element-row.ts";
import type { FaultFile, FileClass, FileFunction, FileSuspect } from "./fault-file.ts";

/** A fault file that can be asked. */
export interface OpenedFaultFile {
  readonly file: FaultFile;
  readonly model: FaultModel;
  readonly table: FaultTable;
}

/** Suspects that are taken at a time: some ten milliseconds on an office computer. */
const STEP_SUSPECTS = 20;

/** A fault file while it is opened: one that brings no table takes seconds, in which others want to be served. */
export class FaultFileOpening {
  readonly #file: FaultFile;
  readonly #model: FaultModel;
  readonly #suspects: readonly Suspect[];
  readonly #maker: FaultTableMaker;
  #classes: readonly FaultClass[] | null;

  constructor(file: FaultFile) {
    this.#file = file;
    const network = networkOf(file);
    this.#model = new FaultModel(
      network,
      file.functions.map((one) => functionOf(file, network, one)),
    );
    this.#suspects = file.suspects.map((one, n) => suspectOf(file, network, one, n));
    this.#classes = file.classes === null ? null : classesOf(file.classes, this.#suspects);
    this.#maker = new FaultTableMaker(this.#model, this.#suspects);
  }

  /** 0 to 1. */
  get progress(): number {
    return this.#classes === null ? this.#maker.progress : 1;
  }

  /** Does some more; the opened file as soon as it is all there. */
  step(): OpenedFaultFile | null {
    if (this.#classes === null) {
      this.#maker.step(STEP_SUSPECTS);
      if (this.#maker.progress < 1) return null;
      this.#classes = this.#maker.classes();
    }
    return {
      file: this.#file,
      model: this.#model,
      table: { suspects: this.#suspects, classes: this.#classes },
    };
  }
}

/** Opens a fault file at once, however long that takes. */
export function openFaultFile(file: FaultFile): OpenedFaultFile {
  const opening = new FaultFileOpening(file);
  for (;;) {
    const opened = opening.step();
    if (opened !== null) return opened;
  }
}

function networkOf(file: FaultFile): ServiceNetwork {
  const { nodes } = file;
  const itemId = (n: number): string => file.items[n]?.id ?? "";
  const joints = file.joints.map((joint): Joint => {
    const [kind, a, b, ref] = joint;
    if (kind === "w") return { id: file.wires[ref]?.id ?? "", kind: "wire", a, b, element: null };
    if (kind === "c") return { id: file.points[ref]?.id ?? "", kind: "contact", a, b, element: null };
    const row = file.elements[ref];
    if (row === undefined) throw new Error(`no element ${ref}`);
    const id = `${itemId(joint[5])}:${row.id}`;
    const element: PlacedElement = {
      id,
      itemId: itemId(joint[5]),
      fromPointId: nodes[a] ?? "",
      toPointId: nodes[b] ?? "",
      row: elementRow(row),
    };
    return { id, kind: "element", a, b, element };
  });
  return {
    nodes,
    nodeOf: new Map(nodes.map((node, n) => [node, n])),
    joints,
    jointOf: new Map(joints.map(({ id }, n) => [id, n])),
    leads: file.joints.map((joint) => joint[4] === 1),
    sources: file.sources.map(({ id, item, plus, minus }) => ({ id, itemId: itemId(item), plus, minus })),
    messages: file.messages,
  };
}

function functionOf(file: FaultFile, network: ServiceNetwork, one: FileFunction): MachineFunction {
  const { id, kind, joint, controls, signals, between, commands } = one;
  const itemId = file.items[one.item]?.id ?? network.joints[joint]?.element?.itemId ?? "";
  const boardIds = one.boards.flatMap((n) => file.items[n]?.id ?? []);
  return { id, itemId, kind, joint, controls, signals, between, boardIds, commands };
}

function suspectOf(file: FaultFile, network: ServiceNetwork, one: FileSuspect, n: number): Suspect {
  const [kind] = one;
  const { fault, subjects } = faultOf(file, network, one);
  return { id: `${kind} ${subjects.join(" ")}`, kind, fault, subjects, odds: file.odds[n] ?? 0 };
}

function faultOf(
  file: FaultFile,
  network: ServiceNetwork,
  [kind, way, p, q]: FileSuspect,
): { readonly fault: ServiceFault; readonly subjects: readonly string[] } {
  const id = (joint: number): string => network.joints[joint]?.id ?? "";
  switch (way) {
    case "o":
      return { fault: { kind: "open", joint: p }, subjects: [id(p)] };
    case "c":
      return { fault: { kind: "closed", joint: p }, subjects: [id(p)] };
    case "s":
      return {
        fault: { kind: "short", a: p, b: q },
        subjects: [network.nodes[p] ?? "", network.nodes[q] ?? ""],
      };
    case "w":
      return { fault: { kind: "swapped", a: p, b: q }, subjects: [id(p), id(q)] };
    case "d": {
      const itemId = file.items[p]?.id ?? "";
      return { fault: { kind: "dead", itemId }, subjects: [itemId] };
    }
    case "m": {
      const itemId = network.joints[p]?.element?.itemId ?? "";
      const fault = { kind: "mechanical", joint: p, stuck: q === 1 } as const;
      return { fault, subjects: kind === "sticks" ? [id(p), itemId] : [id(p)] };
    }
  }
}

const classesOf = (classes: readonly FileClass[], suspects: readonly Suspect[]): readonly FaultClass[] =>
  classes.map(([own, symptoms]) => ({
    suspects: own,
    symptoms: new Map(symptoms),
    odds: own.reduce((sum, n) => sum + (suspects[n]?.odds ?? 0), 0),
  }));
