import { compareText } from "@pinwright/kernel";
import type { Finding, HarnessWires, Machine } from "../../model/index.ts";
import { chainDrop, type DropMemory } from "./chain-drop.ts";
import { choiceFollowed } from "./choice-followed.ts";
import { contactFit } from "./contact-fit.ts";
import { contactRating } from "./contact-rating.ts";
import { contactWires } from "./contact-wires.ts";
import { coreUnwired } from "./core-unwired.ts";
import { crimpHeight } from "./crimp-height.ts";
import { endOnIdlePin } from "./end-on-idle-pin.ts";
import { endUnwired } from "./end-unwired.ts";
import { wireFacts } from "./facts.ts";
import { housingShared } from "./housing-shared.ts";
import { netClasses } from "./net-classes.ts";
import { netSingleEnd } from "./net-single-end.ts";
import { netSplit } from "./net-split.ts";
import { pinUnwired } from "./pin-unwired.ts";
import { pointInTwoNets } from "./point-in-two-nets.ts";
import { spliceArea } from "./splice-area.ts";
import { wireLoopsBack } from "./wire-loops-back.ts";
import { wireVoltage } from "./wire-voltage.ts";

/** Rules that look at how points are joined, whatever their places. */
const RULES = [
  choiceFollowed,
  contactFit,
  contactRating,
  contactWires,
  coreUnwired,
  crimpHeight,
  endOnIdlePin,
  endUnwired,
  housingShared,
  netClasses,
  netSingleEnd,
  netSplit,
  pinUnwired,
  pointInTwoNets,
  spliceArea,
  wireLoopsBack,
  wireVoltage,
];

/**
 * Everything that is wrong with the nets, ends and wires of a machine.
 * @param harnesses the wires of every harness of the machine: a net is looked at as a whole
 * @returns in the order of rule and subjects, so that the order of rows does not matter
 */
export function checkWires(machine: Machine, harnesses: readonly HarnessWires[]): readonly Finding[] {
  return sorted([
    ...checkJoints(machine, harnesses),
    ...harnesses.flatMap((harness) => checkDrops(machine, harness)),
  ]);
}

/** The part of `checkWires` that nothing's place has a say in. */
export function checkJoints(machine: Machine, harnesses: readonly HarnessWires[]): readonly Finding[] {
  const facts = wireFacts(machine, harnesses);
  return sorted(RULES.flatMap((rule) => rule(facts)));
}

/**
 * The part of `checkWires` that measures between places, for the wires of one harness.
 * @param remember a memory of its nets; without one each is looked at anew
 */
export function checkDrops(
  machine: Machine,
  harness: Pick<HarnessWires, "harnessId" | "wires">,
  remember?: DropMemory,
): readonly Finding[] {
  return chainDrop(machine, harness, remember);
}

function sorted(findings: readonly Finding[]): readonly Finding[] {
  const name = (f: Finding): string => `${f.rule} ${f.subjects.join(" ")}`;
  return findings
    .map((finding) => ({ finding, name: name(finding) }))
    .sort((a, b) => compareText(a.name, b.name))
    .map(({ finding }) => finding);
}
