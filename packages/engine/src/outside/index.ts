export {
  type DrawingState,
  drawingsOf,
  type FileFact,
  type FileFacts,
  type PartDrawing,
  type PartDrawings,
} from "./drawings.ts";
export {
  type CheckedDimension,
  compareMarks,
  dimensionsOf,
  type JudgedDimension,
  type JudgedSample,
  judgeDimension,
  judgeSample,
  type Verdict,
} from "./first-article.ts";
export { OutsideSolver, outsideFindings } from "./outside-solver.ts";
export {
  type PackFault,
  type PackFile,
  type PackPart,
  packFiles,
  type SendOutPack,
  sendOutPack,
  type WantedPart,
} from "./pack.ts";
export { isDrawnOutside, type OutsidePart, outsidePart, outsidePartIds, outsideParts } from "./parts.ts";
export { type LotBlock, lotBlock, type SampleState, sampleState, samplesOf } from "./samples.ts";
