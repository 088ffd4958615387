/** Least force at which a crimped contact may come off its wire, newtons. */
export interface PullForce {
  readonly awg: number;
  readonly newton: number;
  readonly source: string;
}

const COMMERCIAL = "UL 486A values, as in a contact maker's application specification";
const SECOND_TABLE = "UL 486A values, as in a contact maker's table of test values";

/** Commercial pull-off forces by gauge, thinnest first. Copied in `testing/crimp-pull-force.csv` with its sources. */
export const CRIMP_PULL_FORCES: readonly PullForce[] = (
  [
    [30, 6.7, "from memory"],
    [28, 8.9, SECOND_TABLE],
    [26, 13.4, COMMERCIAL],
    [24, 22.3, COMMERCIAL],
    [22, 35.6, COMMERCIAL],
    [20, 57.9, COMMERCIAL],
    [18, 89, COMMERCIAL],
    [16, 133.5, COMMERCIAL],
    [14, 222.5, COMMERCIAL],
    [12, 311.5, COMMERCIAL],
    [10, 356, COMMERCIAL],
    [8, 400.5, SECOND_TABLE],
  ] as const
).map(([awg, newton, source]) => ({ awg, newton, source }));
