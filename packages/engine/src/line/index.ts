export { type About, aboutId, knownIds, type PointAbout, type WireAbout } from "./about.ts";
export {
  type AcceptedBound,
  acceptBounds,
  acceptedBounds,
  acceptSubject,
  brokenBounds,
} from "./accept.ts";
export { harnessOrder, Line } from "./line.ts";
export {
  compareHarness,
  type HarnessChange,
  type SettleMore,
  type Settling,
  settle,
  unsettled,
} from "./settle.ts";
