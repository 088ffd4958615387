export { composeSheets, type MadeSheet, type SheetsChoice, sheetNames } from "./all-sheets.ts";
export { stepCautions } from "./assembly/step-cautions.ts";
export { assemblyDocumentNames, assemblyDocumentsAbout, composeAssemblySheets } from "./assembly-sheets.ts";
export { type BoardPicture, boardPage, boardScaleText, drawBoard } from "./board-picture/board-picture.ts";
export { markedSide } from "./board-picture/bodies.ts";
export type { ChangeAbout, Labels } from "./change-note/about.ts";
export { type ChangeNote, composeChangeNote } from "./change-note/change-note.ts";
export { changeNote, keptUnits } from "./change-note/note.ts";
export { bodyHash } from "./compose/body-hash.ts";
export type { SheetDocument } from "./compose/document.ts";
export type { Grid, GridValue } from "./compose/grid.ts";
export { guideOf, pageTexts } from "./compose/guide.ts";
export type { Mark, Page } from "./compose/mark.ts";
export { overlaps } from "./compose/overlaps.ts";
export { type Difference, pageDifference } from "./difference/difference.ts";
export { documentsAbout } from "./documents-about.ts";
export {
  composeHarnessSheets,
  composePinboardRoll,
  documentNames,
  type HarnessSheetsChoice,
} from "./harness-sheets.ts";
export {
  ASSEMBLY_SHEET_KINDS,
  type AssemblySheetKind,
  HARNESS_SHEET_KINDS,
  type HarnessSheetKind,
  MACHINE_SHEET_KINDS,
  MACHINE_SHEETS,
  MAKING_SHEET_KINDS,
  type MachineSheetKind,
  type MakingSheetKind,
  SHEET_KINDS,
  type SheetKind,
} from "./identity.ts";
export { keepSheet, keptSheet } from "./kept/kept-sheet.ts";
export { composeMachineSheets, machineDocumentNames, machineDocumentsAbout } from "./machine-sheets.ts";
export { composeMakingSheets, makingDocumentNames } from "./making-sheets.ts";
export { type SheetOptions, USUAL_OPTIONS } from "./options.ts";
export { composeCheckSheet } from "./outside/check-sheet.ts";
export { composeOrderSheet, type SendOutOrder } from "./outside/order-sheet.ts";
export { composeCrateChecklist } from "./records/crate-checklist.ts";
export { composeTestCertificate } from "./records/test-certificate.ts";
export { composeTransportList } from "./records/transport-list.ts";
export { composeUnitLabels, type LabelPaper, USUAL_ROLL } from "./records/unit-labels.ts";
export { retrofitKit } from "./retrofit-kit/kit.ts";
export {
  composeRetrofitKit,
  type KitPart,
  type KitStep,
  type KitWire,
  type RetrofitKit,
} from "./retrofit-kit/retrofit-kit.ts";
export { RUN_SHEET_KINDS, RUN_SHEETS, type RunSheetKind } from "./runs/identity.ts";
export { composeRunSheets, type RunSheetsChoice, runSheetNames } from "./runs/run-sheets.ts";
export { serviceBookName } from "./service-book/identity.ts";
export {
  composeServiceBook,
  type ServiceBookOptions,
  type ServiceUnit,
  type UnitAlternate,
} from "./service-book/index.ts";
export { sheetFactOf } from "./sheet-fact.ts";
export { composeStepCard } from "./step-cards/step-cards.ts";
export { overlaySvg, pageSvg } from "./svg/svg.ts";
