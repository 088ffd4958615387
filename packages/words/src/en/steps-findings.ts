import type { RuleWords } from "../finding.ts";

/** Wording of the rules of steps and stations; those of their order are with the access to screws. */
export const stepsFindings: Readonly<Record<string, RuleWords>> = {
  "fastener-no-step": {
    title: "A fastener is in no step",
    says: "{0} holds {1}, which this machine does not have; no step drives it.",
    why: "Nobody drives it, or it is left over in the kit.",
    todo: "Say what it holds, leave that blank, or give it the option of what it holds.",
  },
  "fastener-two-steps": {
    title: "Two steps claim the same thing",
    says: "{0} is claimed by {1} and by {2}; it stays in {1}.",
    why: "It would be mounted twice, and its screws counted twice.",
    todo: "Take it out of one of the two steps.",
  },
  "step-skill": {
    title: "No station has the skill for a step",
    says: "{0} needs the skill {skill}; no station has it.",
    why: "No plan can give the step to anybody once skills count.",
    todo: "Add the skill to the station whose people have it, or correct it in the step.",
  },
  "step-station": {
    title: "A step is fixed to a station that lacks its skill",
    says: "{0} needs the skill {skill}; {1} does not have it.",
    why: "Those who stand there are not able to do it, or not allowed to.",
    todo: "Fix it to another station, free it, or add the skill to the station.",
  },
  "step-empty": {
    title: "A step does nothing",
    says: "{0} holds no item of this machine and has no minutes.",
    why: "The balance counts it as no work, and its card is empty.",
    todo: "Give it items or minutes, or take it out: what is built, mounted, wired and turned over has steps of its own.",
  },
  "gauge-missing": {
    title: "A gauge has no limits",
    says: "{0}, bench step {step}: it is set to a gauge, but neither a lower nor an upper limit is given.",
    why: "The builder cannot tell a good mechanism from a bad one.",
    todo: "Give the least or the most that is good, or both, with their unit.",
  },
};
