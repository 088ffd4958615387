export {
  type AdapterFault,
  formatAdapter,
  groupsOfScan,
  parseAdapter,
  type ScannedPlaces,
  type TesterAdapter,
} from "./adapter.ts";
export {
  formatTesterAnswer,
  type JoinedPoints,
  parseTesterAnswer,
  TESTER_ERRORS,
  type TesterAnswer,
  type TesterError,
} from "./answer.ts";
export { lineCheck } from "./check-sum.ts";
export { formatTesterCommand, parseTesterCommand, type TesterCommand } from "./command.ts";
export { formatScanFile, parseScanFile, type ScanFile, type ScanFileFault } from "./file.ts";
export { scanOfTries, type TesterScan, type TriedScan } from "./scan.ts";
export { type TugWalk, tugWalk } from "./tugs.ts";
export { groupsOfProbes, type ProbeAnswer, type ProbeWalk, probeWalk } from "./two-probes.ts";
export {
  LONGEST_TESTER_LINE,
  MOST_TESTER_POINTS,
  TESTER_FAULTS,
  TESTER_PROTOCOL,
  type TesterFault,
  type TesterParsed,
} from "./words-of-line.ts";
