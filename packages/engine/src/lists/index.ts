export {
  type BenchGraph,
  benchGraph,
  type ContinuityList,
  continuityList,
  type FittedPair,
  type JoinedPart,
  type OpenPair,
  type Probe,
  type ProbeSpot,
} from "./continuity.ts";
export { type CableCut, type CutGroup, type CutList, type CutRow, cutList } from "./cut.ts";
export { type Cell, type EndKind, endKind, type ListEnd, wireEntryCell, wiresAtEnds } from "./ends.ts";
export { type FromToRow, fromToList } from "./from-to.ts";
export { type WireLabel, wireLabels } from "./labels.ts";
export { type LayUpEnd, type LayUpRun, type LayUpStep, type LayUpWire, layUpOrder } from "./lay-up.ts";
export {
  connectorLoading,
  type KeysByLanding,
  type LoadedCavity,
  type LoadedLanding,
  type LoadedWire,
} from "./loading.ts";
export type { OpenReason } from "./open-pairs.ts";
export { type HarnessPart, type HarnessPartKind, partsOfHarness } from "./parts.ts";
export { type PullTestContact, type PullTestRow, pullTest } from "./pull-test.ts";
