import { compareText } from "@pinwright/kernel";
import type { ElectricRatings, ElectricSolution, Finding, Machine } from "../../model/index.ts";
import { electricNetwork } from "../network/network.ts";
import { bondThin } from "./bond-thin.ts";
import { coilDiode } from "./coil-diode.ts";
import { coilHot } from "./coil-hot.ts";
import { coilStuck } from "./coil-stuck.ts";
import { coilWinding } from "./coil-winding.ts";
import { contactHot } from "./contact-hot.ts";
import { earthSecond } from "./earth-second.ts";
import type { ElectricFacts } from "./facts.ts";
import { fuseBreaking } from "./fuse-breaking.ts";
import { fuseLarge } from "./fuse-large.ts";
import { fuseNeverOpens } from "./fuse-never-opens.ts";
import { fuseSlow } from "./fuse-slow.ts";
import { fuseSmall } from "./fuse-small.ts";
import { ledCurrent } from "./led-current.ts";
import { metalUnbonded } from "./metal-unbonded.ts";
import { netDrop } from "./net-drop.ts";
import { returnShared } from "./return-shared.ts";
import { supplyLoaded } from "./supply-loaded.ts";
import { wireHot } from "./wire-hot.ts";
import { wireUnprotected } from "./wire-unprotected.ts";

/** Rules that no length, temperature or current has a say in. */
const OF_NETWORK = [bondThin, earthSecond, metalUnbonded, returnShared];

const OF_RATINGS = [
  coilDiode,
  coilHot,
  coilStuck,
  coilWinding,
  contactHot,
  fuseBreaking,
  fuseLarge,
  fuseNeverOpens,
  fuseSlow,
  fuseSmall,
  ledCurrent,
  netDrop,
  supplyLoaded,
  wireHot,
  wireUnprotected,
];

/** What is wrong with how the machine's circuits are joined: returns, earth and bonds. */
export const checkNetwork = (facts: Pick<ElectricFacts, "machine" | "network">): readonly Finding[] =>
  OF_NETWORK.flatMap((rule) => rule(facts));

/** What is wrong by the solved circuits and their ratings. */
export const checkRatings = (facts: ElectricFacts): readonly Finding[] =>
  OF_RATINGS.flatMap((rule) => rule(facts));

/**
 * Everything that is electrically wrong with a machine. Each finding holds the steps of its computation, so that it
 * can be checked by hand.
 * @returns in the order of rule and subjects
 */
export function checkElectric(
  machine: Machine,
  harnesses: ElectricFacts["harnesses"],
  solution: ElectricSolution,
  ratings: ElectricRatings,
): readonly Finding[] {
  const network = electricNetwork(
    machine,
    [...harnesses.values()].flatMap(({ wires }) => wires),
  );
  const facts: ElectricFacts = { machine, harnesses, network, solution, ratings };
  return [...checkNetwork(facts), ...checkRatings(facts)]
    .map((finding) => ({ finding, name: `${finding.rule} ${finding.subjects.join(" ")}` }))
    .sort((p, q) => compareText(p.name, q.name))
    .map(({ finding }) => finding);
}
