/**
 * Routes generated lane graphs of every kind with the search that the line uses, proves the optimum of each with a
 * mixed-integer program, and writes what came out to `results/route.csv`.
 *
 *     npx tsx prove/route.ts
 */
import { mkdirSync, writeFileSync } from "node:fs";
import { measureRoute, routeLowerBound, searchRoute, usualSteps } from "@pinwright/engine";
import { INSTANCE_KINDS, type InstanceSize, routeInstance, routeMilp } from "@pinwright/jobs";

const SIZES: readonly InstanceSize[] = [
  { spots: 16, landings: 6, wires: 8 },
  { spots: 20, landings: 6, wires: 12 },
  { spots: 24, landings: 5, wires: 10 },
  { spots: 30, landings: 6, wires: 12 },
  { spots: 40, landings: 5, wires: 12 },
];
const VARIANTS = [0, 1, 2, 3, 4, 5];
const SECONDS_EACH = 15;

async function prove(): Promise<void> {
  const lines = [
    "instance,spots,lanes,landings,wires,searched_min,milp_min,milp_bound_min,quick_bound_min,over_pct,status",
  ];
  const over: number[] = [];
  for (const [i, kind] of INSTANCE_KINDS.entries())
    for (const [k, variant] of VARIANTS.entries())
      for (const shift of [0, 2]) {
        const size = SIZES[(i + k + shift) % SIZES.length] ?? { spots: 16, landings: 6, wires: 8 };
        const number = variant + VARIANTS.length * shift;
        const problem = routeInstance(kind, size, number);
        const found = searchRoute(problem, { steps: usualSteps(problem), seed: 1 });
        if (found === null) throw new Error(`${kind} ${number}: not joined`);
        const { totalMin, penaltyMin } = measureRoute(problem, found);
        const start = penaltyMin === 0 ? { start: found } : {};
        const proof = await routeMilp(problem, { seconds: SECONDS_EACH, ...start });
        const best = proof.status === "optimal" ? proof.valueMin : null;
        const overPct = best === null ? null : 100 * (totalMin / best - 1);
        if (overPct !== null) over.push(overPct);
        const cells = [
          `${kind}-${number}`,
          size.spots,
          problem.lanes.length,
          size.landings,
          size.wires,
          penaltyMin > 0 ? "rule broken" : totalMin.toFixed(4),
          proof.valueMin?.toFixed(4) ?? "none",
          proof.boundMin.toFixed(4),
          routeLowerBound(problem).toFixed(4),
          overPct?.toFixed(3) ?? "",
          proof.status,
        ];
        lines.push(cells.join(","));
        process.stdout.write(`${cells.join(" ")}\n`);
      }
  const mean = over.reduce((sum, x) => sum + x, 0) / over.length;
  process.stdout.write(
    `${over.length} proven optima; above them: mean ${mean.toFixed(3)} %, worst ${Math.max(...over).toFixed(3)} %\n`,
  );
  mkdirSync(new URL("results/", import.meta.url), { recursive: true });
  writeFileSync(new URL("results/route.csv", import.meta.url), `${lines.join("\n")}\n`);
}

await prove();
