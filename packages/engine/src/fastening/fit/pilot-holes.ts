import { roundTo } from "@pinwright/kernel";

/** A gauge of wood screw: shank and root of its thread. */
interface WoodScrewGauge {
  readonly gauge: number;
  readonly shankMm: number;
  readonly rootMm: number;
}

/**
 * Shank and root of wood screws by gauge. Source: "Wood-screw pilot holes compared; American Wood Council 70 % / 90 % of
 * root", https://l-36.com/woodscrewpilot.php, which gives them in inches (0.112/0.075, 0.138/0.094, 0.164/0.112,
 * 0.190/0.130, 0.216/0.148, 0.242/0.165).
 */
const WOOD_SCREW_GAUGES: readonly WoodScrewGauge[] = [
  { gauge: 4, shankMm: 2.84, rootMm: 1.9 },
  { gauge: 6, shankMm: 3.51, rootMm: 2.39 },
  { gauge: 8, shankMm: 4.17, rootMm: 2.84 },
  { gauge: 10, shankMm: 4.83, rootMm: 3.3 },
  { gauge: 12, shankMm: 5.49, rootMm: 3.76 },
  { gauge: 14, shankMm: 6.15, rootMm: 4.19 },
];

/** Pilot hole over root of the thread: the rule of the American Wood Council in the same source. */
const PILOT_OF_ROOT = { softwood: 0.7, hardwood: 0.9 } as const;

export type Wood = keyof typeof PILOT_OF_ROOT;

/**
 * How far charts differ from the rule, mm. The source's own drills are the next 1/64 in below it; other charts that it
 * compares run up to 1/32 in larger.
 */
const CHART_BELOW_MM = 25.4 / 64;
const CHART_ABOVE_MM = 25.4 / 32;

/** Metric twist drills come in steps of so many mm (ISO 235, DIN 338; from memory). */
const DRILL_STEP_MM = 0.1;

export interface PilotHole {
  /** By the rule, mm. */
  readonly diameterMm: number;
  /** The nearest drill, mm. */
  readonly drillMm: number;
  /** What the charts allow, mm. */
  readonly allowedMm: readonly [least: number, most: number];
}

/**
 * Root of a wood screw's thread by its shank, mm: between two gauges of the table in proportion, so that metric sizes
 * have one. Null for a shank thinner or thicker than the table has.
 */
export function rootDiameterMm(shankMm: number): number | null {
  for (let i = 1; i < WOOD_SCREW_GAUGES.length; i++) {
    const [a, b] = [WOOD_SCREW_GAUGES[i - 1], WOOD_SCREW_GAUGES[i]];
    if (a === undefined || b === undefined || shankMm < a.shankMm || shankMm > b.shankMm) continue;
    const share = (shankMm - a.shankMm) / (b.shankMm - a.shankMm);
    return a.rootMm + share * (b.rootMm - a.rootMm);
  }
  return null;
}

/** The pilot hole of a wood screw of this shank; null when the table has no such size. */
export function pilotHole(shankMm: number, wood: Wood): PilotHole | null {
  const rootMm = rootDiameterMm(shankMm);
  if (rootMm === null) return null;
  const diameterMm = rootMm * PILOT_OF_ROOT[wood];
  return {
    diameterMm,
    drillMm: roundTo(diameterMm, DRILL_STEP_MM),
    allowedMm: [diameterMm - CHART_BELOW_MM, diameterMm + CHART_ABOVE_MM],
  };
}
