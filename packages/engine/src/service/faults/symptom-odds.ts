import { SYMPTOMS, type Symptom } from "./fault.ts";
import type { FaultTable } from "./fault-table.ts";
import { SEEN, type Seen, type Sightings, worse } from "./seen.ts";

/**
 * How often something is said when something else is so: people tick the wrong box, a lamp that is dim is called dead, a
 * switch that needs a firm push is said to work. That what works is called faulty is rare: of three hundred things in order
 * one is at most. Common practice, no source.
 */
const SAID: Readonly<Record<Symptom, Readonly<Record<Seen, number>>>> = {
  works: { works: 0.99, dead: 0.003, on: 0.001, mixed: 0.002, sometimes: 0.004 },
  dead: { works: 0.04, dead: 0.885, on: 0.005, mixed: 0.02, sometimes: 0.05 },
  on: { works: 0.03, dead: 0.1, on: 0.8, mixed: 0.04, sometimes: 0.03 },
  mixed: { works: 0.15, dead: 0.2, on: 0.1, mixed: 0.5, sometimes: 0.05 },
};

/** The same of a fault that comes and goes. */
const SAID_OF_INTERMITTENT: Readonly<Record<Seen, number>> = {
  works: 0.35,
  dead: 0.25,
  on: 0.05,
  mixed: 0.05,
  sometimes: 0.3,
};

/** Share of faults that come and go (common practice, no source). */
const INTERMITTENT = 0.2;

/** Log odds of what was said (second index) if something is so (first index), against its being in order. */
const HARD = SYMPTOMS.map((symptom) =>
  SEEN.map((said) => Math.log(SAID[symptom][said]) - Math.log(SAID.works[said])),
);
const SOFT = SEEN.map((said) => Math.log(SAID_OF_INTERMITTENT[said]) - Math.log(SAID.works[said]));
/** By two symptoms: which of them a function with both shows. */
const WORSE = SYMPTOMS.map((one) => SYMPTOMS.map((other) => SYMPTOMS.indexOf(worse(one, other))));

/** Symptoms of one class as numbers: only of functions of which something was said. */
interface Packed {
  readonly functions: Int32Array;
  /** Index in `SYMPTOMS`. */
  readonly symptoms: Uint8Array;
  readonly hard: number;
  readonly soft: number;
}

/** What was seen speaks for or against each class of faults: only what a class changes counts. */
export class SymptomOdds {
  readonly #said: Int8Array;
  readonly #packed: readonly Packed[];
  /** Symptoms of the classes that pairs are made of, by function: one row a class; 0: none. */
  #rows: Uint8Array = new Uint8Array(0);
  #paired: readonly Packed[] = [];

  constructor({ classes }: FaultTable, seen: Sightings) {
    let most = 0;
    for (const f of seen.keys()) most = Math.max(most, f + 1);
    this.#said = new Int8Array(most).fill(-1);
    for (const [f, said] of seen) this.#said[f] = SEEN.indexOf(said);
    this.#packed = classes.map(({ symptoms }) => this.#pack(symptoms));
  }

  /** Log odds of a class against everything being sound. */
  gain(c: number): number {
    const one = this.#packed[c];
    return one === undefined ? 0 : either(one.hard, one.soft);
  }

  /** Prepares for pairs of some classes. */
  lay(classes: readonly number[]): void {
    const width = this.#said.length;
    this.#paired = classes.flatMap((c) => this.#packed[c] ?? []);
    this.#rows = new Uint8Array(classes.length * width);
    this.#paired.forEach(({ functions, symptoms }, i) => {
      for (let n = 0; n < functions.length; n++)
        this.#rows[i * width + (functions[n] ?? 0)] = symptoms[n] ?? 0;
    });
  }

  /** Log odds of two classes at once, by their places among those that were laid. */
  pairGain(i: number, j: number): number {
    const [a, b] = [this.#paired[i], this.#paired[j]];
    if (a === undefined || b === undefined) return 0;
    let hard = a.hard + b.hard;
    let soft = a.soft + b.soft;
    // What both do to one function counts once, as the worse of the two.
    const [less, row] = a.functions.length < b.functions.length ? [a, j] : [b, i];
    const start = row * this.#said.length;
    for (let n = 0; n < less.functions.length; n++) {
      const f = less.functions[n] ?? 0;
      const other = this.#rows[start + f] ?? 0;
      if (other === 0) continue;
      const own = less.symptoms[n] ?? 0;
      const said = this.#said[f] ?? 0;
      const both = WORSE[own]?.[other] ?? own;
      hard += (HARD[both]?.[said] ?? 0) - (HARD[own]?.[said] ?? 0) - (HARD[other]?.[said] ?? 0);
      soft -= SOFT[said] ?? 0;
    }
    return either(hard, soft);
  }

  #pack(all: ReadonlyMap<number, Symptom>): Packed {
    const functions = new Int32Array(all.size);
    const symptoms = new Uint8Array(all.size);
    let count = 0;
    let hard = 0;
    let soft = 0;
    for (const [f, symptom] of all) {
      const said = this.#said[f] ?? -1;
      if (said < 0) continue;
      const own = SYMPTOMS.indexOf(symptom);
      functions[count] = f;
      symptoms[count] = own;
      count++;
      hard += HARD[own]?.[said] ?? 0;
      soft += SOFT[said] ?? 0;
    }
    return { functions: functions.subarray(0, count), symptoms: symptoms.subarray(0, count), hard, soft };
  }
}

/** Log odds of a fault that is there all the time, or that comes and goes. */
function either(hard: number, soft: number): number {
  const [steady, fitful] = [Math.log(1 - INTERMITTENT) + hard, Math.log(INTERMITTENT) + soft];
  return Math.max(steady, fitful) + Math.log1p(Math.exp(-Math.abs(steady - fitful)));
}
