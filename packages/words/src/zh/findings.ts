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
    title: "库存扎带均不够长",
    says: "{1} 的分支 {0}：{circles} 根线，布成后直径 {laid_mm} mm；最长扎带只能扎 {thickest_tie_mm} mm。",
    why: "没有扎带的线束会散开，分叉位置会移动。",
    todo: "备更长的扎带，或减少该分支的线。",
  },
};
