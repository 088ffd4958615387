/**
 * Balances every benchmark line with the usual effort and writes values and bounds beside the published optima to
 * `results/balance.csv`, the stations to `results/balance-plans.csv`.
 *
 *     npx tsx prove/balance.ts
 */
import { fewestStations, leastTakt } from "@pinwright/kernel";
import { readLine } from "../packages/kernel/src/optimise/balance/testing/instance.ts";
import { balanceInstances } from "./balance-instances.ts";
import { writeResults } from "./write-results.ts";

const rows: string[] = [];
const plans: string[] = [];
for (const { name, problem, given, file, optimum, checked } of balanceInstances()) {
  const line = readLine(file);
  const found = problem === "SALBP-1" ? fewestStations(line, given) : leastTakt(line, given);
  if (!found.found) throw new Error(`no plan for ${name} ${problem} ${given}`);
  const { value, lowerBound, steps, stations } = found;
  const row = [name, line.times.length, problem, given, value, lowerBound, optimum, checked, steps].join(",");
  process.stdout.write(`${row}\n`);
  rows.push(row);
  plans.push(`${name},${problem},${given},${stations.map((tasks) => tasks.join(" ")).join(";")}`);
}
writeResults("balance.csv", "instance,tasks,problem,given,value,bound,published,checked,steps", rows);
writeResults("balance-plans.csv", "instance,problem,given,stations", plans);
