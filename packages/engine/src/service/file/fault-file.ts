import type { SuspectKind, Symptom } from "../faults/index.ts";
import type { ElementKind } from "./element-row.ts";

/** Number of the format that this program writes. */
export const FAULT_FILE_FORMAT = 1;

/** English, then Simplified Chinese. */
export type FileLabels = readonly [en: string, zh: string];

export interface FilePanel {
  readonly id: string;
  readonly labels: FileLabels;
  /** Corners in millimetres, x and y by turns: origin lower left, y away from the player, seen from the top. */
  readonly outline: readonly number[];
}

export interface FileItem {
  readonly id: string;
  readonly kind: "device" | "board" | "mechanism" | "inline" | "fastener";
  readonly labels: FileLabels;
  readonly number: number | null;
  /** Class of a device: `lamp`, `sensor`; older files have none. */
  readonly class?: string;
  /** Name of its type. */
  readonly type: FileLabels;
  /** Index of the panel. */
  readonly panel: number;
  readonly side: "top" | "under";
  readonly at: readonly [xMm: number, yMm: number];
  readonly outline: readonly number[];
}

/** Where wires land together. */
export interface FileLanding {
  readonly id: string;
  /** Index of the item. */
  readonly item: number;
  /** `J3`; empty for bare terminals. */
  readonly name: string;
  /** What is printed or said beside it; may be empty. */
  readonly label: string;
  readonly half: "a" | "b" | null;
  /** Columns and rows of its cavities; null for bare terminals. */
  readonly grid: readonly [columns: number, rows: number] | null;
  /** Cells of the cavities from number 1 on, seen from the side where the wires enter: column and row from 0. */
  readonly cells: readonly (readonly [column: number, row: number])[];
  /** Cavities that a key blocks. */
  readonly keys: readonly number[];
  readonly at: readonly [xMm: number, yMm: number];
}

/** A contact that a probe can touch. */
export interface FilePoint {
  readonly id: string;
  /** Index of the landing. */
  readonly landing: number;
  /** Cavity, or null for a terminal. */
  readonly pin: number | null;
  /** Name of a terminal, or what the pin is for; may be empty. */
  readonly label: string;
}

export interface FileHarness {
  readonly id: string;
  readonly number: number;
  readonly labels: FileLabels;
}

export interface FileWire {
  readonly id: string;
  /** Index of the harness. */
  readonly harness: number;
  readonly number: number;
  /** Code of IEC 60757: base, then stripe. */
  readonly colour: string;
  readonly type: FileLabels;
  readonly net: FileLabels;
}

/** An element's row of its type, once for all items of it. */
export interface FileElement {
  readonly id: string;
  readonly kind: ElementKind;
  readonly control: string;
  readonly normally: "open" | "closed";
  /** What it belongs to: a type of boards, devices or mechanisms. */
  readonly of: "board" | "device" | "mechanism";
  readonly type: string;
  readonly from: string;
  readonly to: string;
  readonly ohm: number | null;
  readonly volt: number | null;
  readonly amp: number | null;
}

/** [kind, node, node, ref, ref]: a wire's index; a contact's point index; an element's index and its item's. */
export type FileJoint =
  | readonly ["w", a: number, b: number, wire: number, leads: 0 | 1]
  | readonly ["c", a: number, b: number, point: number, leads: 0 | 1]
  | readonly ["e", a: number, b: number, element: number, leads: 0 | 1, item: number];

export interface FileSource {
  readonly id: string;
  /** Index of the item. */
  readonly item: number;
  readonly plus: number;
  readonly minus: number;
  readonly labels: FileLabels;
  readonly volts: number;
  readonly storedJ: number;
  readonly isMains: boolean;
}

export interface FileFuse {
  /** Index of the joint. */
  readonly joint: number;
  readonly labels: FileLabels;
  readonly ratedA: number;
  readonly size: string;
}

/** Something that a person sees working or not. */
export interface FileFunction {
  readonly id: string;
  /** Index of the item. */
  readonly item: number;
  readonly kind: "driven" | "read";
  readonly joint: number;
  readonly controls: readonly number[];
  readonly signals: readonly number[];
  readonly between: readonly number[];
  /** Indices of items. */
  readonly boards: readonly number[];
  readonly commands: readonly (readonly [number, number])[];
  /** Joint of the element whose light falls on it. */
  readonly light?: number;
}

/** [kind, way, ref, ref]: `o`pen or `c`losed joint, `s`horted nodes, s`w`apped joints, `d`ead item, `m`echanical joint (1: stuck). */
export type FileSuspect = readonly [
  kind: SuspectKind,
  way: "o" | "c" | "s" | "w" | "d" | "m",
  p: number,
  q: number,
];

/** [suspects, symptoms]: of each function that does not work its index and the first letter of what it does. */
export type FileClass = readonly [
  suspects: readonly number[],
  symptoms: readonly (readonly [number, FileSymptom])[],
];
type FileSymptom = Exclude<Symptom, "works">;

/**
 * Everything that fault finding asks of one machine, without the program that made it: plain JSON that is shipped with the
 * machine. Numbers between its lists are indices.
 */
export interface FaultFile {
  readonly format: typeof FAULT_FILE_FORMAT;
  readonly machine: { readonly id: string; readonly labels: FileLabels };
  /** Name of the revision; null: as the book stands. */
  readonly revision: string | null;
  readonly options: readonly string[];
  readonly panels: readonly FilePanel[];
  readonly items: readonly FileItem[];
  readonly landings: readonly FileLanding[];
  readonly points: readonly FilePoint[];
  readonly harnesses: readonly FileHarness[];
  readonly wires: readonly FileWire[];
  readonly elements: readonly FileElement[];
  /** Points on the item's side, `wire:` and a point on the wires' side, and splices. */
  readonly nodes: readonly string[];
  readonly joints: readonly FileJoint[];
  readonly sources: readonly FileSource[];
  readonly fuses: readonly FileFuse[];
  readonly messages: readonly number[];
  /** Nodes that carry the mains: nothing of them is for an owner. */
  readonly mains: readonly number[];
  readonly functions: readonly FileFunction[];
  readonly suspects: readonly FileSuspect[];
  /** Odds of each suspect. */
  readonly odds: readonly number[];
  /** What each suspect would do; null: it is worked out when the file is opened. */
  readonly classes: readonly FileClass[] | null;
}
