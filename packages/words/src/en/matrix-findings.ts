import type { RuleWords } from "../finding.ts";

/** Wording of the rules of switch matrices. */
export const matrixFindings: Readonly<Record<string, RuleWords>> = {
  "matrix-crossing-shared": {
    title: "Several switches at one crossing",
    says: "{0}, {rest}: all at column {column}, row {row}.",
    why: "The program cannot tell which of them is closed.",
    todo: "Move all but one to a free crossing, or accept it when they are to be one.",
  },
  "matrix-diode-reversed": {
    title: "The diode of a switch is the wrong way round",
    says: "{0} at column {column}, row {row}: its diode stops the current of its own column.",
    why: "The switch never reads closed.",
    todo: "Turn the diode round.",
  },
  "matrix-ghost": {
    title: "A switch without a diode makes another one read closed",
    says: "{0} has no diode: with {set} closed, {1} reads closed although it is open.",
    why: "With several balls in play the machine scores what nothing touched.",
    todo: "Give the switch a diode, or move one of these switches to another crossing.",
  },
};
