import {
  BenchModel,
  continuityList,
  type Groups,
  type Probe,
  type TestBench,
  testBench,
} from "@pinwright/engine";
import { view } from "./view.ts";

/** A harness on the tester, and what a good one reads. */
export interface FloorBench {
  readonly bench: TestBench;
  /** Group of each place, in the order of the bench's places. */
  readonly expected: Groups;
  /** The walk with two probes. */
  readonly probes: readonly Probe[];
}

/** Everything of a harness that a tester makes contact with; nothing when there is no such harness. */
export const floorBench = view<string, FloorBench>({
  uses: ({ line }, id) => [line.harnesses.get(id), line.machine.landings],
  entries: ({ line }, id) => {
    const harness = line.harnesses.get(id);
    if (harness === undefined) return new Map();
    const bench = testBench(line.machine, harness);
    const { probes } = continuityList(line.machine, harness);
    return new Map([["", { bench, expected: new BenchModel(bench).groups([]), probes }]]);
  },
  restsInPreview: true,
});
