import type { Model } from "../model.ts";
import { boardKitFor, boardStuffing } from "./board-making.ts";
import { candidates } from "./candidates.ts";
import { comparison } from "./comparison.ts";
import { composeSheet } from "./compose-sheet.ts";
import { controlStudy } from "./control-study.ts";
import { cuttingOfSheet } from "./cutting-of-sheet.ts";
import { diagnoseBench } from "./diagnose-bench.ts";
import { faultFile } from "./fault-file.ts";
import { floorNeeds } from "./floor-needs.ts";
import { importTrial } from "./import-trial.ts";
import { keptSheetPages } from "./kept-sheet.ts";
import { overlay } from "./overlay.ts";
import { paintOfRun } from "./paint-of-run.ts";
import { pegTrial, pinPeg, unpinPegs } from "./pegs.ts";
import { prepareRuns } from "./prepare-runs.ts";
import { problemSubject } from "./problem-subject.ts";
import { fastenerTypes, readDrawing } from "./read-drawing.ts";
import { renaming } from "./renaming.ts";
import { rowKeys } from "./row-keys.ts";
import { frozenKeys, runPrices, runQuantities, runShortages } from "./run-more.ts";
import { runPlan, runsFigures } from "./run-plan.ts";
import { search } from "./search.ts";
import { betterHarness, keepHarness } from "./settling.ts";
import { soldering } from "./soldering.ts";
import { stationPlan } from "./station-plan.ts";
import { takenIds } from "./taken-ids.ts";
import { thingNames } from "./thing-names.ts";

/** Questions that are answered once, by their names. */
export const ASKS = {
  diagnoseBench,
  faultFile,
  floorNeeds,
  search,
  problemSubject,
  thingNames,
  candidates,
  renaming,
  importTrial,
  keptSheetPages,
  overlay,
  comparison,
  composeSheet,
  controlStudy,
  pegTrial,
  pinPeg,
  unpinPegs,
  keepHarness,
  betterHarness,
  rowKeys,
  takenIds,
  readDrawing,
  fastenerTypes,
  stationPlan,
  cuttingOfSheet,
  paintOfRun,
  boardStuffing,
  boardKitFor,
  soldering,
  prepareRuns,
  runsFigures,
  runPlan,
  runQuantities,
  runShortages,
  runPrices,
  frozenKeys,
};

export type AskName = keyof typeof ASKS;
export type AskParam<N extends AskName> = Parameters<(typeof ASKS)[N]>[1];
export type AskAnswer<N extends AskName> = ReturnType<(typeof ASKS)[N]>;

/** A question whose types are not known where it is answered. */
export type AnyAsk = (model: Model, param: unknown) => unknown;
