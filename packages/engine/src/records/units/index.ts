export type { Block } from "@pinwright/contract";
export { byArrival, byTime, contentsOf, corrected, foldUnits } from "./fold-units.ts";
export { isConcerned, type OpenRecall, openRecalls } from "./recall.ts";
export { isFirm, isWithin, type Needed, releaseBlocks, type Taken } from "./release-gate.ts";
export type {
  DefectRecord,
  Fitting,
  ReadingRecord,
  ReleaseRecord,
  Source,
  StepRecord,
  StruckRecord,
  UnitState,
} from "./unit-state.ts";
