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
export {
  type NamedThing,
  type Share,
  type ShareKind,
  type Thing,
  type ThingControl,
  type ThingKind,
  type ThingPart,
  type ThingPin,
  type ThingScrews,
  type ThingStep,
  Things,
  type ThingWire,
  type WireEnd,
} from "./thing/index.ts";
