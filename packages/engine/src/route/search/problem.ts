/**
 * Routing of one harness as a plain problem of numbers. A *spot* is a place where lanes meet (a waypoint), a
 * *terminal* is what a wire ends at: the landings first, then the splices, in one numbering. Everything is
 * numbered by the caller in code-point order of its ids, so that ties which are broken by number are broken by id.
 */
export interface RouteProblem {
  readonly spots: number;
  readonly lanes: readonly ProblemLane[];
  readonly landings: readonly ProblemLanding[];
  readonly splices: readonly ProblemSplice[];
  readonly wires: readonly ProblemWire[];
  /** Number of wire classes; a wire's class is below it. */
  readonly classes: number;
  /** Pairs of classes that must not share a lane. */
  readonly apart: readonly (readonly [number, number])[];
  /** Minutes for one breakout. */
  readonly breakoutMin: number;
  /** Branches that one breakout lets go beside the two of a bundle that only passes; 1 or more. */
  readonly breakoutBranches: number;
  /** Minutes for a metre of wire. */
  readonly layMinPerM: number;
  /** Minutes that no route changes: insertions and splices. */
  readonly fixedMin: number;
}

export interface ProblemLane {
  readonly a: number;
  readonly b: number;
  readonly lengthMm: number;
  /** Work of the lane itself: its ties. */
  readonly minutes: number;
  /** Largest Σd² of the wires, mm², that still fits. */
  readonly maxSquareMm2: number;
  /** Classes that may not use it. */
  readonly forbidden: readonly number[];
}

/** A spot that a landing's tail may lead to. */
export interface ProblemCandidate {
  readonly spot: number;
  readonly lengthMm: number;
  /** Work of the tail itself. */
  readonly minutes: number;
}

export interface ProblemLanding {
  readonly candidates: readonly ProblemCandidate[];
}

export interface ProblemSplice {
  /** Spots at which it may lie. With exactly one, the tree has to lead there. */
  readonly places: readonly ProblemSplicePlace[];
}

export interface ProblemSplicePlace {
  readonly spot: number;
  /** Minutes that stand for a place where a splice should not lie; 0 for a good one. */
  readonly penaltyMin: number;
}

export interface ProblemWire {
  /** Terminal numbers; a jumper within one landing has twice the same and lies in no branch. */
  readonly a: number;
  readonly b: number;
  readonly classIndex: number;
  /** d², mm². */
  readonly squareMm2: number;
}

/**
 * Breakouts at a spot where `branches` lanes, crossings and tails meet: none up to two, then one for each
 * `breakoutBranches` more, or part of them. (A builder forms a breakout for a few branches; common practice, no
 * source.)
 */
export const breakoutsAt = (branches: number, breakoutBranches: number): number =>
  branches > 2 ? Math.ceil((branches - 2) / breakoutBranches) : 0;

/** A tree with every landing's tail and every splice's place. */
export interface RouteSolution {
  /** Lanes of the tree, ascending. */
  readonly lanes: readonly number[];
  /** For each landing the index of its candidate. */
  readonly attach: readonly number[];
  /** For each splice the index of its place. */
  readonly spliceAt: readonly number[];
}

/**
 * Minutes that stand for a broken rule, so that the search leaves a rule broken only where every tree breaks one.
 * They guide the search and are no part of the work that is reported. Our own choice, no source.
 */
export const PENALTY = {
  /** One wire on one lane that its class may not use. */
  forbiddenMin: 60,
  /** One overfull lane, and again for each whole measure of Σd² beyond what fits. */
  overfullMin: 20,
  /** One lane that is shared by classes that must be apart, and again for each metre of it. */
  apartMin: 10,
} as const;

/** Penalty of a lane whose wires have a Σd² of `squareMm2` where `maxSquareMm2` fits, minutes. */
export const overfullPenaltyMin = (squareMm2: number, maxSquareMm2: number): number =>
  squareMm2 <= maxSquareMm2 * (1 + 1e-9)
    ? 0
    : PENALTY.overfullMin * (1 + (squareMm2 - maxSquareMm2) / maxSquareMm2);

/** Penalty of a lane of `lengthMm` that is shared by classes that must be apart, minutes. */
export const apartPenaltyMin = (lengthMm: number): number => PENALTY.apartMin * (1 + lengthMm / 1000);
