import { SYMPTOMS, type Symptom } from "./fault.ts";
import type { FaultTable } from "./fault-table.ts";

/** What somebody saw: one of the symptoms, or now and then. */
export type Seen = Symptom | "sometimes";

/** What was seen of functions, by their index; of those that are not in it nothing is known. */
export type Sightings = ReadonlyMap<number, Seen>;

/**
 * How often something is said when something else is so: people tick the wrong box, a lamp that is dim is called dead, a
 * switch that needs a firm push is said to work. Common practice, no source.
 */
const SAID: Readonly<Record<Symptom, Readonly<Record<Seen, number>>>> = {
  works: { works: 0.955, dead: 0.015, on: 0.005, mixed: 0.01, sometimes: 0.015 },
  dead: { works: 0.03, dead: 0.88, on: 0.02, mixed: 0.02, sometimes: 0.05 },
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

/** Faults with the same symptoms, and how likely it is that one of them is the cause. */
export interface Likely {
  /** Index of the class; two: both at once. */
  readonly classes: readonly [number] | readonly [number, number];
  /** 0 to 1; those of all answers add up to 1. */
  readonly probability: number;
}

/** Chance that a second fault is there when there is one (common practice, no source). */
const SECOND = 0.02;
/** Symptoms that are looked at for pairs: those of the single faults that explain most of what was seen. */
const MOST_PAIR_STEPS = 400_000;

/**
 * The likeliest causes of what was seen, the likeliest first: every single fault exactly, and of two at once the pairs of
 * those single faults that explain most. A wrong tick costs a cause some of its odds, and never all.
 * @param most so many answers
 */
export function likeliest(table: FaultTable, seen: Sightings, most: number): readonly Likely[] {
  // Log odds of a cause against everything being sound: only what it changes speaks for or against it.
  const gain = (...symptoms: readonly ReadonlyMap<number, Symptom>[]): number => {
    let hard = 0;
    let soft = 0;
    symptoms.forEach((one, i) => {
      for (const [f, symptom] of one) {
        const said = seen.get(f);
        const other = symptoms[1 - i]?.get(f);
        if (said === undefined || (i > 0 && other !== undefined)) continue;
        const sound = Math.log(SAID.works[said]);
        hard += Math.log(SAID[worse(symptom, other)][said]) - sound;
        soft += Math.log(SAID_OF_INTERMITTENT[said]) - sound;
      }
    });
    // Hundreds of ticks are more than a number's exponent holds.
    const [steady, fitful] = [Math.log(1 - INTERMITTENT) + hard, Math.log(INTERMITTENT) + soft];
    return Math.max(steady, fitful) + Math.log1p(Math.exp(-Math.abs(steady - fitful)));
  };
  const single = table.classes.map(({ symptoms, odds }, c) => {
    const own = gain(symptoms);
    return { classes: [c] as readonly [number], log: Math.log(odds) + own, gain: own };
  });
  const explaining = single
    .filter((one) => one.gain > 0)
    .sort((p, q) => q.gain - p.gain || p.classes[0] - q.classes[0]);
  let symptoms = 0;
  const tooMany = explaining.findIndex(({ classes: [c] }, i) => {
    symptoms += table.classes[c]?.symptoms.size ?? 0;
    return symptoms * i > MOST_PAIR_STEPS;
  });
  const paired = tooMany < 0 ? explaining : explaining.slice(0, tooMany);
  const pairs = paired.flatMap((p, i) =>
    paired.slice(i + 1).map((q) => {
      const [a, b] = [table.classes[p.classes[0]], table.classes[q.classes[0]]];
      const odds = SECOND * (a?.odds ?? 0) * (b?.odds ?? 0);
      return {
        classes: [p.classes[0], q.classes[0]] as readonly [number, number],
        log: Math.log(odds) + gain(a?.symptoms ?? NONE, b?.symptoms ?? NONE),
      };
    }),
  );
  const all: { readonly classes: Likely["classes"]; readonly log: number }[] = [...single, ...pairs];
  const best = all.reduce((log, one) => Math.max(log, one.log), Number.NEGATIVE_INFINITY);
  const sum = all.reduce((total, one) => total + Math.exp(one.log - best), 0);
  return all
    .map(({ classes, log }) => ({ classes, log, probability: Math.exp(log - best) / sum }))
    .sort((p, q) => q.log - p.log || p.classes[0] - q.classes[0] || (p.classes[1] ?? 0) - (q.classes[1] ?? 0))
    .slice(0, most)
    .map(({ classes, probability }) => ({ classes, probability }));
}

const NONE: ReadonlyMap<number, Symptom> = new Map();

/** What two faults do to one function: what does nothing cannot do it all the time or with another. */
function worse(one: Symptom, other: Symptom | undefined): Symptom {
  if (other === undefined || one === "dead") return one;
  if (other === "dead") return other;
  return SYMPTOMS.indexOf(one) <= SYMPTOMS.indexOf(other) ? one : other;
}
