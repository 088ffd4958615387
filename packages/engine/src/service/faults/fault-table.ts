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
    this.suspects = suspects;
    const byKey = new Map<
      string,
      { suspects: number[]; symptoms: ReadonlyMap<number, Symptom>; odds: number }
    >();
    suspects.forEach((suspect, n) => {
      const symptoms = model.symptoms([suspect.fault]);
      // What nobody can see is nothing that anybody looks for.
      if (symptoms.size === 0) return;
      const key = keyOf(symptoms);
      const known = byKey.get(key);
      if (known === undefined) byKey.set(key, { suspects: [n], symptoms, odds: suspect.odds });
      else {
        known.suspects.push(n);
        known.odds += suspect.odds;
      }
    });
    const oddsOf = (n: number): number => suspects[n]?.odds ?? 0;
    this.classes = [...byKey.values()].map((one) => ({
      ...one,
      suspects: one.suspects.sort((p, q) => oddsOf(q) - oddsOf(p) || p - q),
    }));
  }
}

/** The same text for the same symptoms. */
const keyOf = (symptoms: ReadonlyMap<number, Symptom>): string =>
  [...symptoms].map(([f, symptom]) => `${f}${symptom[0]}`).join(" ");
