export type {
  NamedThing,
  Share,
  ShareKind,
  Thing,
  ThingControl,
  ThingKind,
  ThingPart,
  ThingPin,
  ThingScrews,
  ThingStep,
  ThingWire,
  WireEnd,
} from "./thing.ts";
export { Things } from "./things.ts";
