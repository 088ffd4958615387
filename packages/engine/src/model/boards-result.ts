import type { Languages } from "./machine.ts";

/** One type of board, and where it is used. */
export interface BoardRegisterRow {
  readonly typeId: string;
  readonly labels: Languages;
  readonly revision: string;
  /** What boards of this type are for; empty where the book does not say. */
  readonly purposes: Languages;
  readonly barePartId: string | null;
  readonly stuffedPartId: string | null;
  /** Boards of this type in one machine, in code-point order. */
  readonly boardIds: readonly string[];
  readonly placements: number;
  readonly joints: number;
  /** Stuffed in the own shop, or bought with its parts on it; unknown: the book says neither. */
  readonly comes: "stuffed" | "bought" | "unknown";
}

/** By hand, or in the solder bath. */
export type SolderWay = "hand" | "bath";

/** One stage of stuffing: parts that go in one after the other before the board is turned or soldered. */
export interface StuffingStage {
  readonly number: number;
  /** Where it is done, when the work is split over benches. */
  readonly bench: number;
  readonly when: "before-bath" | "after-wash";
  /** Its parts are at most this high; the highest class has no limit. */
  readonly upToMm: number | null;
  /** References in the order in which they go in. */
  readonly references: readonly string[];
  /** Of one board, rest included. */
  readonly seconds: number;
}

/** In which order the parts of a board type go in. */
export interface StuffingPlan {
  readonly typeId: string;
  /** How it is soldered: the seconds of a part hold its joints when they are soldered by hand. */
  readonly way: SolderWay;
  readonly order: readonly string[];
  readonly stages: readonly StuffingStage[];
  readonly benches: number;
  /** Of the busiest bench, against what no split can beat. */
  readonly busiestSeconds: number;
  readonly busiestBound: number;
  /** Part ids by the number of their box, box 1 first: the order in which they are first wanted. */
  readonly boxes: readonly string[];
}

export interface BoardsResult {
  /** In code-point order of type. */
  readonly register: readonly BoardRegisterRow[];
}

/** One box of a kit of boards. */
export interface BoardKitLine {
  /** Number on the box; 0: the bare board. */
  readonly box: number;
  readonly partId: string;
  readonly labels: Languages;
  readonly value: string;
  /** In the order in which they go in. */
  readonly references: readonly string[];
  readonly perBoard: number;
  /** On all boards of the kit. */
  readonly needed: number;
  /** Added for what is lost or spoilt. */
  readonly extra: number;
  readonly total: number;
  /** Packs to open, of the size in which the cheapest offer for this quantity comes; null: no price is known. */
  readonly pack: { readonly supplierId: string; readonly size: number; readonly packs: number } | null;
}

/** What is laid out for a batch of boards of one type. */
export interface BoardKit {
  readonly typeId: string;
  readonly boards: number;
  readonly lines: readonly BoardKitLine[];
}

/** So many of each kind of board are soldered together in one session. */
export interface SolderSession {
  readonly boards: readonly { readonly typeId: string; readonly count: number }[];
}

/** Minutes of one session in one way, by what they go into: minutes of work, of one person. */
export interface SolderMinutes {
  readonly setup: number;
  readonly stuff: number;
  readonly solder: number;
  readonly mask: number;
  readonly wash: number;
  readonly mend: number;
  readonly afterWash: number;
  readonly total: number;
}

/** By hand, or in the bath. */
export interface SolderChoice {
  readonly hand: SolderMinutes;
  /** Kinds for which the bath does not pay are soldered by hand within it. */
  readonly bath: SolderMinutes;
  /** Kinds that go into the bath, in code-point order: those that save time there, or all when none does. */
  readonly bathTypeIds: readonly string[];
  readonly better: SolderWay;
  /** Machines' worth of boards from which the bath takes fewer minutes; null: at no quantity up to 10 000. */
  readonly crossing: number | null;
  /** Boards of the session at that quantity. */
  readonly crossingBoards: number | null;
}

/** Minutes of a session with the boards of so many machines. */
export interface SolderPoint {
  readonly machines: number;
  readonly boards: number;
  readonly handMinutes: number;
  readonly bathMinutes: number;
}

/** How the crossing quantity moves when times are shorter or longer than the shop believes. */
export interface SolderShift {
  /** Settings that are changed together. */
  readonly settings: readonly string[];
  readonly share: number;
  /** With the times shorter and longer by that share. */
  readonly shorter: number | null;
  readonly longer: number | null;
}
