import type { Spread } from "../../model/index.ts";
import { same, spreadOf } from "./corners.ts";
import { baseAt, isSteady, voltsRows } from "./rows.ts";
import type { SolvedIsland } from "./solved-island.ts";
import { valueAt } from "./worst.ts";

/**
 * Volts of every node of an island against its return: at the nominal corner with every unit off, and the least and
 * most over all corners, with every unit off and in the moments that take most from it and add most to it.
 */
export function nodeVolts(solved: SolvedIsland): ReadonlyMap<string, Spread> {
  const { network, returns } = solved.task;
  const volts = new Map<string, Spread>();
  network.island.nodes.forEach((node, n) => {
    const rows = voltsRows(solved.states, n, returns[n] ?? 0);
    if (isSteady(rows)) {
      volts.set(
        node,
        spreadOf((c) => baseAt(rows, c)),
      );
      return;
    }
    const { up, down } = solved.worst.extremes(rows);
    const most = spreadOf((c) => Math.max(baseAt(rows, c), valueAt(rows, c, up)));
    const least = spreadOf((c) => Math.min(baseAt(rows, c), valueAt(rows, c, down)));
    volts.set(node, {
      nominal: baseAt(rows, 0),
      least: least.least,
      leastAt: least.leastAt,
      most: most.most,
      mostAt: most.mostAt,
    });
  });
  for (const [node, from] of network.island.dangling) volts.set(node, volts.get(from) ?? same(0));
  return volts;
}
