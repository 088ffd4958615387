import type { Seen } from "../faults/index.ts";

/** Something to look at or to measure, by names that outlive the program that made them. */
export type SessionLook =
  /** Try a function that nobody has looked at. */
  | { readonly kind: "try"; readonly id: string }
  /** Power off: look at what moves, or at a fuse, and move it by hand. */
  | { readonly kind: "inspect"; readonly id: string }
  /** Look at plugs and their contacts, wiggle them, take them off and push them home, all in one go. */
  | { readonly kind: "reseat"; readonly ids: readonly string[] }
  /** Power off: does a meter read as good as nothing between two nodes? */
  | { readonly kind: "ohms"; readonly a: string; readonly b: string }
  /** Power off: does the part by itself read as it should? */
  | { readonly kind: "part"; readonly id: string }
  /** Power on: are the volts of a source at a node, against its return? */
  | { readonly kind: "volts"; readonly node: string; readonly source: string };

/** `yes`: it works, it looks right, something changed, it leads, it reads as it should, the volts are there. */
export type LookAnswer = "yes" | "no" | "unsure";

/** One thing that was done. */
export type Done =
  | { readonly what: "looked"; readonly look: SessionLook; readonly answer: LookAnswer }
  | { readonly what: "mended"; readonly suspect: string; readonly helped: boolean };

/** All that somebody said while looking for a fault: plain data that can be kept, sent and changed. */
export interface FaultSession {
  /** What functions do, by their id. */
  readonly seen: Readonly<Record<string, Seen>>;
  readonly done: readonly Done[];
}

export const NO_SESSION: FaultSession = { seen: {}, done: [] };

/** The same text for the same look. */
export function lookKey(look: SessionLook): string {
  switch (look.kind) {
    case "ohms":
      return `ohms ${look.a} ${look.b}`;
    case "volts":
      return `volts ${look.node} ${look.source}`;
    case "reseat":
      return `reseat ${look.ids.join(" ")}`;
    default:
      return `${look.kind} ${look.id}`;
  }
}

/** A suspect that is still in question, by its index. */
export interface CauseSuspect {
  readonly suspect: number;
  /** Chance that this is it, by all that was said. */
  readonly probability: number;
}

/** Something that can be wrong; its suspects cannot be told apart by what functions do. */
export interface Cause {
  /** One list of suspects, the likeliest first; two lists: both at once. */
  readonly parts: readonly (readonly CauseSuspect[])[];
  readonly probability: number;
  /** Functions, by index: what it would break of what was said to be broken. */
  readonly explains: readonly number[];
  /** What it would break that nobody has looked at. */
  readonly alsoBreaks: readonly number[];
  /** What was seen and does not fit it. */
  readonly against: readonly number[];
}

/** A look that is proposed. */
export interface Proposal {
  readonly look: SessionLook;
  readonly minutes: number;
  /** 0: none; 1: the machine is open and off; 2: it is open and on. */
  readonly danger: 0 | 1 | 2;
  /** Bits that its answer is expected to tell. */
  readonly bits: number;
  /** Chance that it says yes. */
  readonly yes: number;
  /** What it says of a sound machine. */
  readonly good: "yes" | "no";
  /** Likeliest cause after either answer: its first suspect, and the chance of all that do the same. */
  readonly ifYes: CauseSuspect | null;
  readonly ifNo: CauseSuspect | null;
}

/** What is known after all that was said. */
export interface FaultAnswer {
  /** `nothing`: nothing was said to be wrong; `mended`: what was mended helped. */
  readonly state: "nothing" | "looking" | "found" | "mended";
  /** The likeliest first. */
  readonly causes: readonly Cause[];
  /** The next look first; none: nothing more can be told apart. */
  readonly looks: readonly Proposal[];
}
