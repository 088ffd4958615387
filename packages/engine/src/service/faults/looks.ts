import { compareText } from "@pinwright/kernel";
import type { ServiceFault } from "./fault.ts";
import type { FaultModel } from "./fault-model.ts";
import type { MachineFunction } from "./functions.ts";
import type { ServiceNetwork } from "./network.ts";
import type { Suspect } from "./suspects.ts";

/** Something to do that tells causes apart. */
export type Look =
  /** See what a function does that nobody has looked at. */
  | { readonly kind: "try"; readonly f: number }
  /** Look at a plug and its crimps, wiggle it, take it off and push it home: does anything change? */
  | { readonly kind: "reseat"; readonly landingId: string }
  /** Power off and the mains plug pulled: does a meter read as good as nothing between two points? */
  | { readonly kind: "ohms"; readonly a: number; readonly b: number }
  /** Power on: are a supply's volts at a point, against its return? */
  | { readonly kind: "volts"; readonly node: number; readonly source: number };

/** What a look costs whoever does it. */
export interface LookCost {
  readonly minutes: number;
  /** 0: none; 1: the machine is open and off; 2: it is open and on. */
  readonly danger: 0 | 1 | 2;
}

/** Minutes and danger of each kind of look (common practice, no source). */
export const LOOK_COSTS: Readonly<Record<Look["kind"], LookCost>> = {
  try: { minutes: 0.5, danger: 0 },
  reseat: { minutes: 1.5, danger: 1 },
  ohms: { minutes: 2, danger: 1 },
  volts: { minutes: 2, danger: 2 },
};

/** Chance that a reading or a look tells what is not so (common practice, no source). */
const MISREAD = 0.02;
/** Chance that reseating a plug brings back a contact of it that is out (common practice, no source). */
const RESEAT_HELPS = 0.6;
/** Above this a supply is not measured by an owner: the limit of extra-low direct voltage in dry places of IEC 61140, from memory. */
const MOST_MEASURED_V = 60;

/** Points of a function's circuit that a meter reaches, from its element to the poles of its supply, in order. */
function reachable(network: ServiceNetwork, one: MachineFunction): readonly number[] {
  const beside = new Map<number, number[]>();
  const add = (a: number, b: number): void => {
    const list = beside.get(a);
    if (list === undefined) beside.set(a, [b]);
    else list.push(b);
  };
  const own = new Set([one.joint, ...one.controls, ...one.between]);
  network.joints.forEach(({ a, b }, n) => {
    if (network.leads[n] !== true && !own.has(n)) return;
    add(a, b);
    add(b, a);
  });
  const from = new Map<number, number>();
  const start = network.joints[one.joint];
  if (start === undefined) return [];
  const queue = [start.a, start.b];
  for (const node of queue) from.set(node, -1);
  for (const node of queue)
    for (const other of beside.get(node) ?? [])
      if (!from.has(other)) {
        from.set(other, node);
        queue.push(other);
      }
  const goals = [
    ...network.sources.flatMap(({ plus, minus }) => [plus, minus]),
    ...one.controls.flatMap((n) => [network.joints[n]?.a ?? -1, network.joints[n]?.b ?? -1]),
  ];
  const found = new Set<number>(queue.slice(0, 2));
  for (const goal of goals) {
    if (!from.has(goal)) continue;
    for (let node = goal; node >= 0; node = from.get(node) ?? -1) found.add(node);
  }
  return [...found].sort((p, q) => p - q);
}

/** Most points whose pairs are measured between. */
const MOST_POINTS = 200;

/**
 * Looks that could tell some suspects apart: trying functions that they would spoil, reseating their plugs, ohms between the
 * ends of what is suspected and along the circuits that are dead, volts of extra-low supplies at the same points.
 * @param dead functions that do not do what they should
 * @param untried functions that nobody has looked at
 */
export function looksFor(
  model: FaultModel,
  suspects: readonly Suspect[],
  dead: readonly number[],
  untried: readonly number[],
  voltsOf: (source: number) => number,
): readonly Look[] {
  const { network } = model;
  const looks: Look[] = untried.map((f) => ({ kind: "try", f }));
  const landings = new Set<string>();
  const pairs = new Set<string>();
  const points = new Set<number>();
  const pair = (a: number, b: number): void => {
    if (a !== b) pairs.add(`${Math.min(a, b)} ${Math.max(a, b)}`);
  };
  for (const { fault } of suspects) {
    if (fault.kind === "open" || fault.kind === "closed") {
      const joint = network.joints[fault.joint];
      if (joint === undefined) continue;
      pair(joint.a, joint.b);
      points.add(joint.a).add(joint.b);
      if (joint.kind === "contact") landings.add(landingOf(joint.id));
    } else if (fault.kind === "short") pair(fault.a, fault.b);
  }
  for (const f of dead) {
    const one = model.functions[f];
    if (one === undefined) continue;
    const ends = network.joints[one.joint];
    for (const node of reachable(network, one)) {
      if (ends !== undefined) {
        pair(ends.a, node);
        pair(ends.b, node);
      }
      points.add(node);
    }
  }
  const some = [...points].sort((p, q) => p - q).slice(0, MOST_POINTS);
  some.forEach((a, i) => {
    for (const b of some.slice(i + 1)) pair(a, b);
  });
  for (const landingId of [...landings].sort(compareText)) looks.push({ kind: "reseat", landingId });
  for (const key of pairs) {
    const [a, b] = key.split(" ").map(Number);
    looks.push({ kind: "ohms", a: a ?? 0, b: b ?? 0 });
  }
  network.sources.forEach((_, source) => {
    if (voltsOf(source) <= MOST_MEASURED_V)
      for (const node of points) looks.push({ kind: "volts", node, source });
  });
  return looks;
}

/** Landing of a point: what stands before its last dot. */
const landingOf = (pointId: string): string => {
  const dot = pointId.lastIndexOf(".");
  const colon = pointId.lastIndexOf(":");
  return dot > colon ? pointId.slice(0, dot) : pointId;
};

/** What suspects would make each look say: worked out when it is first asked, and kept. */
export class LookTable {
  readonly #model: FaultModel;
  readonly #suspects: readonly Suspect[];
  readonly #sets: Int32Array[] = [];
  readonly #live: ((node: number, source: number) => boolean)[] = [];
  readonly #symptoms: ReadonlyMap<number, unknown>[] = [];

  constructor(model: FaultModel, suspects: readonly Suspect[]) {
    this.#model = model;
    this.#suspects = suspects;
  }

  /** Chance that a look says yes (it works, it changed, it leads, it has volts) if a suspect is the cause. */
  chance(look: Look, s: number): number {
    const sure = (says: boolean): number => (says ? 1 - MISREAD : MISREAD);
    switch (look.kind) {
      case "try":
        return sure(this.#kept(this.#symptoms, s, (f) => this.#model.symptoms(f)).has(look.f) !== true);
      case "reseat": {
        const fault = this.#suspects[s]?.fault;
        const joint = fault?.kind === "open" ? this.#model.network.joints[fault.joint] : undefined;
        const isThere = joint?.kind === "contact" && landingOf(joint.id) === look.landingId;
        return isThere ? RESEAT_HELPS : MISREAD;
      }
      case "ohms": {
        const sets = this.#kept(this.#sets, s, (f) => this.#model.joined(f));
        return sure(sets[look.a] === sets[look.b]);
      }
      case "volts":
        return sure(this.#kept(this.#live, s, (f) => this.#model.live(f))(look.node, look.source));
    }
  }

  #kept<T>(known: T[], s: number, make: (faults: readonly ServiceFault[]) => T): T {
    const before = known[s];
    if (before !== undefined) return before;
    const fault = this.#suspects[s]?.fault;
    const made = make(fault === undefined ? [] : [fault]);
    known[s] = made;
    return made;
  }
}

const bits = (p: number): number => (p <= 0 ? 0 : -p * Math.log2(p));

/** A look with what it is worth. */
export interface RatedLook {
  readonly look: Look;
  /** Bits that its answer is expected to tell (Shannon 1948, mutual information of a yes or no). */
  readonly bits: number;
  /** Chance that it says yes, by what is known now. */
  readonly yes: number;
}

/** Weight of one step of danger against a minute (common practice, no source). */
const DANGER_IS_MINUTES = 1;

/**
 * Looks by what they tell for their minutes and their danger, the best first.
 * @param weights how likely each suspect of the table is; they need not add up to 1
 * @param worth `bits`: by what they tell alone
 */
export function rateLooks(
  table: LookTable,
  weights: readonly number[],
  looks: readonly Look[],
  worth: "effort" | "bits",
): readonly RatedLook[] {
  const all = weights.reduce((sum, weight) => sum + weight, 0);
  const rated = looks.map((look): RatedLook => {
    let yes = 0;
    let known = 0;
    weights.forEach((weight, s) => {
      const chance = table.chance(look, s);
      const p = weight / all;
      yes += p * chance;
      known += p * (bits(chance) + bits(1 - chance));
    });
    return { look, bits: bits(yes) + bits(1 - yes) - known, yes };
  });
  const value = ({ look, bits: told }: RatedLook): number => {
    const { minutes, danger } = LOOK_COSTS[look.kind];
    return worth === "bits" ? told : told / (minutes + danger * DANGER_IS_MINUTES);
  };
  return rated.toSorted((p, q) => value(q) - value(p));
}

/** Weights of the suspects after a look said yes or no (Bayes). */
export const afterLook = (
  table: LookTable,
  weights: readonly number[],
  look: Look,
  saidYes: boolean,
): readonly number[] =>
  weights.map((weight, s) => {
    const chance = table.chance(look, s);
    return weight * (saidYes ? chance : 1 - chance);
  });
