export { type FuseChart, type FusePulse, fuseChart } from "./fuse-chart.ts";
