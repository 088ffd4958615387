export { type BuiltRecords, type CountedDefect, failureCounts } from "./failure-counts.ts";
