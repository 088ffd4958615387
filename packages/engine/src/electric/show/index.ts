export { type FuseChart, type FusePulse, fuseChart } from "./fuse-chart.ts";
export {
  type LadderNode,
  type LadderPart,
  type LadderSubject,
  type LoadLadder,
  loadLadders,
} from "./load-ladder.ts";
export { loadsBehindFuses } from "./loads-behind.ts";
