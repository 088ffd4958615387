export { byTime, contentsOf, corrected, foldUnits } from "./fold-units.ts";
export {
  type Block,
  isConcerned,
  isWithin,
  type Needed,
  type OpenRecall,
  releaseBlocks,
} from "./release-gate.ts";
export type { DefectRecord, Fitting, ReadingRecord, Source, StepRecord, UnitState } from "./unit-state.ts";
