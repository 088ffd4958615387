import { compareText } from "@pinwright/kernel";
import type { Finding, HarnessWires, Machine } from "../../model/index.ts";
import { chainDrop } from "./chain-drop.ts";
import { choiceFollowed } from "./choice-followed.ts";
import { contactFit } from "./contact-fit.ts";
import { contactRating } from "./contact-rating.ts";
import { contactWires } from "./contact-wires.ts";
import { coreUnwired } from "./core-unwired.ts";
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

const RULES = [
  chainDrop,
  choiceFollowed,
  contactFit,
  contactRating,
  contactWires,
  coreUnwired,
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
  const facts = wireFacts(machine, harnesses);
  const key = (f: Finding): string => `${f.rule} ${f.subjects.join(" ")}`;
  return RULES.flatMap((rule) => rule(facts)).sort((a, b) => compareText(key(a), key(b)));
}
