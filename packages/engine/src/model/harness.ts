import type { BookRow } from "@pinwright/book";
import type { Languages, PanelPoint, Place, Side } from "./machine.ts";

export type NetClass = BookRow<"nets">["class"];

/** A result of an optimisation, beside what nothing can beat. `gap` is (value − bound) ÷ bound, 0 when both are 0. */
export interface Optimum {
  readonly value: number;
  readonly lowerBound: number;
  readonly gap: number;
}

/** A joint of wires within a harness. Its id is `splice:net:harness:n`, n counting from 1 in the net and harness. */
export interface Splice {
  readonly id: string;
  readonly netId: string;
  readonly harnessId: string;
}

/** One physical wire between two points, or between a point and a splice. */
export interface Wire {
  /** `net|harness|a|b` with a < b in code-point order: stable when an unrelated row changes. */
  readonly id: string;
  /** Number printed on its label within the harness: settled, else the next free one. */
  readonly number: number;
  readonly netId: string;
  readonly netClass: NetClass;
  readonly harnessId: string;
  /** Point id or splice id. */
  readonly a: string;
  readonly b: string;
  readonly wireType: BookRow<"wire_types">;
  readonly cableId: string | null;
  readonly core: number | null;
}

/** All wires of one harness, before they are laid anywhere. */
export interface HarnessWires {
  readonly harnessId: string;
  readonly wires: readonly Wire[];
  readonly splices: readonly Splice[];
  /** Straight-line metres of the chosen chains and stars against a bound. */
  readonly order: Optimum;
}

/** A node of a harness tree: a waypoint that it passes, or a landing at the end of a tail. */
export interface TreeNode {
  /** Waypoint id, or `landing:` and the landing id. */
  readonly id: string;
  readonly kind: "waypoint" | "landing";
  readonly place: Place;
  /** More than two branches meet here: the builder forms, pegs and ties a breakout, or several at a crowded place. */
  readonly breakout: boolean;
}

/** An edge of a harness tree: along a lane, over a crossing, or a tail to a landing. */
export interface Branch {
  /** Lane id, crossing id, or `tail:` and the landing id. */
  readonly id: string;
  readonly kind: "lane" | "crossing" | "tail";
  /** `a` is nearer to the root. */
  readonly a: string;
  readonly b: string;
  /** As it lies in the machine, before rounding, without service loop. */
  readonly routeMm: number;
}

/** Where a harness runs: a tree, and for every wire the branches that it follows. */
export interface HarnessRoute {
  readonly harnessId: string;
  /** Node that branches are directed from. */
  readonly rootId: string;
  readonly nodes: readonly TreeNode[];
  readonly branches: readonly Branch[];
  /** For each wire id the ids of its branches, from `a` to `b`. */
  readonly paths: ReadonlyMap<string, readonly string[]>;
  /** Node at which each splice lies. */
  readonly spliceAt: ReadonlyMap<string, string>;
  /** Landings that no lane leads to; their wires are missing from `paths`. */
  readonly unreached: readonly string[];
  readonly work: RouteWork;
}

/**
 * A route without its lengths and places: which way every wire goes, and what lies where. It stays the same while
 * things are moved about, until a tail or a lane is another one.
 */
export interface RouteCourse
  extends Pick<HarnessRoute, "harnessId" | "rootId" | "paths" | "spliceAt" | "unreached"> {
  readonly branches: readonly Omit<Branch, "routeMm">[];
}

/** What a route costs the shop. Minutes count first; the price of a metre is `lay_wire_m_min`. */
export interface RouteWork {
  readonly breakouts: number;
  readonly ties: number;
  readonly insertions: number;
  readonly splices: number;
  readonly minutes: number;
  readonly metres: number;
  /** minutes + metres × `lay_wire_m_min`, with a bound that no route of this harness can beat. */
  readonly total: Optimum;
}

/** A branch with its length on the pinboard and what lies in it. */
export interface SizedBranch extends Branch {
  /** With dressing and service loop where it is a tail, rounded up to the shop's step; wires follow from it. */
  readonly lengthMm: number;
  readonly wireIds: readonly string[];
  readonly bundle: Bundle;
}

/** A bundle of round wires. */
export interface Bundle {
  readonly wires: number;
  /** Diameter of the smallest circle found round a valid packing. */
  readonly packedMm: number;
  /** √Σd², and the sum of the two thickest: no packing is smaller than the larger of them. */
  readonly lowerBoundMm: number;
  /** 1.2 √Σd², the rule of thumb. */
  readonly ruleMm: number;
  /** packed × the shop's laid factor: what holes, ties and clips are chosen by. */
  readonly laidMm: number;
  readonly tieId: string | null;
  readonly sleeveId: string | null;
}

/** A wire with the length to cut and its colour. */
export interface SizedWire extends Wire {
  /** Branch ids from a to b. */
  readonly path: readonly string[];
  /** Finished length, holder to holder: the sum of the branch lengths. */
  readonly finishedMm: number;
  /** Length to cut: finished length, bare conductor at both ends and trim allowance, rounded up to the cutting step. */
  readonly cutMm: number;
  /** Allowed deviation of the finished length: −0 and this. */
  readonly tolerancePlusMm: number;
  /** Ends that are crimped at the cutting bench: the other one is trimmed at its holder and crimped there. */
  readonly crimpedFirst: "a" | "b" | "both" | "none";
  /** IEC 60757 code: base, then stripe. */
  readonly colour: string;
}

/** One harness, worked out: what its sheets are made from. */
export interface HarnessResult {
  readonly harness: BookRow<"harnesses">;
  readonly labels: Languages;
  readonly wires: readonly SizedWire[];
  readonly splices: readonly Splice[];
  readonly route: HarnessRoute;
  readonly branches: readonly SizedBranch[];
  /** Landings of this harness in code-point order of their ids. */
  readonly landingIds: readonly string[];
  readonly colours: Optimum;
  readonly pinboard: Pinboard;
}

/** A place on the pinboard in mm, x right, y up, origin at the lower left corner of the board. */
export interface BoardPoint {
  readonly xMm: number;
  readonly yMm: number;
}

export interface PinboardNode {
  /** Tree node id. */
  readonly id: string;
  readonly at: BoardPoint;
  readonly peg: boolean;
}

/** A branch as drawn: from peg to peg, straight unless it is bent round further pegs to fit the board. */
export interface PinboardBranch {
  readonly id: string;
  /** From the branch's `a` to its `b`; exactly `lengthMm` long. */
  readonly line: readonly BoardPoint[];
  readonly lengthMm: number;
  /** Distance of each tie from the branch's start. */
  readonly tiesMm: readonly number[];
}

/** A holder: where a housing or a device's wire ends are held, drawn from the wire-entry side. */
export interface PinboardHolder {
  readonly landingId: string;
  /** Middle of the face that the wires enter; the holder reaches on by `depthMm`, away from the harness. */
  readonly at: BoardPoint;
  /** Direction in which the wires leave the holder towards the harness. */
  readonly towardDeg: number;
  readonly widthMm: number;
  readonly depthMm: number;
}

/** The nail board of one harness: flat and true to scale. */
export interface Pinboard {
  readonly harnessId: string;
  readonly widthMm: number;
  readonly heightMm: number;
  /** `planar`: as it lies in the machine; `unfolded`: true lengths, other angles. */
  readonly kind: "planar" | "unfolded";
  /** The side it is seen from when it is planar; an underside is mirrored in x. */
  readonly side: Side;
  readonly nodes: readonly PinboardNode[];
  readonly branches: readonly PinboardBranch[];
  readonly holders: readonly PinboardHolder[];
  /** Bends of a branch round a peg that is not a node. */
  readonly bendPegs: readonly BoardPoint[];
  /** Pairs of branches that cross, holders that overlap: 0 when the board can be built. */
  readonly crossings: number;
  readonly overlaps: number;
  /** Area of the board against the least that its extents allow. */
  readonly area: Optimum;
}

/** Re-exported for chapters that draw. */
export type { PanelPoint };
