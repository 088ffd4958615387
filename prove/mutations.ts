/**
 * Makes every deliberate fault in Tidewatch and writes what was found of it, in words, to `results/mutations.json`. It
 * ends with an error when one is not caught, or when something is found that is no consequence.
 *
 *     npx tsx prove/mutations.ts
 */
import type { Finding } from "@pinwright/engine";
import { findingWords } from "@pinwright/words";
import { ELECTRICAL, FASTENING, MAKING, WIRING } from "../examples/tidewatch/mutations/all.ts";
import { Bench } from "../examples/tidewatch/mutations/bench.ts";
import { writeJson } from "./write-json.ts";

const said = (finding: Finding): string =>
  `${finding.rule}: ${findingWords("en", finding.rule).say(finding)}`;

const bench = await Bench.open();
const mutations = [...WIRING, ...ELECTRICAL, ...FASTENING, ...MAKING].map((mutation) => {
  const { plan, verdict, faults } = bench.try(mutation);
  const { caught, followed, strays, lost } = verdict;
  const isSound = caught.length > 0 && strays.length + lost.length + faults.length === 0;
  process.stdout.write(`${isSound ? "ok " : "FAILED "}${mutation.rule}: ${mutation.name}\n`);
  return {
    fault: mutation.name,
    rule: mutation.rule,
    victim: plan.victim,
    found: caught.map(said),
    consequences: followed.map(said),
    notConsequences: [...strays, ...lost].map(said),
    isSound,
  };
});
const failed = mutations.filter(({ isSound }) => !isSound).length;
writeJson("mutations.json", { mutations: mutations.length, failed, table: mutations });
if (failed > 0) throw new Error(`${failed} mutations failed.`);
