import type { Decimal } from "@pinwright/kernel";
import type { Languages } from "./machine.ts";

/** What something in the bill is. */
export type BillNodeKind =
  | "machine"
  /** Derived assemblies, made in the shop from what the book says of them. */
  | "harness"
  | "board"
  | "panel"
  | "mechanism"
  /** A row of `parts`. */
  | "part"
  /** Something that is used but for which the book names no part. */
  | "unnamed";

/** Something that contains or is contained. */
export interface BillNode {
  /**
   * Id of the part; `machine`; `harness:ID`, `board:TYPE`, `panel:ID`, `mechanism:TYPE` for derived assemblies, even
   * when they have a part number; `unnamed:KIND:REF` for what has no part.
   */
  readonly id: string;
  readonly kind: BillNodeKind;
  /** Part number; of a derived assembly, the part under which it is stocked, if any. */
  readonly partId: string | null;
  readonly labels: Languages;
  readonly unit: "each" | "m" | "m2" | "kg" | "l";
}

/** What a quantity comes from. */
export type BillWhy =
  | "wire"
  | "cable"
  | "contact"
  | "housing"
  | "key"
  | "splice"
  | "tie"
  | "sleeve"
  | "fastener"
  | "washer"
  | "nut"
  /** Something that holds a bundle on a lane. */
  | "holder"
  /** Sheet goods of a panel, in square metres as cut, before waste. */
  | "sheet"
  | "bare-board"
  | "placement"
  | "device"
  | "fuse"
  | "board"
  | "harness"
  | "mechanism"
  | "panel"
  | "inline"
  /** A row of `bom`. */
  | "bom";

/** So much of one thing is in another. One row for each parent, child, reason and colour. */
export interface BillLine {
  readonly parentId: string;
  readonly childId: string;
  readonly why: BillWhy;
  /** Colour of a wire; blank for anything else. */
  readonly colour: string;
  readonly quantity: Decimal;
  /** Where they are: items, harnesses, landings, references; in code-point order, at most 500. */
  readonly at: readonly string[];
}

/** What one machine with its options is made of. Geometry and wiring say it, and `bom` what they cannot tell. */
export interface Bill {
  /** By id. `machine` is always there. */
  readonly nodes: ReadonlyMap<string, BillNode>;
  /** By parent, then child, why and colour, in code-point order. */
  readonly lines: readonly BillLine[];
  /** How much of each node is in one machine, all levels added up; nodes in a circle are left out. */
  readonly totals: ReadonlyMap<string, Decimal>;
  /** Nodes from the leaves up: whoever adds up costs takes them in this order. Circles are left out. */
  readonly order: readonly string[];
  /** Ids of nodes that contain themselves, in their circles. */
  readonly circles: readonly (readonly string[])[];
}

export interface PartsResult {
  readonly bill: Bill;
}
