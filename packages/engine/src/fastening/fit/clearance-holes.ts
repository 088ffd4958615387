/** Clearance holes of one thread, mm. */
export interface ClearanceHole {
  readonly threadMm: number;
  readonly fineMm: number;
  readonly mediumMm: number;
  readonly coarseMm: number;
}

/**
 * Clearance holes for metric threads: series H12, H13, H14 of ISO 273. Source: "Clearance holes to ISO 273",
 * https://engineeringhardware.com/?p=50.
 */
const CLEARANCE_HOLES: readonly ClearanceHole[] = [
  { threadMm: 2, fineMm: 2.2, mediumMm: 2.4, coarseMm: 2.6 },
  { threadMm: 2.5, fineMm: 2.7, mediumMm: 2.9, coarseMm: 3.1 },
  { threadMm: 3, fineMm: 3.2, mediumMm: 3.4, coarseMm: 3.6 },
  { threadMm: 3.5, fineMm: 3.7, mediumMm: 3.9, coarseMm: 4.2 },
  { threadMm: 4, fineMm: 4.3, mediumMm: 4.5, coarseMm: 4.8 },
  { threadMm: 5, fineMm: 5.3, mediumMm: 5.5, coarseMm: 5.8 },
  { threadMm: 6, fineMm: 6.4, mediumMm: 6.6, coarseMm: 7 },
  { threadMm: 8, fineMm: 8.4, mediumMm: 9, coarseMm: 10 },
  { threadMm: 10, fineMm: 10.5, mediumMm: 11, coarseMm: 12 },
];

/**
 * The clearance hole of the thinnest listed thread that is not thinner than this one: a 2.9 mm screw goes through the
 * hole of M3. Null beyond the table.
 */
export const clearanceHole = (threadMm: number): ClearanceHole | null =>
  CLEARANCE_HOLES.find((row) => row.threadMm >= threadMm - 1e-9) ?? null;
