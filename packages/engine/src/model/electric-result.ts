import type { Optimum } from "./harness.ts";

/** One corner of what a machine may be: a result is given at the nominal one and at the corners that are worst. */
export interface Corner {
  /** Contacts as bought, or at the end of their life. */
  readonly contacts: "new" | "worn";
  /** Supplies at the lower limit of their tolerance, as rated, at the upper limit. */
  readonly supply: "low" | "nominal" | "high";
  /** Conductors and windings at the shop's cold or hot temperature, or at 20 °C. */
  readonly temperature: "cold" | "nominal" | "hot";
}

/** A quantity at the nominal corner, and its least and most over all corners with the corner where that is. */
export interface Spread {
  readonly nominal: number;
  readonly least: number;
  readonly leastAt: Corner;
  readonly most: number;
  readonly mostAt: Corner;
}

/** A set of loads that may be on together by `activity` and `groups`, and is the worst for something. */
export interface Moment {
  /** Stable: the supply or the subject that it is worst for; `always` when nothing switched is on. */
  readonly id: string;
  /** Placed elements that are on, in code-point order. */
  readonly loadIds: readonly string[];
}

/** What a conductor carries: a wire, a mated or landed contact, a fuse, a link or a shunt of a board. */
export interface Carried {
  /** Resistance, with the temperature and the wear of the corner. */
  readonly ohm: Spread;
  /** What always flows: of boards, and of lamps and motors that nothing switches. */
  readonly steadyA: Spread;
  /** Root mean square over a minute of hard play: what heats it. */
  readonly rmsA: Spread;
  /** Largest current of any allowed moment. */
  readonly peakA: Spread;
  /** Voltage across it at its largest current. */
  readonly dropV: Spread;
  /** Moment of its largest current. */
  readonly momentId: string;
}

export interface LoadVolts {
  /** Placed element: a coil, motor, LED or board load. */
  readonly loadId: string;
  readonly itemId: string;
  readonly supplyId: string;
  /** Volts that it is made for. */
  readonly nominalV: number;
  /** Volts at its two points while it is on, alone and in its worst moment. */
  readonly aloneV: Spread;
  readonly worstV: Spread;
  /** Current that it draws then. */
  readonly amps: Spread;
  readonly momentId: string;
}

export interface SupplyBudget {
  readonly supplyId: string;
  readonly ratedA: number;
  /** What always flows: boards, and lamps that nothing switches. */
  readonly steadyA: Spread;
  /** Root mean square over a minute of hard play. */
  readonly rmsA: Spread;
  /** With every coil that may be held at its hold current. */
  readonly holdA: Spread;
  /** The most that any allowed moment draws. */
  readonly worstA: Spread;
  readonly momentId: string;
  /** Loads by their part of the worst moment, largest first. */
  readonly parts: readonly { readonly loadId: string; readonly amps: number }[];
}

/** A node of the circuit: a point on the item's side of its contact, a point on the wire's side, or a splice. */
export type CircuitNodeId = string;

/** Every supply-and-return network of the machine solved as circuits. */
export interface ElectricSolution {
  readonly corners: readonly Corner[];
  readonly moments: ReadonlyMap<string, Moment>;
  /** By wire id. */
  readonly wires: ReadonlyMap<string, Carried>;
  /** By point id: what passes from the wires into the item there. */
  readonly contacts: ReadonlyMap<string, Carried>;
  /** By placed element id: links, shunts, fuses and closed contacts. */
  readonly elements: ReadonlyMap<string, Carried>;
  readonly loads: ReadonlyMap<string, LoadVolts>;
  readonly supplies: ReadonlyMap<string, SupplyBudget>;
  /** Volts of each node against its supply's return: with nothing switched on, and least and most over all moments. */
  readonly volts: ReadonlyMap<CircuitNodeId, Spread>;
  /**
   * Worst values found, summed, against what no allowed set can exceed (`lowerBound` stands above the value here, as it
   * is a maximum); `gap` is 0 where the groups are disjoint or nested, and wherever the search came to its end.
   */
  readonly worst: Optimum;
  /** Loads that no way leads to from a source and back: they are left out. In book order. */
  readonly unfedIds: readonly string[];
  /** Diodes and LEDs that a moment or corner turns over, so that what is near them is not exact; usually none. */
  readonly unsettledIds: readonly string[];
}
