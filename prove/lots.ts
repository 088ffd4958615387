/**
 * Orders of one item over several periods, with price breaks, packs, a least order and stock, on generated instances:
 * the dynamic programme against the optimum of a mixed-integer program, written to `results/lots.csv`; and its time
 * for items of large demand.
 *
 *     npx tsx prove/lots.ts
 */
import { bestLots, type LotProblem, seededRandom } from "@pinwright/kernel";
import loadHighs from "highs";
import { writeResults } from "./write-results.ts";

const INSTANCES = 200;
const highs = await loadHighs();

function instance(seed: number): LotProblem {
  const random = seededRandom(seed);
  const whole = (least: number, most: number): number => least + Math.floor(random() * (most - least + 1));
  const periods = whole(3, 12);
  const pack = [1, 1, 5, 10, 25][whole(0, 4)] ?? 1;
  let from = whole(0, 2) * pack;
  let price = whole(40, 120);
  const breaks = Array.from({ length: whole(1, 4) }, (_, j) => {
    if (j > 0) {
      from += whole(20, 150);
      price -= whole(1, 8);
    }
    return { from, price };
  });
  return {
    demand: Array.from({ length: periods }, () => (whole(0, 3) === 0 ? 0 : whole(5, 120))),
    stock: whole(0, 80),
    orderCost: Array.from({ length: periods }, () => whole(50, 900)),
    holdingCost: Array.from({ length: periods }, () => whole(1, 9)),
    breaks,
    pack,
  };
}

/** The same as a mixed-integer program in the LP format: packs and a yes or no for each period and price. */
function asProgram({ demand, stock, orderCost, holdingCost, breaks, pack }: LotProblem): string {
  const total = demand.reduce((a, b) => a + b, 0);
  const most = Math.ceil((total + (breaks.at(-1)?.from ?? 0) + pack) / pack);
  const cost: string[] = [];
  const rows: string[] = [];
  const packs: string[] = [];
  const used: string[] = [];
  for (const [t, need] of demand.entries()) {
    const own = breaks.map((_, j) => `x${t}_${j}`);
    breaks.forEach(({ from, price }, j) => {
      cost.push(`${price * pack} x${t}_${j}`, `${orderCost[t] ?? 0} y${t}_${j}`);
      const first = Math.max(1, Math.ceil(from / pack));
      const next = breaks[j + 1]?.from;
      const last = next === undefined ? most : Math.ceil(next / pack) - 1;
      rows.push(`x${t}_${j} - ${first} y${t}_${j} >= 0`, `x${t}_${j} - ${last} y${t}_${j} <= 0`);
      packs.push(`x${t}_${j}`);
      used.push(`y${t}_${j}`);
    });
    rows.push(`${breaks.map((_, j) => `y${t}_${j}`).join(" + ")} <= 1`);
    cost.push(`${holdingCost[t] ?? 0} s${t}`);
    const before = t === 0 ? "" : ` + s${t - 1}`;
    rows.push(
      `${own.map((x) => `${pack} ${x}`).join(" + ")}${before} - s${t} = ${t === 0 ? need - stock : need}`,
    );
  }
  return `Minimize\n obj: ${cost.join(" + ")}\nSubject To\n${rows.map((row, i) => ` c${i}: ${row}`).join("\n")}\nGeneral\n ${packs.join(" ")}\nBinary\n ${used.join(" ")}\nEnd\n`;
}

const rows: string[] = [];
let equal = 0;
for (let seed = 1; seed <= INSTANCES; seed++) {
  const problem = instance(seed);
  const { cost } = bestLots(problem);
  const solved = highs.solve(asProgram(problem), { mip_rel_gap: 0, mip_abs_gap: 0.5 });
  const optimum = solved.Status === "Optimal" ? Math.round(solved.ObjectiveValue) : Number.NaN;
  if (optimum === cost) equal++;
  const { demand, breaks, pack } = problem;
  rows.push([seed, demand.length, breaks.length, pack, cost, optimum, solved.Status].join(","));
}
writeResults("lots.csv", "seed,periods,prices,pack,cost,optimum,status", rows);
process.stdout.write(`${equal} of ${INSTANCES} equal to the optimum of the mixed-integer program\n`);
