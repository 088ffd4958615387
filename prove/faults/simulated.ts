import { existsSync, readFileSync } from "node:fs";
import type { FaultModel, Symptom } from "../../packages/engine/src/index.ts";

/** What the simulated circuit does with faults in it, kept so that it need not be simulated again. */
export interface Simulated {
  /** Of the machine that was simulated. */
  readonly hash: string;
  readonly seed: number;
  /** Ids of the functions that are tried. */
  readonly tried: readonly string[];
  /** What they do: one text for each different outcome, as `<index of tried><first letter of the symptom>`. */
  readonly outcomes: readonly string[];
  /** Suspects, each with its outcome; −1: the simulator found no operating point. */
  readonly single: readonly (readonly [suspect: string, outcome: number])[];
  readonly pairs: readonly (readonly [suspect: string, other: string, outcome: number])[];
}

const LETTERS: Readonly<Record<string, Symptom>> = { d: "dead", o: "on", m: "mixed" };

export const SIMULATED = new URL("../results/faults-simulated.json", import.meta.url);

/** What was kept; null: nothing. The file is our own and is written by `faults-simulated.ts` alone. */
export function readSimulated(): Simulated | null {
  return existsSync(SIMULATED) ? (JSON.parse(readFileSync(SIMULATED, "utf8")) as Simulated) : null;
}

/** An outcome as symptoms, by index of the model's functions. */
export function outcomeSymptoms(
  { tried, outcomes }: Simulated,
  model: FaultModel,
  outcome: number,
): ReadonlyMap<number, Symptom> {
  const at = new Map(model.functions.map(({ id }, f) => [id, f]));
  const text = outcomes[outcome] ?? "";
  return new Map(
    text.split(" ").flatMap((part): readonly [number, Symptom][] => {
      const f = at.get(tried[Number.parseInt(part, 10)] ?? "");
      const symptom = LETTERS[part.at(-1) ?? ""];
      return f === undefined || symptom === undefined ? [] : [[f, symptom]];
    }),
  );
}

/** Symptoms as the text of an outcome. */
export function outcomeText(tried: readonly number[], symptoms: ReadonlyMap<number, Symptom>): string {
  return tried.flatMap((f, n) => (symptoms.has(f) ? [`${n}${symptoms.get(f)?.[0]}`] : [])).join(" ");
}
