/** Whether more is better, so that the bound lies above. */
const isValue = (family: string): boolean => family === "constrained" || family === "unconstrained";

interface Group {
  runs: number;
  reached: number;
  better: number;
  worst: number;
  proved: number;
  gaps: number;
  seconds: number;
}

/** Rows of `guillotine.csv` by family and rules: runs, how many reached the published value, excess, gaps, seconds. */
export const summarise = (rows: readonly string[]): string[] => {
  const groups = new Map<string, Group>();
  for (const row of rows) {
    const [family = "", , cuts, orientation, published, , reference, found, bound, , seconds] =
      row.split(",");
    const key = [family, cuts, orientation, reference].join(",");
    const group = groups.get(key) ?? {
      runs: 0,
      reached: 0,
      better: 0,
      worst: 0,
      proved: 0,
      gaps: 0,
      seconds: 0,
    };
    groups.set(key, group);
    const sign = isValue(family) ? -1 : 1;
    const excess = sign * (Number(found) - Number(published));
    const gap = sign * (Number(found) - Number(bound));
    group.runs++;
    if (excess <= 0) group.reached++;
    if (excess < 0) group.better++;
    group.worst = Math.max(group.worst, excess);
    if (gap === 0) group.proved++;
    group.gaps += gap / Number(found);
    group.seconds = Math.max(group.seconds, Number(seconds));
  }
  return [...groups].map(([key, { runs, reached, better, worst, proved, gaps, seconds }]) =>
    [key, runs, reached, better, worst, proved, ((100 * gaps) / runs).toFixed(3), seconds].join(","),
  );
};
