import { boardHoles } from "./board-holes.ts";
import { bodiesOneType, bodiesShape } from "./bodies.ts";
import { crossingsClasses, lanesClasses, pinsClass } from "./classes-known.ts";
import { connectorsName } from "./connectors-name.ts";
import { connectorsOneCarrier } from "./connectors-one-carrier.ts";
import { crossingsSides } from "./crossings-sides.ts";
import { cutoutsCircle } from "./cutouts-circle.ts";
import { cutoutsSizes } from "./cutouts-sizes.ts";
import { drawingsFile, drawingsHash } from "./drawings-file.ts";
import { elementsOneType } from "./elements-one-type.ts";
import { elementsTwoPoints } from "./elements-two-points.ts";
import { endsNotInKey } from "./ends-not-in-key.ts";
import { endsOneNet } from "./ends-one-net.ts";
import { fusesTwoPoints } from "./fuses-two-points.ts";
import { harnessNumbers } from "./harness-numbers.ts";
import { inlinesConnector } from "./inlines-connector.ts";
import { lanesOneSide } from "./lanes-one-side.ts";
import {
  familiesArea,
  familiesInsulation,
  mechanismStepsMinMax,
  testStepsMinMax,
  testsMinMax,
} from "./low-and-high.ts";
import { mechanismChildren } from "./mechanism-children.ts";
import { mechanismNumbersChild } from "./mechanism-numbers.ts";
import { fastenersMoments, mechanismFastenersMoments } from "./moments-known.ts";
import { bomNoCircle, stepsNoCircle } from "./no-circle.ts";
import { optionsOneUsual } from "./options-one-usual.ts";
import { fitsMinMax, fitTermsPanel, panelSizesThickness } from "./panel-fits.ts";
import { pinsWithinWays } from "./pins-within-ways.ts";
import { posesOneUsual } from "./poses-one-usual.ts";
import { renamesLead } from "./renames-lead.ts";
import type { Rule } from "./rule.ts";
import { stepRulesFirst, stepRulesThen } from "./step-rules-one.ts";
import { testStepsSequence, testsRisk, testsScope } from "./tests-scope.ts";

/** Every rule of the book that one cell by itself cannot show, in the order in which they are checked. */
export const BOOK_RULES: readonly Rule[] = [
  cutoutsSizes,
  cutoutsCircle,
  panelSizesThickness,
  fitsMinMax,
  fitTermsPanel,
  posesOneUsual,
  lanesOneSide,
  lanesClasses,
  crossingsSides,
  crossingsClasses,
  boardHoles,
  mechanismChildren,
  mechanismFastenersMoments,
  mechanismNumbersChild,
  mechanismStepsMinMax,
  bodiesOneType,
  bodiesShape,
  inlinesConnector,
  elementsOneType,
  elementsTwoPoints,
  familiesArea,
  familiesInsulation,
  connectorsOneCarrier,
  connectorsName,
  pinsWithinWays,
  pinsClass,
  endsOneNet,
  endsNotInKey,
  harnessNumbers,
  fusesTwoPoints,
  fastenersMoments,
  stepRulesFirst,
  stepRulesThen,
  stepsNoCircle,
  testsScope,
  testsRisk,
  testsMinMax,
  testStepsMinMax,
  testStepsSequence,
  drawingsFile,
  drawingsHash,
  bomNoCircle,
  optionsOneUsual,
  renamesLead,
];
