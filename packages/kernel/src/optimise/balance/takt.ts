import { greedyPlan } from "./greedy.ts";
import type { Line } from "./line.ts";
import { heaviest } from "./plan.ts";
import { Probe, TaktBounds } from "./probe.ts";
import type { Answer } from "./search.ts";

/** Steps for each takt in the first round; each later round looks four times as long. */
const FIRST_ROUND = 20_000;

/**
 * The least takt for a number of stations, by asking for takts whether the stations can do the work: bounds, quick plans
 * and a short search halve the interval; then longer and longer searches step down from the best plan. An answer "no"
 * excludes every smaller takt too.
 */
export class TaktSearch {
  best: Int32Array;
  /** Takt of the best plan, and one that no plan goes below. */
  high: number;
  bound: number;
  steps = 0;
  private readonly line: Line;
  private readonly stations: number;
  private readonly probes = new Map<number, Probe>();

  constructor(line: Line, stations: number, plan: Int32Array) {
    this.line = line;
    this.stations = stations;
    this.best = plan;
    this.high = heaviest(line, plan);
    this.bound = Math.min(this.high, leastPossible(line, stations));
  }

  run(most: number): void {
    // Where tasks may be done anywhere, so long a takt lets every way of filling the stations succeed.
    const easy = this.bound + this.line.time.reduce((a, b) => Math.max(a, b), 0);
    if (easy < this.high) this.learn(easy, this.quick(easy));
    this.halve((takt) => (this.steps < most / 2 ? this.quick(takt) : "open"));
    this.halve((takt) => (this.steps < most ? this.ask(takt, FIRST_ROUND) : "open"));
    for (let share = 4 * FIRST_ROUND; this.bound < this.high && this.steps < most; share *= 4) {
      this.descend(share, most);
    }
  }

  /** Halves the interval of takts, an open question counting as a no for now. */
  private halve(ask: (takt: number) => Answer): void {
    for (let low = this.bound; low < this.high; ) {
      const takt = Math.floor((low + this.high) / 2);
      const answer = ask(takt);
      this.learn(takt, answer);
      if (answer === "no" || answer === "open") low = takt + 1;
    }
  }

  /** Steps down from the best plan, twice as far after each new plan, until the next takt stays open. */
  private descend(share: number, most: number): void {
    for (let step = 1; this.bound < this.high && this.steps < most; ) {
      const takt = Math.max(this.bound, this.high - step);
      const answer = this.ask(takt, Math.min(share, most - this.steps));
      this.learn(takt, answer);
      if (answer !== "no" && answer !== "open") step *= 2;
      else if (step > 1) step = 1;
      else return;
    }
  }

  private learn(takt: number, answer: Answer): void {
    if (answer === "no") this.bound = Math.max(this.bound, takt + 1);
    else if (answer !== "open") {
      this.best = answer;
      this.high = heaviest(this.line, answer);
    }
  }

  private quick(takt: number): Answer {
    const { stationOf, steps } = greedyPlan(this.line, takt, this.stations, this.stations);
    this.steps += steps;
    return stationOf ?? "open";
  }

  private ask(takt: number, steps: number): Answer {
    let probe = this.probes.get(takt);
    if (probe === undefined) {
      const question = new TaktBounds(this.line, takt).question(this.stations);
      if (question === null) return "no";
      probe = new Probe(question);
      this.probes.set(takt, probe);
    }
    const before = probe.steps;
    const answer = probe.run(steps);
    this.steps += probe.steps - before;
    return answer;
  }
}

/** A takt that bounds cannot exclude, below which they exclude each. */
const leastPossible = (line: Line, stations: number): number => {
  let low = Math.max(Math.ceil(line.total / stations), 0);
  for (const t of line.time) low = Math.max(low, t);
  let high = Math.max(low, line.total);
  // Bounds are not quite monotone in the takt, plans are: what is excluded excludes all below.
  while (low < high) {
    const takt = Math.floor((low + high) / 2);
    if (new TaktBounds(line, takt).question(stations) === null) low = takt + 1;
    else high = takt;
  }
  return low;
};
