import type { Languages } from "../model/index.ts";

/** Number of the form in which facts are kept. */
export const FACTS_FORMAT = 1;

/** Cells of a row that are not blank, as canonical text, by column. */
export type FactRow = Readonly<Record<string, string>>;
/** Rows by their key: the columns that name a row, joined by a space. */
export type FactRows = Readonly<Record<string, FactRow>>;

/** One end of a wire. */
export interface EndFact {
  /** Point, or splice. */
  readonly point: string;
  /** Item that it is at; blank: a splice. */
  readonly item: string;
  /** `j1.3`, or a terminal's name. */
  readonly pin: string;
  /** Part of its contact; blank: the book names none. */
  readonly part: string;
}

/** A wire as it is made. Its key is the wire's id. */
export interface WireFact {
  /** `7-12`: number of its harness and its own. */
  readonly number: string;
  readonly harness: string;
  readonly net: string;
  readonly netClass: string;
  /** Supply of its net; blank: none. */
  readonly supply: string;
  /** IEC 60757 code: base, then stripe. */
  readonly colour: string;
  readonly type: string;
  readonly finishedMm: number;
  readonly cutMm: number;
  readonly a: EndFact;
  readonly b: EndFact;
}

/** Something placed on a panel, children of mechanisms included. */
export interface ItemFact {
  readonly kind: "device" | "board" | "mechanism" | "fastener" | "inline";
  readonly type: string;
  readonly labels: Languages;
  readonly panel: string;
  readonly side: "top" | "under";
  readonly xMm: number;
  readonly yMm: number;
  readonly rotationDeg: number;
  readonly number: number | null;
  /** Mechanism that it is a child of; blank: none. */
  readonly parent: string;
  /** Pins of boards that its own signals reach: what it uses. In code-point order. */
  readonly uses: readonly string[];
}

export interface PartFact {
  readonly labels: Languages;
  readonly unit: "each" | "m" | "m2" | "kg" | "l";
  /** So much of it is in one machine. */
  readonly count: number;
  readonly orderNumber: string;
}

/** A step of assembly as its card shows it. */
export interface StepFact {
  readonly number: number;
  readonly labels: Languages;
  readonly items: readonly string[];
  readonly fasteners: readonly string[];
  readonly minutes: number;
}

export interface FindingFact {
  readonly rule: string;
  readonly severity: "error" | "warning" | "note";
  readonly subjects: readonly string[];
  readonly numbers: Readonly<Record<string, number | string | boolean>>;
  /** Who accepted it and why; null: nobody. */
  readonly accepted: { readonly by: string; readonly reason: string } | null;
}

/** A sheet, in one language, and what tells whether it is another. */
export interface SheetFact {
  /** Name without language: `hs.lamps.from-to`, `machine.loads`. */
  readonly id: string;
  readonly kind: string;
  /** Harness, or `machine`. */
  readonly of: string;
  readonly title: string;
  readonly number: string;
  readonly bodyHash: string;
  readonly pageHashes: readonly string[];
}

/** Everything of a machine that a comparison speaks of: plain data, kept with a release and never computed anew. */
export interface MachineFacts {
  readonly format: typeof FACTS_FORMAT;
  readonly machine: {
    readonly id: string;
    readonly labels: Languages;
    readonly owner: string;
    readonly approved: string;
    readonly revision: string;
  };
  /** The definition itself, by table and key. */
  readonly rows: Readonly<Record<string, FactRows>>;
  readonly items: Readonly<Record<string, ItemFact>>;
  readonly wires: Readonly<Record<string, WireFact>>;
  readonly parts: Readonly<Record<string, PartFact>>;
  readonly steps: Readonly<Record<string, StepFact>>;
  /** Symbol of each fastener type that is used: letter, shape, shade. */
  readonly symbols: Readonly<Record<string, string>>;
  readonly findings: readonly FindingFact[];
  readonly sheets: readonly SheetFact[];
}
