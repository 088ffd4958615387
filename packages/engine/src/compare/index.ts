export type {
  ChangedSheet,
  ChangeGroup,
  ChangeValue,
  Comparison,
  HarnessEffect,
  MachineChange,
  Subject,
  ToolEffect,
} from "./change.ts";
export { compareFacts } from "./compare.ts";
export { type Affected, effectsOn, type StandingUnit } from "./effects.ts";
export type {
  EndFact,
  FactRow,
  FactRows,
  FindingFact,
  ItemFact,
  MachineFacts,
  PartFact,
  SheetFact,
  StepFact,
  WireFact,
} from "./facts.ts";
export { machineFacts } from "./make-facts.ts";
export { type FactNames, factNames } from "./names.ts";
export { readMachineFacts } from "./read-facts.ts";
