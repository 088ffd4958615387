export { checkDrops, checkJoints, checkWires } from "./checks/index.ts";
export { crimpHeightMm } from "./crimp-height.ts";
export {
  type JoinedNet,
  optimum,
  type SettledChoice,
  settleWires,
  type WiredNet,
  type WireOptions,
  wireHarness,
  wireNet,
} from "./harness.ts";
export { areLinked, linkedPoints, mateOf, type NetIndex, netIndex } from "./net-index.ts";
export type { LandingDistance } from "./task.ts";
export { contactTakes, netWireType, stockedTypes, wiresPerContact } from "./wire-type.ts";
