import type { RuleWords } from "../finding.ts";
import { accessFindings } from "./access-findings.ts";
import { ballFindings } from "./ball-findings.ts";
import { boardsFindings } from "./boards-findings.ts";
import { bundleFindings } from "./bundle-findings.ts";
import { clashFindings } from "./clash-findings.ts";
import { electricFindings } from "./electric-findings.ts";
import { fitFindings } from "./fit-findings.ts";
import { matrixFindings } from "./matrix-findings.ts";
import { outsideFindings } from "./outside-findings.ts";
import { panelsFindings } from "./panels-findings.ts";
import { partsFindings } from "./parts-findings.ts";
import { pinboardFindings } from "./pinboard-findings.ts";
import { programFindings } from "./program-findings.ts";
import { routeFindings } from "./route-findings.ts";
import { runsFindings } from "./runs-findings.ts";
import { stepsFindings } from "./steps-findings.ts";
import { wiringFindings } from "./wiring-findings.ts";

/** Wording of every rule. Sentences name the thing first, then the numbers. */
export const findings: Readonly<Record<string, RuleWords>> = {
  ...bundleFindings,
  ...routeFindings,
  ...wiringFindings,
  ...pinboardFindings,
  ...electricFindings,
  ...matrixFindings,
  ...programFindings,
  ...stepsFindings,
  ...panelsFindings,
  ...boardsFindings,
  ...partsFindings,
  ...runsFindings,
  ...outsideFindings,
  ...fitFindings,
  ...clashFindings,
  ...ballFindings,
  ...accessFindings,
  "tie-missing": {
    title: "No tie in stock goes round a bundle",
    says: "Branch {0} in {1}: {circles} wires, {laid_mm} mm thick as laid; the largest tie takes {thickest_tie_mm} mm.",
    why: "A bundle without ties spreads, and its breakouts move.",
    todo: "Stock a longer tie, or take wires out of this branch.",
  },
};
