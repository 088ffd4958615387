import type { Symptom } from "./fault.ts";
import type { FaultModel } from "./fault-model.ts";
import type { Suspect } from "./suspects.ts";

/** Suspects that no function tells apart: they do the same to every one. */
export interface FaultClass {
  /** Index of the suspects, the likeliest first, ties by id. */
  readonly suspects: readonly number[];
  /** Symptoms other than `works`, by index of the function. */
  readonly symptoms: ReadonlyMap<number, Symptom>;
  /** Odds of all its suspects together. */
  readonly odds: number;
}

/** What every suspect would do to every function, made once for a machine and kept. */
export class FaultTable {
  readonly suspects: readonly Suspect[];
  readonly classes: readonly FaultClass[];

  constructor(model: FaultModel, suspects: readonly Suspect[]) {
    const maker = new FaultTableMaker(model, suspects);
    maker.step(suspects.length);
    this.suspects = suspects;
    this.classes = maker.classes();
  }
}

/** Makes the classes of a fault table a few suspects at a time, where something else has to be done in between. */
export class FaultTableMaker {
  readonly #model: FaultModel;
  readonly #suspects: readonly Suspect[];
  readonly #byKey = new Map<
    string,
    { suspects: number[]; symptoms: ReadonlyMap<number, Symptom>; odds: number }
  >();
  #done = 0;

  constructor(model: FaultModel, suspects: readonly Suspect[]) {
    this.#model = model;
    this.#suspects = suspects;
  }

  /** Share of the suspects that are through, 0 to 1. */
  get progress(): number {
    return this.#suspects.length === 0 ? 1 : this.#done / this.#suspects.length;
  }

  /** Takes so many more suspects. */
  step(most: number): void {
    const end = Math.min(this.#suspects.length, this.#done + most);
    for (; this.#done < end; this.#done++) this.#take(this.#done);
  }

  /** The classes of all suspects so far. */
  classes(): readonly FaultClass[] {
    const oddsOf = (n: number): number => this.#suspects[n]?.odds ?? 0;
    return [...this.#byKey.values()].map((one) => ({
      ...one,
      suspects: one.suspects.toSorted((p, q) => oddsOf(q) - oddsOf(p) || p - q),
    }));
  }

  #take(n: number): void {
    const suspect = this.#suspects[n];
    if (suspect === undefined) return;
    const symptoms = this.#model.symptoms([suspect.fault]);
    // What nobody can see is nothing that anybody looks for.
    if (symptoms.size === 0) return;
    const key = keyOf(symptoms);
    const known = this.#byKey.get(key);
    if (known === undefined) this.#byKey.set(key, { suspects: [n], symptoms, odds: suspect.odds });
    else {
      known.suspects.push(n);
      known.odds += suspect.odds;
    }
  }
}

/** The same text for the same symptoms. */
const keyOf = (symptoms: ReadonlyMap<number, Symptom>): string =>
  [...symptoms].map(([f, symptom]) => `${f}${symptom[0]}`).join(" ");
