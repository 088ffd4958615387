export {
  BenchModel,
  type BenchWire,
  type Groups,
  type HarnessFault,
  type TestBench,
  type TestPlace,
  testBench,
} from "./bench.ts";
export { diagnoseHarness, type Explanation, type HarnessDiagnosis, type Tug } from "./diagnose.ts";
