import type { BoxMm } from "@pinwright/kernel";
import type { Optimum } from "./harness.ts";
import type { PanelPoint, Side } from "./machine.ts";

/**
 * What fills space at a panel: a prism over an area of the panel. Heights are counted from the panel's top face, up
 * being positive, on either side: the underside of a panel of 13 mm lies at −13, and what hangs 40 mm below it reaches
 * down to −53.
 */
export interface Solid {
  /** `item`, or `item#part` where an item is made of several. */
  readonly id: string;
  /** The item that is put in as a whole: a device within a mechanism belongs to the mechanism. */
  readonly itemId: string;
  readonly kind: "device" | "board" | "mechanism" | "inline" | "fastener";
  readonly panelId: string;
  /** Side that its item is fixed to; the solid itself may be on the other. */
  readonly side: Side;
  /** Corners in the panel's frame, anticlockwise. */
  readonly ring: readonly PanelPoint[];
  readonly box: BoxMm;
  readonly lowMm: number;
  readonly highMm: number;
  /** It is the sweep of something that moves. */
  readonly moves: boolean;
}

/** How a fastener holds, at the wood that is there. */
export interface FastenerFit {
  readonly fastenerId: string;
  readonly holdsIn: "wood" | "nut" | "tapped" | "nothing";
  /** Depth of a pocket or groove on the driven side under its head; 0: the face itself. */
  readonly recessMm: number;
  /** Wood from there to the far face, or to the floor of a pocket, groove or hole that comes from the far side. */
  readonly woodMm: number;
  /** How deep its point goes below the driven face (or the floor of the recess), less than 0 when it does not reach it. */
  readonly reachMm: number;
  /** Length of thread that holds. */
  readonly engagedMm: number;
  readonly leastEngagedMm: number;
  /** From its point to the end of the wood; less than 0: it comes out. Null for one that is to go through. */
  readonly leftMm: number | null;
  /** Pilot or clearance hole to be drilled; null: none. */
  readonly hole: FastenerHole | null;
}

export interface FastenerHole {
  readonly kind: "pilot" | "clearance";
  readonly diameterMm: number;
  /** What the published table allows; null: the table has no such size. */
  readonly allowedMm: readonly [least: number, most: number] | null;
  /** Depth from the driven face; null: right through. */
  readonly depthMm: number | null;
}

/** The room that tool and hand need to drive a fastener. */
export interface DriverReach {
  readonly fastenerId: string;
  /** Tool of the shop that reaches it past the fewest things; null: the shop has none that fits. */
  readonly driverId: string | null;
  /** Items that stand in that room when they are in place, in code-point order; not the one that it holds. */
  readonly inWay: readonly string[];
  /** The same for the spanner on the nut's side; null and empty when there is no nut to be held. */
  readonly nutDriverId: string | null;
  readonly nutInWay: readonly string[];
  /** The item that it holds is itself in the way: it can never be driven once that is in place. */
  readonly ownInWay: boolean;
  /** Items that come off first, in that order, to take it out of the finished machine. */
  readonly comesOff: readonly string[];
}

/** Shapes that screws are told apart by. */
export type SymbolShape =
  | "circle"
  | "square"
  | "triangle"
  | "diamond"
  | "cross"
  | "star"
  | "moon"
  | "drop"
  | "half"
  | "bar"
  | "hourglass"
  | "arrow";

/** How a shape is filled; told apart in black and white. */
export type SymbolShade = "open" | "solid" | "striped" | "dotted";

/** The sign of a fastener type on every map, card and box. */
export interface ScrewSymbol {
  readonly typeId: string;
  /** One or two capital letters, each used once. */
  readonly letter: string;
  readonly shape: SymbolShape;
  readonly shade: SymbolShade;
}

/** Everything that is known about how the machine is screwed together. */
export interface FasteningResult {
  /** By item that is put in as a whole. */
  readonly solids: ReadonlyMap<string, readonly Solid[]>;
  readonly fits: ReadonlyMap<string, FastenerFit>;
  readonly reaches: ReadonlyMap<string, DriverReach>;
  /** By fastener type; of the types that are used. */
  readonly symbols: ReadonlyMap<string, ScrewSymbol>;
  /** How much alike the symbols of types are that are easily taken for each other. */
  readonly symbolLikeness: Optimum;
}
