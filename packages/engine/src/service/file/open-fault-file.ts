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
import { fileJointId, fileSubjects } from "./file-ids.ts";

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
    this.#suspects = file.suspects.map((one, n) => suspectOf(file, one, n));
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
  const joints = file.joints.map((joint, n): Joint => {
    const [kind, a, b, ref] = joint;
    const id = fileJointId(file, n);
    if (kind === "w") return { id, kind: "wire", a, b, element: null };
    if (kind === "c") return { id, kind: "contact", a, b, element: null };
    const row = file.elements[ref];
    if (row === undefined) throw new Error(`no element ${ref}`);
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
  const light = one.light ?? null;
  return { id, itemId, kind, joint, controls, signals, light, between, boardIds, commands };
}

function suspectOf(file: FaultFile, one: FileSuspect, n: number): Suspect {
  const [kind] = one;
  const subjects = fileSubjects(file, n);
  return {
    id: `${kind} ${subjects.join(" ")}`,
    kind,
    fault: faultOf(file, one),
    subjects,
    odds: file.odds[n] ?? 0,
  };
}

function faultOf(file: FaultFile, [, way, p, q]: FileSuspect): ServiceFault {
  switch (way) {
    case "o":
      return { kind: "open", joint: p };
    case "c":
      return { kind: "closed", joint: p };
    case "s":
      return { kind: "short", a: p, b: q };
    case "w":
      return { kind: "swapped", a: p, b: q };
    case "d":
      return { kind: "dead", itemId: file.items[p]?.id ?? "" };
    case "m":
      return { kind: "mechanical", joint: p, stuck: q === 1 };
  }
}

const classesOf = (classes: readonly FileClass[], suspects: readonly Suspect[]): readonly FaultClass[] =>
  classes.map(([own, symptoms]) => ({
    suspects: own,
    symptoms: new Map(symptoms),
    odds: own.reduce((sum, n) => sum + (suspects[n]?.odds ?? 0), 0),
  }));
