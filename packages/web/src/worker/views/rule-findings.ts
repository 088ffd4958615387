import type { Finding } from "@pinwright/engine";
import { type Subject, subjectOf } from "../findings/subject-of.ts";
import { view } from "./view.ts";

/** A finding of a section, with what it names first. */
export interface RuleFinding {
  readonly finding: Finding;
  readonly subjects: readonly Subject[];
}

/** A loop names all that goes round in it. */
const MOST_SUBJECTS = 24;

/** A view of the findings by some rules. */
const ruleFindings = (rules: ReadonlySet<string>) =>
  view<null, RuleFinding>({
    uses: ({ line }) => [line.findings],
    entries: (model) =>
      new Map(
        model.line.findings
          .filter(({ rule }) => rules.has(rule))
          .map((finding) => [
            `${finding.rule} ${finding.subjects.join(" ")}`,
            {
              finding,
              subjects: finding.subjects.slice(0, MOST_SUBJECTS).map((id) => subjectOf(model, id)),
            },
          ]),
      ),
    restsInPreview: true,
  });

/** What is wrong with the order of assembly. */
export const stepFindings = ruleFindings(
  new Set([
    "order-loop",
    "rule-idle",
    "fastener-no-step",
    "fastener-two-steps",
    "step-skill",
    "step-station",
    "step-empty",
    "gauge-missing",
    "driver-blocked",
    "driver-missing",
    "nut-blocked",
  ]),
);

/** What is wrong with panels, their sheets and their fits. */
export const panelFindings = ruleFindings(
  new Set([
    "panel-no-sheet",
    "panel-too-big",
    "panel-setting",
    "panel-grain",
    "fit-worst",
    "fit-likely",
    "thickness-far",
    "slot-thickness",
  ]),
);

/** What is wrong with kinds of board, their parts and tests. */
export const boardFindings = ruleFindings(
  new Set([
    "board-no-parts",
    "placement-off",
    "placement-overlap",
    "placement-too-high",
    "polarity-missing",
    "board-no-test",
    "test-no-limits",
    "bath-blocked",
  ]),
);
