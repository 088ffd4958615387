import type { FactBody } from "@pinwright/contract";

export type Bench = "board" | "harness" | "machine";

interface BenchTest {
  readonly test: string;
  /** Where readings lie, and how far they scatter. */
  readonly mean: number;
  readonly sigma: number;
  readonly instrument: string;
}

/** Tests of the invented boards, harnesses and machines. */
const TESTS: Readonly<Record<Bench, readonly BenchTest[]>> = {
  board: [
    { test: "t.supply-5v", mean: 5.02, sigma: 0.03, instrument: "psu-1" },
    { test: "t.supply-12v", mean: 12.1, sigma: 0.08, instrument: "psu-1" },
    { test: "t.idle-current", mean: 0.145, sigma: 0.006, instrument: "meter-1" },
    { test: "t.driver-drop", mean: 0.31, sigma: 0.02, instrument: "meter-2" },
  ],
  harness: [{ test: "t.crimp-pull", mean: 62, sigma: 4, instrument: "puller-1" }],
  machine: [
    { test: "t.bond", mean: 0.06, sigma: 0.01, instrument: "bond-1" },
    { test: "t.insulation", mean: 480, sigma: 60, instrument: "insulation-1" },
    { test: "t.coil", mean: 11.2, sigma: 0.4, instrument: "meter-3" },
  ],
};

/** Names of all tests. */
export const TEST_NAMES: readonly string[] = Object.values(TESTS).flatMap((list) =>
  list.map(({ test }) => test),
);

const LOTS = 12;
const PARTS = ["ic.driver", "fet.coil", "cap.bulk", "con.header"] as const;
const STEPS = { board: 6, harness: 5, machine: 40 } as const;
const FAILS = 0.06;
const MISTYPED = 0.02;

/** Units of a station: those that it works on, and those that it fits into them. */
export interface Units {
  readonly own: readonly string[];
  readonly toFit: readonly string[];
}

/** Where something of a station's own stream stands, for what corrects it. */
export type LastFact = () => { readonly stream: string; readonly seq: number };

/**
 * What somebody at a bench records, one batch after the other: steps, lots, readings, now and then a defect with its mend
 * and the test again, something fitted, changed, noted, mistyped, handed on.
 */
export function* batchesOf(
  bench: Bench,
  { own, toFit }: Units,
  random: () => number,
  lastFact: LastFact,
): Generator<readonly FactBody[], void, undefined> {
  const pick = <T>(list: readonly T[]): T => {
    const chosen = list[Math.floor(random() * list.length)];
    if (chosen === undefined) throw new RangeError("Nothing to choose from.");
    return chosen;
  };
  const station = `${bench}-bench`;
  let defects = 0;
  let fitted = 0;
  const reading = (unit: string, good: boolean): FactBody => {
    const { test, mean, sigma, instrument } = pick(TESTS[bench]);
    const near = (random() + random() + random() - 1.5) * 2 * sigma;
    const value = Math.round((mean + (good ? near : 8 * sigma)) * 1e4) / 1e4;
    return { kind: "reading", unit, test, value, good, instrument, station };
  };
  for (const unit of own) {
    for (let step = 0; step < STEPS[bench]; step++) {
      const batch: FactBody[] = [
        {
          kind: "step-done",
          unit,
          step: `st.${bench}-${step}`,
          station,
          minutes: Math.round(random() * 80) / 10,
          count: Math.floor(random() * 30),
        },
      ];
      if (step < 2)
        batch.push({
          kind: "lot-used",
          unit,
          part: pick(PARTS),
          lot: `L-${Math.floor(random() * LOTS)}`,
          quantity: 1 + Math.floor(random() * 8),
        });
      else batch.push(reading(unit, true));
      const next = toFit[fitted];
      if (bench === "machine" && next !== undefined) {
        fitted++;
        // A place that is filled again: what was in it came out.
        batch.push({ kind: "fitted", unit: next, into: unit, place: `place-${step % 30}` });
      }
      if (random() < 0.03) batch.push({ kind: "noted", unit, says: "Lötstelle nachgezogen · 补焊" });
      yield batch;
      if (random() < MISTYPED) {
        const wrong = lastFact();
        yield [{ kind: "correction", ...wrong, why: "mistyped" }, reading(unit, true)];
      }
      if (random() >= FAILS) continue;
      const defect = `d-${unit}-${defects++}`;
      const where = { item: `R${Math.floor(random() * 90)}`, xMm: Math.round(random() * 2000) / 10 };
      yield [reading(unit, false), { kind: "defect", unit, defect, what: "cold-joint", says: "", where }];
      yield [
        {
          kind: "mended",
          unit,
          defect,
          cause: "soldering",
          says: "",
          minutes: Math.round(random() * 60) / 10,
        },
        reading(unit, true),
      ];
    }
    yield [{ kind: "handed", unit, stage: "tested" }];
  }
}
