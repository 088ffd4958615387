import { has, put } from "./bits.ts";
import type { Line } from "./line.ts";
import { Loads } from "./loads.ts";
import type { Measure } from "./measure.ts";
import { Queue } from "./queue.ts";
import { States } from "./states.ts";
import type { Windows } from "./windows.ts";

/** A question: can the line be done with this takt at so many stations? */
export interface Question {
  readonly line: Line;
  readonly takt: number;
  readonly stations: number;
  readonly measures: readonly Measure[];
  readonly windows: Windows;
}

/** Station of each task; `no` when proven impossible; `open` when the steps ran out. */
export type Answer = Int32Array | "no" | "open";

/** Steps of the first look at the loads from a state; each later look may take so many times more. */
const FIRST_LOOK = 5000;
const LONGER = 8;

/** Share of the mean task time that a task still to do counts for. */
const TO_DO = 0.0001;

/**
 * Branch and bound over full station loads, station by station, with memory of the sets of done tasks, cyclic best
 * first (branch, bound and remember: E. C. Sewell, S. H. Jacobson, INFORMS J. on Computing 24 (2012) 433–442, from
 * memory). A state is dropped when the idle time, under any measure, exceeds what all stations together can spare,
 * when a task misses its last station, or when the same tasks were done with as few stations. It can be run on and on;
 * loads that a first look left out are looked at later, so that the end of the search is a proof.
 */
export class LoadSearch {
  private readonly question: Question;
  private readonly loads: Loads;
  private readonly states: States;
  private readonly queues: Queue[];
  private readonly spare: Float64Array;
  /** Tasks that must be done when so many stations are filled, as bits. */
  private readonly due: Int32Array;
  private readonly set: Int32Array;
  private readonly weight: number;
  private unfinished: number[] = [];
  private look = FIRST_LOOK;
  private at = 0;
  private found = -1;

  constructor(question: Question) {
    const { line, takt, stations, measures, windows } = question;
    this.question = question;
    this.loads = new Loads(line, true);
    this.states = new States(line.words);
    this.queues = Array.from({ length: stations }, () => new Queue());
    this.spare = Float64Array.from(measures, ({ weight, full }) => stations * full - sum(weight));
    this.due = new Int32Array((stations + 1) * line.words);
    for (let i = 0; i < line.n; i++) {
      for (let s = (windows.last[i] ?? 0) + 1; s <= stations; s++) put(this.due, s * line.words, i);
    }
    this.set = new Int32Array(line.words);
    this.weight = line.total / Math.max(1, line.n) || takt;
    this.states.add(this.set, -1, 0);
    this.queues[0]?.push(0, 0);
  }

  /** Counted steps so far. */
  get steps(): number {
    return this.loads.steps;
  }

  /** Searches on for about so many steps. */
  run(steps: number): Answer {
    const stop = this.steps + steps;
    if (this.question.line.n === 0) return new Int32Array(0);
    while (this.steps < stop) {
      const x = this.next();
      if (x < 0) {
        if (this.unfinished.length === 0) return "no";
        this.look *= LONGER;
        for (const y of this.unfinished.splice(0)) this.queues[this.states.stationsOf(y)]?.push(y, 0);
        continue;
      }
      this.expand(x, Math.min(this.look, Math.max(FIRST_LOOK, stop - this.steps)));
      if (this.found >= 0) return this.plan(this.found);
    }
    return "open";
  }

  /** The best state of the next station that has any. */
  private next(): number {
    const { queues, states } = this;
    for (let tries = 0; tries < queues.length; tries++) {
      const station = this.at;
      this.at = station + 1 === queues.length ? 0 : station + 1;
      for (let x = queues[station]?.pop() ?? -1; x >= 0; x = queues[station]?.pop() ?? -1) {
        if (states.isBest(x)) return x;
      }
    }
    return -1;
  }

  private expand(x: number, look: number): void {
    const { question, states } = this;
    const { line, measures } = question;
    const { words } = line;
    const done = states.bits.slice(x * words, (x + 1) * words);
    let waiting = 0;
    for (let i = 0; i < line.n; i++) if (!has(done, 0, i)) waiting++;
    for (let station = states.stationsOf(x); station >= 0 && station < question.stations; ) {
      const left = Float64Array.from(measures, ({ weight, full }, k) => {
        let spare = (this.spare[k] ?? 0) - station * full;
        for (let i = 0; i < line.n; i++) if (has(done, 0, i)) spare += weight[i] ?? 0;
        return spare;
      });
      station = this.fill(x, done, station, left, waiting, look);
    }
  }

  /** Adds the states that full loads at `station` lead to; where no task may be done there, returns the next station. */
  private fill(
    x: number,
    done: Int32Array,
    station: number,
    left: Float64Array,
    waiting: number,
    look: number,
  ): number {
    const { states, set, question } = this;
    let next = -1;
    const all = this.loads.from(done, 0, station, question.takt, left[0] ?? 0, look, (load, count, idle) => {
      set.set(done);
      for (let k = 0; k < count; k++) put(set, 0, load[k] ?? 0);
      if (!this.canFollow(station + 1, load, count, left)) return true;
      if (count === 0) {
        next = station + 1;
        return true;
      }
      const y = states.add(set, x, station + 1);
      if (y < 0) return true;
      if (count === waiting) {
        this.found = y;
        return false;
      }
      const wasted = (this.spare[0] ?? 0) - (left[0] ?? 0) + idle;
      const rank = wasted / ((station + 1) * this.weight) - TO_DO * (waiting - count);
      this.queues[station + 1]?.push(y, rank);
      return true;
    });
    if (!all && this.found < 0) this.unfinished.push(x);
    return next;
  }

  /** True unless a bound forbids the set that a load completes. */
  private canFollow(stations: number, load: Int32Array, count: number, left: Float64Array): boolean {
    const { question, due, set } = this;
    const { measures, line } = question;
    for (let w = 0; w < line.words; w++) {
      if (((due[stations * line.words + w] ?? 0) & ~(set[w] ?? 0)) !== 0) return false;
    }
    for (let k = 1; k < measures.length; k++) {
      const measure = measures[k];
      if (measure === undefined) continue;
      let idle = measure.full;
      for (let x = 0; x < count; x++) idle -= measure.weight[load[x] ?? 0] ?? 0;
      if (idle > (left[k] ?? 0)) return false;
    }
    return true;
  }

  private plan(last: number): Int32Array {
    const { states, question } = this;
    const { n, words } = question.line;
    const stationOf = new Int32Array(n);
    for (let x = last; x > 0; x = states.parentOf(x)) {
      const p = states.parentOf(x);
      for (let i = 0; i < n; i++) {
        if (has(states.bits, x * words, i) && !has(states.bits, p * words, i)) {
          stationOf[i] = states.stationsOf(x) - 1;
        }
      }
    }
    return stationOf;
  }
}

const sum = (list: Float64Array): number => list.reduce((a, b) => a + b, 0);
