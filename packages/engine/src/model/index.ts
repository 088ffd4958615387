export { type CavityGrid, cavityAt, cavityGrid, gridMiddle } from "./cavities.ts";
export type * from "./finding.ts";
export { faceX, placed, placeOf } from "./frames.ts";
export type * from "./harness.ts";
export { groupRows, rowsById } from "./kits.ts";
export type * from "./line-result.ts";
export type * from "./machine.ts";
export { appliesTo, Resolver, resolveMachine, usualOptions } from "./resolve.ts";
export { roomPlaces, straightDistances, usualPoseId } from "./room.ts";
