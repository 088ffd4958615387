import type { Seen, Sightings, Symptom } from "../faults/index.ts";
import { worse } from "../faults/index.ts";
import type { OpenedFaultFile } from "../file/index.ts";
import { bestOhms } from "./best-ohms.ts";
import { candidateLooks } from "./candidates.ts";
import { causesOf } from "./causes.ts";
import { lookCost } from "./costs.ts";
import { type Hypothesis, hypothesesOf } from "./hypotheses.ts";
import { Says } from "./says.ts";
import {
  type CauseSuspect,
  type FaultAnswer,
  type FaultSession,
  lookKey,
  type Proposal,
  type SessionLook,
} from "./session.ts";

/** What comes first: a look, then ohms with the power off, then volts. */
const TURN: Readonly<Record<SessionLook["kind"], number>> = {
  try: 0,
  inspect: 0,
  reseat: 0,
  ohms: 1,
  part: 1,
  volts: 2,
};

/** Weight of one step of danger against a minute (common practice, no source). */
const DANGER_IS_MINUTES = 1;
// The next numbers but that of the first look were chosen by the even half of the faults of `prove/faults.ts` (decision 0036).
/** A look that tells less than this is not worth its minutes. */
const LEAST_BITS = 0.2;
/** An earlier turn is taken if it tells at least this share of what the best look of any turn does. */
const TURN_WORTH = 0.6;
/** The same of the very first look, which needs no meter (common practice, no source). */
const FIRST_WORTH = 0.25;
/** From here on whatever is likeliest is mended. */
const SURE = 0.85;
/** Chance that what was mended did not help although it was the cause: it was not mended well (common practice, no source). */
const MENDED_IN_VAIN = 0.05;
/** Suspects that looks are made for. */
const MOST_ASKED = 50;
const MOST_LOOKS = 5;
/** Measurements of ohms that are looked at more closely: the best by their bits. */
const MOST_OHMS = 6;

const bits = (p: number): number => (p <= 0 ? 0 : -p * Math.log2(p));

/** Finds faults of one machine: from what somebody said to the likeliest causes and the next look. */
export class FaultFinder {
  readonly #opened: OpenedFaultFile;
  readonly #says: Says;
  readonly #functionOf: ReadonlyMap<string, number>;
  readonly #mains: ReadonlySet<number>;

  constructor(opened: OpenedFaultFile) {
    this.#opened = opened;
    this.#says = new Says(opened.model, opened.table);
    this.#functionOf = new Map(opened.model.functions.map(({ id }, f) => [id, f]));
    this.#mains = new Set(opened.file.mains);
  }

  /** What is known after all that was said. What the machine does not have counts for nothing. */
  answer(session: FaultSession): FaultAnswer {
    const seen = this.#sightings(session);
    const dead = [...seen].flatMap(([f, what]) => (what === "works" ? [] : [f]));
    if (dead.length === 0) return { state: "nothing", causes: [], looks: [] };
    const { likely, hypotheses } = hypothesesOf(this.#opened.table, seen);
    const known = this.#weighed(hypotheses, session);
    const symptoms = likely.map(({ classes }) => this.#symptoms(classes));
    const causes = causesOf(known, symptoms, seen);
    const untried = this.#untried(known, symptoms, seen);
    const looks = this.#proposals(known, session, untried, dead);
    const isMended = session.done.some((one) => one.what === "mended" && one.helped);
    const isFound = looks.length === 0 || (known[0]?.weight ?? 0) >= SURE;
    return { state: isMended ? "mended" : isFound ? "found" : "looking", causes, looks };
  }

  /** What trying a function told is as good as what was seen at the beginning. */
  #sightings({ seen, done }: FaultSession): Sightings {
    const found = new Map<number, Seen>();
    const see = (id: string, what: Seen): void => {
      const f = this.#functionOf.get(id);
      if (f !== undefined) found.set(f, what);
    };
    for (const one of done)
      if (one.what === "looked" && one.look.kind === "try" && one.answer !== "unsure")
        see(one.look.id, one.answer === "yes" ? "works" : "dead");
    for (const [id, what] of Object.entries(seen)) see(id, what);
    return found;
  }

  /** Hypotheses by all that was looked at and mended, the likeliest first; their weights add up to 1. */
  #weighed(hypotheses: readonly Hypothesis[], { done }: FaultSession): readonly Hypothesis[] {
    const { suspects } = this.#opened.table;
    const told = hypotheses.map((one) => {
      let { weight } = one;
      for (const what of done)
        if (what.what === "mended") {
          const isMended = one.suspects.some((s) => suspects[s]?.id === what.suspect);
          if (isMended && !what.helped) weight *= MENDED_IN_VAIN;
        } else if (what.answer !== "unsure" && what.look.kind !== "try") {
          const chance = this.#says.chance(what.look, one.suspects);
          if (chance !== null) weight *= what.answer === "yes" ? chance : 1 - chance;
        }
      return { ...one, weight };
    });
    const sum = told.reduce((all, { weight }) => all + weight, 0);
    if (sum <= 0) return hypotheses;
    return told.map((one) => ({ ...one, weight: one.weight / sum })).sort((p, q) => q.weight - p.weight);
  }

  /** What a class, or two at once, would do. */
  #symptoms(classes: readonly number[]): ReadonlyMap<number, Symptom> {
    const all = new Map<number, Symptom>();
    for (const c of classes)
      for (const [f, symptom] of this.#opened.table.classes[c]?.symptoms ?? [])
        all.set(f, worse(symptom, all.get(f) ?? symptom));
    return all;
  }

  /** Functions that some causes would break and that nobody has looked at, those first that split the odds best. */
  #untried(
    known: readonly Hypothesis[],
    symptoms: readonly ReadonlyMap<number, Symptom>[],
    seen: Sightings,
  ): readonly number[] {
    const breaks = new Map<number, number>();
    for (const { weight, at } of known)
      for (const f of symptoms[at]?.keys() ?? [])
        if (!seen.has(f)) breaks.set(f, (breaks.get(f) ?? 0) + weight);
    const split = (p: number): number => Math.abs(p - 0.5);
    return [...breaks].sort((p, q) => split(p[1]) - split(q[1]) || p[0] - q[0]).map(([f]) => f);
  }

  #proposals(
    known: readonly Hypothesis[],
    session: FaultSession,
    untried: readonly number[],
    dead: readonly number[],
  ): readonly Proposal[] {
    const { file, model, table } = this.#opened;
    const asked = known.slice(0, MOST_ASKED);
    const looked = session.done.flatMap((one) => (one.what === "looked" ? [one] : []));
    const done = new Set(looked.map(({ look }) => lookKey(look)));
    const reseated = looked.flatMap(({ look, answer }) =>
      look.kind === "reseat" && answer === "no" ? look.ids : [],
    );
    const { looks, nodes } = candidateLooks({
      model,
      suspects: table.suspects,
      asked,
      untried,
      dead,
      reseated: new Set(reseated),
      mains: this.#mains,
      voltsOf: (source) => file.sources[source]?.volts ?? Number.POSITIVE_INFINITY,
      isLive: (node, source) => this.#says.meter.isLive(-1, node, source),
    });
    const name = (node: number): string => model.network.nodes[node] ?? "";
    const ohms = bestOhms(this.#says.meter, asked, nodes, MOST_OHMS + done.size).map(
      ({ a, b }): SessionLook => ({ kind: "ohms", a: name(a), b: name(b) }),
    );
    const left = [...looks, ...ohms].filter((look) => !done.has(lookKey(look)));
    return inTurn(
      left.flatMap((look) => this.#rated(look, asked)),
      session.done.length === 0,
    );
  }

  /** A look with what it tells (Shannon 1948, mutual information of a yes or no). */
  #rated(look: SessionLook, asked: readonly Hypothesis[]): readonly Proposal[] {
    const all = asked.reduce((sum, { weight }) => sum + weight, 0);
    let yes = 0;
    let certain = 0;
    const after = new Map<number, { suspect: number; yes: number; no: number }>();
    for (const { suspects, weight, at } of asked) {
      const chance = this.#says.chance(look, suspects);
      if (chance === null || all <= 0) return [];
      const p = weight / all;
      yes += p * chance;
      certain += p * (bits(chance) + bits(1 - chance));
      const own = after.get(at) ?? { suspect: suspects[0] ?? -1, yes: 0, no: 0 };
      after.set(at, { ...own, yes: own.yes + p * chance, no: own.no + p * (1 - chance) });
    }
    const best = (side: "yes" | "no", sum: number): CauseSuspect | null => {
      const causes = [...after.values()];
      const first = causes.reduce((p, q) => (q[side] > p[side] ? q : p), { suspect: -1, yes: 0, no: 0 });
      return first.suspect < 0 || sum <= 0
        ? null
        : { suspect: first.suspect, probability: first[side] / sum };
    };
    const told = bits(yes) + bits(1 - yes) - certain;
    if (told < LEAST_BITS) return [];
    return [
      {
        look,
        ...lookCost(look),
        bits: told,
        yes,
        good: (this.#says.chance(look, []) ?? 1) > 0.5 ? "yes" : "no",
        ifYes: best("yes", yes),
        ifNo: best("no", 1 - yes),
      },
    ];
  }
}

/**
 * Looks by what they tell for their minutes and danger; first of all the best of the first turn that is worth it. Where
 * nothing was looked at yet a look comes first that tells most, however little: what is seen at once needs no meter.
 */
function inTurn(looks: readonly Proposal[], isFirst: boolean): readonly Proposal[] {
  const value = ({ bits: told, minutes, danger }: Proposal): number =>
    told / (minutes + danger * DANGER_IS_MINUTES);
  const sorted = looks.toSorted((p, q) => value(q) - value(p));
  const most = looks.reduce((best, { bits: told }) => Math.max(best, told), 0);
  const worth = isFirst ? FIRST_WORTH : TURN_WORTH;
  const isWorth = (one: Proposal): boolean => one.bits >= worth * most;
  const inTurns = isFirst ? looks.toSorted((p, q) => q.bits - p.bits) : sorted;
  const first = [0, 1, 2].flatMap(
    (turn) => inTurns.find((one) => TURN[one.look.kind] === turn && isWorth(one)) ?? [],
  )[0];
  const rest = sorted.filter((one) => one !== first);
  return first === undefined ? [] : [first, ...rest].slice(0, MOST_LOOKS);
}
