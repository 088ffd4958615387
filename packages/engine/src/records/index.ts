export {
  BenchModel,
  type BenchWire,
  diagnoseHarness,
  type Explanation,
  type Groups,
  type HarnessDiagnosis,
  type HarnessFault,
  type TestBench,
  type TestPlace,
  type Tug,
  testBench,
} from "./continuity/index.ts";
