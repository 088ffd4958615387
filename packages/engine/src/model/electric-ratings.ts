/** What one wire may carry all the time, and how that is made up. */
export interface WireRating {
  readonly wireId: string;
  /** Limit of its conductor by itself: the table's. */
  readonly singleA: number;
  /** Share that it keeps with its insulation in the machine's air. */
  readonly ambientShare: number;
  /** Branch that is worst for it, with the wires in it and the share of their limits that they use, 0 to 1. */
  readonly branchId: string;
  readonly wires: number;
  readonly loading: number;
  readonly bundleShare: number;
  /** single × ambient × bundle. */
  readonly limitA: number;
  readonly rmsA: number;
  /** rms over limit. */
  readonly share: number;
}

/** What protection asks of a wire. */
export interface WireStrain {
  /** Rating of the largest fuse that it lies behind without another between; 0 behind none. */
  readonly fuseA: number;
  /** Part of what it stands that the worst short circuit uses. */
  readonly shortUsed: number;
}

/** What one contact may carry all the time. */
export interface ContactRating {
  readonly pointId: string;
  /** Of its family, for one contact by itself. */
  readonly ratedA: number;
  /** Contacts that would warm its housing as much at the largest current of one of them, and its cavities. */
  readonly loaded: number;
  readonly ways: number;
  readonly contactShare: number;
  readonly limitA: number;
  readonly rmsA: number;
  readonly share: number;
}

/** A short circuit at the far end of what a fuse protects, or of what nothing protects but the supply. */
export interface ShortRating {
  readonly supplyId: string;
  /** Node of the circuit that is shorted to its return. */
  readonly nodeId: string;
  /** Way there and back. */
  readonly loopOhm: number;
  /** volts ÷ loop, before any limit acts; what the supply holds then, and the I²t of what it has stored. */
  readonly firstA: number;
  readonly heldA: number;
  readonly storedA2s: number;
  /** Latest time at which it is open; endless when it never opens. */
  readonly opensS: number;
  readonly letThroughA2s: number;
}

/** The wire that a short circuit harms first. */
export interface WeakWire {
  readonly wireId: string;
  readonly areaMm2: number;
  /** k of its insulation, from its own limit of temperature on, and k²S². */
  readonly k: number;
  readonly adiabaticA2s: number;
  readonly limitA: number;
  /** Seconds that it stands the held current. */
  readonly harmS: number;
  /** Part of what it stands that the short circuit uses: harm from 1 on. */
  readonly used: number;
  readonly short: ShortRating;
}

export interface FuseRating {
  /** Placed element. */
  readonly elementId: string;
  /** Row of `fuses`; null for a resettable fuse of a board. */
  readonly fuseId: string | null;
  readonly supplyId: string;
  readonly ratedA: number;
  readonly speed: "ff" | "f" | "m" | "t" | "tt" | "resettable";
  readonly rmsA: number;
  readonly ambientShare: number;
  /** Rating that the steady current asks for. */
  readonly steadyA: number;
  readonly peakA: number;
  /** Longest pulse in it, and its I²t: the loads that are on then, each for its own pulse. */
  readonly pulseMs: number;
  readonly pulseA2s: number;
  readonly pulses: number;
  readonly pulseShare: number;
  /** Melting I²t that the pulses ask for, and what it has; null where no pulse passes or nothing is known. */
  readonly neededA2s: number | null;
  readonly meltingA2s: number | null;
  /** Preferred rating that steady current and pulses ask for; null above the series. */
  readonly requiredA: number | null;
  /** Current that it has to break in a short circuit right behind it; 0 when it never opens. */
  readonly breaksA: number;
  readonly breakingA: number | null;
  /** At the upper end of the supply's tolerance; and nominal, against the fuse's rated voltage. */
  readonly volts: number;
  readonly nominalV: number;
  readonly ratedV: number | null;
  /** The short circuit that is slowest to open it. */
  readonly far: ShortRating | null;
  /** The wire behind it with the least lasting limit, and the one that a short circuit harms first. */
  readonly thinnest: { readonly wireId: string; readonly limitA: number } | null;
  readonly weakest: WeakWire | null;
}

/** A wire before the first fuse: only its supply's limit protects it. */
export interface UnfusedWire {
  readonly wireId: string;
  readonly supplyId: string;
  readonly lengthMm: number;
  readonly limitA: number;
  /** What flows into a short circuit at its far end. */
  readonly heldA: number;
  readonly firstA: number;
}

export interface CoilRating {
  /** Placed element. */
  readonly elementId: string;
  readonly itemId: string;
  readonly supplyId: string;
  readonly volts: number;
  /** As the book says, and as its winding makes it; null where the winding is not told. */
  readonly ohm20C: number;
  readonly windingOhm: number | null;
  /** In the coldest and hottest state: the winding at the shop's cold, and at its class limit. */
  readonly mostA: number;
  readonly leastA: number;
  readonly ampereTurns: number | null;
  /** Ideal pull at the start of the stroke: an indication only. */
  readonly forceN: number | null;
  readonly storedJ: number | null;
  /** Heat-equal share of the time at full voltage over a minute of hard play, and what is allowed. */
  readonly duty: number;
  readonly allowedDuty: number | null;
  readonly limitC: number | null;
  /** Rise over the air for each watt, and mean heat. */
  readonly kelvinPerWatt: number | null;
  readonly meanW: number;
  /** Longest hold at its hold duty from a warm start, and what the book asks for. */
  readonly holdS: number | null;
  readonly askedHoldS: number;
  /** Stuck on from a warm start: until its class limit; null where its heat is not told. */
  readonly stuckS: number | null;
  /** Until its fuse opens, endless when it never does; null without a fuse. */
  readonly fuseS: number | null;
  readonly fuseElementId: string | null;
  readonly fuseRatedA: number | null;
  readonly timeoutS: number | null;
  /** Driven on one side alone, so that its field needs a way out. */
  readonly needsDiode: boolean;
  readonly diode: DiodeRating | null;
}

/** The diode or clamp that takes a coil's field. */
export interface DiodeRating {
  readonly elementId: string;
  readonly peakA: number;
  readonly ratedPeakA: number | null;
  /** Mean over pulses at their shortest distance; null where inductance or distance are not told. */
  readonly meanA: number | null;
  readonly ratedA: number | null;
  readonly volts: number;
  readonly blockV: number | null;
  readonly decayMs: number | null;
}

export interface LampRating {
  /** Placed element. */
  readonly elementId: string;
  readonly itemId: string;
  readonly volts: number;
  readonly forwardV: number;
  readonly ohm: number;
  /** Most current while it is on, its share of the time, and what the book says. */
  readonly amps: number;
  readonly duty: number;
  readonly ratedA: number | null;
  readonly peakA: number | null;
  /** Heat of its resistor, and what that is made for. */
  readonly watts: number;
  readonly ratedW: number | null;
  /** Resistor of the E24 series for the book's current. */
  readonly e24Ohm: number | null;
}

/** What all lamps of one driver board draw when all are on. */
export interface LampBoardRating {
  readonly itemId: string;
  readonly lamps: number;
  readonly amps: number;
}

export interface SupplyRating {
  readonly supplyId: string;
  readonly ratedA: number;
  readonly limitA: number | null;
  readonly steadyA: number;
  readonly rmsA: number;
  readonly holdA: number;
  readonly worstA: number;
  /** Rated current less the larger of rms and hold. */
  readonly headroomA: number;
}

/** A section of a net on the way to its end with the largest drop. */
export interface DropSection {
  readonly wireId: string;
  readonly amps: number;
  readonly ohm: number;
  readonly dropV: number;
}

/** Drop of a net between where it is fed and its worst end. */
export interface NetDrop {
  readonly netId: string;
  readonly fromPointId: string;
  readonly toPointId: string;
  readonly dropV: number;
  readonly limitV: number;
  readonly nominalV: number;
  readonly sections: readonly DropSection[];
}

/** Everything electrical held against what it is made for. */
export interface ElectricRatings {
  readonly wires: ReadonlyMap<string, WireRating>;
  readonly strains: ReadonlyMap<string, WireStrain>;
  readonly contacts: ReadonlyMap<string, ContactRating>;
  /** By placed element id. */
  readonly fuses: ReadonlyMap<string, FuseRating>;
  readonly unfused: readonly UnfusedWire[];
  readonly coils: ReadonlyMap<string, CoilRating>;
  readonly lamps: ReadonlyMap<string, LampRating>;
  readonly lampBoards: ReadonlyMap<string, LampBoardRating>;
  readonly supplies: ReadonlyMap<string, SupplyRating>;
  readonly drops: ReadonlyMap<string, NetDrop>;
}
