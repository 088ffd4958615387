import type { FactBody } from "@pinwright/contract";

type Body<K extends FactBody["kind"]> = Extract<FactBody, { kind: K }>;

/** Which record says so. */
export interface Source {
  readonly stream: string;
  readonly seq: number;
  readonly at: string;
  readonly person: string;
}

/** Where a unit is or was inside another. */
export interface Fitting {
  readonly unit: string;
  readonly place: string;
  readonly from: Source;
  /** Null while it is there. */
  readonly until: Source | null;
}

export interface StepRecord {
  readonly step: string;
  readonly minutes: number;
  readonly count: number | null;
  readonly source: Source;
}

export interface ReadingRecord {
  readonly test: string;
  readonly value: number | null;
  readonly good: boolean;
  readonly instrument: string;
  readonly source: Source;
}

export interface DefectRecord {
  readonly defect: string;
  readonly what: string;
  readonly says: string;
  readonly where: Body<"defect">["where"];
  readonly station: string;
  /** Hash of a picture; blank: none was taken. */
  readonly picture: string;
  readonly found: Source;
  readonly mended: {
    readonly cause: string;
    readonly says: string;
    readonly minutes: number;
    readonly source: Source;
  } | null;
}

/** A step or reading that was recorded and then corrected. */
export interface StruckRecord {
  readonly gate: "step" | "test";
  /** Step or test. */
  readonly of: string;
  readonly value: number | null;
  readonly good: boolean;
  readonly source: Source;
}

/** When a unit was released, and how far each stream was known then. */
export interface ReleaseRecord extends Source {
  /** Number of the last fact of each stream. */
  readonly heads: ReadonlyMap<string, number>;
}

/** Everything that the records say of one unit. */
export interface UnitState {
  readonly unit: string;
  /** Null while no record says that it was begun: its facts are kept, and shown as a contradiction. */
  readonly begun: (Omit<Body<"begun">, "kind" | "unit"> & { readonly source: Source }) | null;
  /** Units that are or were inside, in the order in which they were fitted. */
  readonly inside: readonly Fitting[];
  /** Where it is or was itself. */
  readonly within: readonly Fitting[];
  readonly steps: ReadonlyMap<string, StepRecord>;
  /** Readings of each test in their order; the last one counts. */
  readonly readings: ReadonlyMap<string, readonly ReadingRecord[]>;
  readonly defects: ReadonlyMap<string, DefectRecord>;
  /** What does not count any more, because it was corrected. */
  readonly struck: readonly StruckRecord[];
  readonly lots: readonly (Omit<Body<"lot-used">, "kind" | "unit"> & { readonly source: Source })[];
  readonly alternates: readonly (Omit<Body<"alternate">, "kind" | "unit"> & { readonly source: Source })[];
  readonly overrides: readonly (Omit<Body<"override">, "kind" | "unit"> & { readonly source: Source })[];
  readonly notes: readonly { readonly says: string; readonly source: Source }[];
  readonly stage: string;
  readonly site: string;
  /** Sent off and not yet counted in. */
  readonly onTheWay: { readonly transport: string; readonly to: string; readonly source: Source } | null;
  readonly released: ReleaseRecord | null;
  readonly minutes: number;
}
