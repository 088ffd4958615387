import type { RuleWords } from "../finding.ts";

/** Why a tool can never be set on. */
const BECAUSE: Readonly<Record<string, string>> = {
  "own-tip": "what it holds itself stands over it",
  "own-grip": "what it holds itself stands in the way of the hand",
  beneath: "in the way, though it is there before it, stands",
};
const CLEAR: Readonly<Record<string, string>> = { "-": "none" };
const TOOL: Readonly<Record<string, string>> = { "-": "a usual tool" };

/** Wording of the rules of what tool and hand reach, and what comes off for service. */
export const accessFindings: Readonly<Record<string, RuleWords>> = {
  "driver-missing": {
    title: "No tool of the shop fits",
    says: "{0} ({drive}): {fasteners} in the machine, the first being {1}; no row of the tools fits this drive.",
    why: "Nobody can say whether there is room for the tool, and the step card names none.",
    todo: "Add the tool to the shop's tools, or correct the drive of the fastener type.",
  },
  "driver-blocked": {
    title: "A fastener can never be driven",
    says: "{0} with {tool}, tip {tip_mm} mm long: {because}: {rest}. Length of tip that would pass: {clear_tip_mm} mm.",
    values: { because: BECAUSE, clear_tip_mm: CLEAR, tool: TOOL },
    why: "The tool does not get onto its head at the moment at which it is driven.",
    todo: "Give the type its bodies if its whole outline is not that high; else move the fastener, move what stands in the way, or add a tool with a longer tip.",
  },
  "nut-blocked": {
    title: "The nut of a fastener can never be held",
    says: "{0} with {tool}: {because}: {rest}.",
    values: { because: BECAUSE, tool: TOOL },
    why: "No sector is free in which the spanner could swing: the nut turns with the screw.",
    todo: "Use a nut that holds itself, such as a T-nut, move the fastener, or move what stands beside the nut.",
  },
  "service-deep": {
    title: "Much has to come off to get at a fastener",
    says: "{1} of {0}: {off} things come off first, {most} at most are wanted: {rest}.",
    why: "A repair that takes half the machine apart is not done, or brings new faults.",
    todo: "Turn or move what lies over it, or accept it for what hardly ever wears.",
  },
  "order-loop": {
    title: "An order of work that bites its own tail",
    says: "{rest}: each is to be done before the next, and the last before the first. Given up: {0} before {1} ({why}, {at}).",
    values: {
      why: {
        rule: "the designer's rule",
        wired: "wired before it is closed over",
        covers: "the lower before what lies over it",
        "hides-nut": "its nut is hidden",
        hides: "its fastener is hidden",
        stands: "a harness after what it ends on",
        built: "built before it is mounted",
      },
    },
    why: "No order of work can keep to all of it; the order shown keeps to all but what was given up.",
    todo: "Change the cheapest link of the chain: take back a rule, move a lane or a fastener, or let a part come off in two.",
  },
  "rule-idle": {
    title: "A rule of order that says nothing",
    says: "{0}: {missing}.",
    values: {
      missing: {
        first: "what comes first is not in this machine",
        after: "what comes after it is not in this machine",
        both: "neither of the two is in this machine",
        same: "both are put in together",
      },
    },
    why: "The order that it was written for is not kept to.",
    todo: "Correct the rule, or remove it.",
  },
};
