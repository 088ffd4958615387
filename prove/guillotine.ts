/**
 * Cuts every benchmark instance with the usual effort under each set of rules that a value is published for, and writes values and bounds to
 * `results/guillotine.csv`, the plans of every 16th to `results/guillotine-plans.csv` and shares by family to
 * `results/guillotine-summary.csv`. Goes on behind the rows that are there, until so many seconds are over.
 *
 *     npx tsx prove/guillotine.ts 60
 */
import { existsSync, readFileSync } from "node:fs";
import { cutFaults, fewestSheets, mostValue, type SheetPlan } from "@pinwright/kernel";
import {
  readInstance,
  sheetProblem,
  valueProblem,
} from "../packages/kernel/src/optimise/guillotine/testing/instance.ts";
import { type GuillotineRun, guillotineRuns } from "./guillotine-instances.ts";
import { plansText } from "./guillotine-plan-text.ts";
import { summarise } from "./guillotine-summary.ts";
import { writeResults } from "./write-results.ts";

const PLAN_EVERY = 16;
/** For sets cut from one sheet, which as far as is known no guillotine cuts take from it: their steps never end early. */
const ONE_SHEET_EFFORT = { steps: 5_000_000, settingSteps: 0 };

interface Result {
  readonly value: number;
  readonly bound: number;
  readonly steps: number;
  readonly plans: readonly SheetPlan[];
}

const solve = ({ file, family, cuts, turning }: GuillotineRun): Result => {
  const instance = readInstance(file);
  if (family === "constrained" || family === "unconstrained") {
    const { value, upperBound, steps, part } = mostValue(valueProblem(instance, turning));
    return { value, bound: upperBound, steps, plans: [{ sheet: 0, part }] };
  }
  const problem = sheetProblem(instance, cuts === "3-stage" ? 3 : null, turning);
  const found = family === "one-sheet" ? fewestSheets(problem, ONE_SHEET_EFFORT) : fewestSheets(problem);
  if (!found.found) throw new Error(`no plan for ${file.pathname}`);
  if (cutFaults(found.plans, problem).length > 0) throw new Error(`faults in the plan for ${file.pathname}`);
  return { value: found.cost, bound: found.lowerBound, steps: found.steps, plans: found.plans };
};

const earlier = (name: string): string[] => {
  const url = new URL(`results/${name}`, import.meta.url);
  return existsSync(url) ? readFileSync(url, "utf8").trim().split("\n").slice(1) : [];
};

const seconds = Number(process.argv[2] ?? Number.POSITIVE_INFINITY);
const rows = earlier("guillotine.csv");
const plans = earlier("guillotine-plans.csv");
const begun = performance.now();
const runs = guillotineRuns();
for (let i = rows.length; i < runs.length && performance.now() - begun < seconds * 1000; i++) {
  const run = runs[i];
  if (run === undefined) break;
  const start = process.cpuUsage().user;
  const result = solve(run);
  const spent = ((process.cpuUsage().user - start) / 1e6).toFixed(2);
  const name = [run.family, run.instance, run.cuts, run.turning ? "turning" : "fixed"];
  const published = [run.value, run.proven ? "proven" : "best known", run.reference];
  rows.push([...name, ...published, result.value, result.bound, result.steps, spent].join(","));
  if (i % PLAN_EVERY === 0) plans.push([...name, plansText(result.plans)].join(","));
}
writeResults(
  "guillotine.csv",
  "family,instance,cuts,orientation,published,status,reference,found,bound,steps,cpu_seconds",
  rows,
);
writeResults("guillotine-plans.csv", "family,instance,cuts,orientation,plans", plans);
const summary = summarise(rows);
writeResults(
  "guillotine-summary.csv",
  "family,cuts,orientation,reference,runs,at_published,better,worst_excess,proved_here,mean_gap_percent,most_cpu_seconds",
  summary,
);
process.stdout.write(`${rows.length} of ${runs.length} runs\n${summary.join("\n")}\n`);
