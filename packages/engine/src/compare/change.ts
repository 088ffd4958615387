import type { Languages } from "../model/index.ts";

/** What a change is about: a row of the book, or something that is worked out from it. */
export interface Subject {
  /** Table of the book; `wires`, `bill`, `findings` for what is worked out, `machine` for the machine itself. */
  readonly table: string;
  readonly id: string;
  readonly labels: Languages;
  /** Number that people call it by: of a switch, a harness, a step; blank: none. */
  readonly number: string;
  /** Class of a device: `switch`, `lamp`; blank: it is none. */
  readonly deviceClass: string;
  /** Where a thing is that has no name: a waypoint, both ends of a lane or crossing. */
  readonly places: readonly SubjectPlace[];
}

export interface SubjectPlace {
  readonly panel: Languages;
  readonly side: "top" | "under";
  readonly xMm: number;
  readonly yMm: number;
}

/** Numbers of a finding by their names. */
export type FindingNumbers = Readonly<Record<string, number | string | boolean>>;

export type ChangeValue =
  | number
  | string
  | readonly string[]
  | readonly Languages[]
  | readonly FindingNumbers[];

/** One thing that is another than before, in data; `changeText` of the words says it. */
export interface MachineChange {
  readonly what:
    | "new"
    | "gone"
    | "renamed"
    | "moved"
    | "turned"
    | "put-on"
    | "type"
    | "named"
    | "uses"
    | "joined"
    | "pin-harness"
    | "pin-options"
    | "wire-length"
    | "wire-colour"
    | "wire-type"
    | "wire-contact"
    | "wire-end"
    | "wire-number"
    | "wire-net"
    | "wire-new"
    | "wire-gone"
    | "wires"
    | "field"
    | "row-new"
    | "row-gone"
    | "decided"
    | "undecided"
    | "count"
    | "symbol"
    | "step-order"
    | "step-new"
    | "step-gone"
    | "step-content"
    | "step-minutes"
    | "drawn"
    | "finding-new"
    | "finding-gone"
    | "finding-numbers"
    | "accepted"
    | "no-longer-accepted"
    | "accepted-otherwise"
    | "accepted-bounds"
    | "acceptance-new"
    | "acceptance-gone"
    | "acceptance-changed";
  readonly values: Readonly<Record<string, ChangeValue>>;
}

/** Everything that changed about one thing: first what was done, then what follows. */
export interface ChangeGroup {
  readonly subject: Subject;
  readonly changes: readonly MachineChange[];
}

export interface ChangedSheet {
  readonly id: string;
  readonly kind: string;
  readonly of: string;
  readonly title: string;
  readonly number: string;
  readonly what: "changed" | "new" | "gone";
  /** Pages that say something else, from 1; all of a new one; none of one that is gone. */
  readonly pages: readonly number[];
}

/** What a change does to a harness that was built before. */
export interface HarnessEffect {
  readonly harness: string;
  readonly number: string;
  readonly labels: Languages;
  /**
   * `longer-tails`: some wires are too short by so much; `fits`: wires are only shorter than they were, and it can still be
   * used; `rework`: ends, colours or wires are others; `scrap`: more than half of its wires are; `gone`: it is no longer used.
   */
  readonly does: "fits" | "longer-tails" | "rework" | "scrap" | "gone";
  /** Wires that are longer, shorter, others (end, colour, type), new, gone. */
  readonly wires: {
    readonly longer: number;
    readonly shorter: number;
    readonly other: number;
    readonly added: number;
    readonly gone: number;
  };
  /** So much are wires longer at most. */
  readonly mostMm: number;
}

/** A tool or jig that no longer fits the machine. */
export interface ToolEffect {
  /** `pinboard`, `pilot-template`, `screw-tray`, `fixture-test`, or `crimp-tool`. */
  readonly kind: string;
  readonly id: string;
  readonly title: string;
  readonly what: "changed" | "new" | "gone";
}

/** Two revisions side by side. */
export interface Comparison {
  readonly before: string;
  readonly after: string;
  readonly groups: readonly ChangeGroup[];
  readonly sheets: readonly ChangedSheet[];
  readonly harnesses: readonly HarnessEffect[];
  readonly tools: readonly ToolEffect[];
  /** Types of boards and mechanisms that are made otherwise: units of these keep the old. */
  readonly types: readonly { readonly what: "board" | "mechanism"; readonly type: string }[];
}
