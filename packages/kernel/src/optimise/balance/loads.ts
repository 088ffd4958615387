import { has } from "./bits.ts";
import { type Line, mayDo } from "./line.ts";

/** Receives a full load: its tasks are the first `count` of `load`; returns false to stop. */
export type TakeLoad = (load: Int32Array, count: number, idle: number) => boolean;

/**
 * All full station loads from a set of done tasks: sets of allowed tasks whose predecessors are done or in the load,
 * that fit into the takt, to which no task can be added (J. R. Jackson, Management Science 2 (1956) 261–271), each once
 * (scheme of E. C. Sewell and S. H. Jacobson, INFORMS J. on Computing 24 (2012) 433–442, from memory). A load is left
 * out as well when one of its tasks could be exchanged for a waiting one that dominates it (Jackson's rule): that takes
 * at least as long, is followed by at least the same tasks and allowed at no other stations later.
 */
export class Loads {
  /** Counted steps of all enumerations so far. */
  steps = 0;
  private readonly line: Line;
  private readonly rank: Int32Array;
  /** Bit j of row i: task j dominates task i. */
  private readonly dominators: Int32Array;
  private readonly waits: Int32Array;
  private readonly ready: Int32Array;
  private readonly chosen: Uint8Array;
  private readonly load: Int32Array;
  private station = 0;
  private stop = 0;
  private take: TakeLoad = () => false;
  private mostIdle = 0;
  private readonly exchange: boolean;

  /** @param exchange leave out loads by Jackson's rule */
  constructor(line: Line, exchange: boolean) {
    const { n } = line;
    this.line = line;
    this.exchange = exchange;
    this.rank = byTime(line);
    this.dominators = line.dominators;
    this.waits = new Int32Array(n);
    this.ready = new Int32Array(n);
    this.chosen = new Uint8Array(n);
    this.load = new Int32Array(n);
  }

  /**
   * Gives the loads at `station` that leave at most `mostIdle` of the takt, until `take` says stop or `most` steps are
   * done; returns whether all were given.
   * @param done the done tasks as bits, from word `at` on
   */
  from(
    done: Int32Array,
    at: number,
    station: number,
    takt: number,
    mostIdle: number,
    most: number,
    take: TakeLoad,
  ): boolean {
    const { line, waits, ready, rank } = this;
    this.station = station;
    this.take = take;
    this.mostIdle = mostIdle;
    // Making ready costs time in proportion to the tasks, as many steps do.
    this.steps += line.n >> 4;
    this.stop = this.steps + most;
    let count = 0;
    for (const i of rank) {
      if (has(done, at, i)) {
        waits[i] = -1;
        continue;
      }
      let open = 0;
      for (const j of line.preds[i] ?? []) if (!has(done, at, j)) open++;
      waits[i] = open;
      if (open === 0 && mayDo(line, i, station)) ready[count++] = i;
    }
    return this.extend(0, takt, 0, count);
  }

  /** Adds ready tasks from place `from` on to a load of `size` tasks with `rest` left; false when it was stopped. */
  private extend(size: number, rest: number, from: number, count: number): boolean {
    const { line, waits, ready, chosen, load } = this;
    if (++this.steps > this.stop) return false;
    let full = true;
    for (let k = from; k < count; k++) {
      const i = ready[k] ?? 0;
      const t = line.time[i] ?? 0;
      if (t > rest) continue;
      full = false;
      if (this.hasTwinBefore(i, k, t)) continue;
      load[size] = i;
      chosen[i] = 1;
      let more = count;
      for (const j of line.succs[i] ?? []) {
        const open = (waits[j] ?? 0) - 1;
        waits[j] = open;
        if (open === 0 && mayDo(line, j, this.station)) ready[more++] = j;
      }
      const going = this.extend(size + 1, rest - t, k + 1, more);
      for (const j of line.succs[i] ?? []) waits[j] = (waits[j] ?? 0) + 1;
      chosen[i] = 0;
      if (!going) return false;
    }
    if (!full || rest > this.mostIdle || !this.isFull(size, rest, count)) return true;
    return this.take(load, size, rest);
  }

  /** True when a ready task before place `k` that was left out could stand for task `i` at no loss of time. */
  private hasTwinBefore(i: number, k: number, t: number): boolean {
    const { line, ready, chosen, dominators } = this;
    for (let x = k - 1; x >= 0; x--) {
      const j = ready[x] ?? 0;
      if (chosen[j] === 0 && line.time[j] === t && has(dominators, i * line.words, j)) return true;
    }
    return false;
  }

  private isFull(size: number, rest: number, count: number): boolean {
    const { line, ready, chosen, load, dominators } = this;
    for (let k = 0; k < count; k++) {
      const j = ready[k] ?? 0;
      if (chosen[j] === 1) continue;
      const t = line.time[j] ?? 0;
      if (t <= rest) return false;
      if (!this.exchange) continue;
      for (let x = 0; x < size; x++) {
        const i = load[x] ?? 0;
        const longer = t - (line.time[i] ?? 0);
        if (longer >= 0 && longer <= rest && has(dominators, i * line.words, j)) return false;
      }
    }
    return true;
  }
}

/** Tasks by falling time, then by more successors, then by number. */
const byTime = ({ n, time, allSuccs }: Line): Int32Array =>
  Int32Array.from({ length: n }, (_, i) => i).sort(
    (a, b) =>
      (time[b] ?? 0) - (time[a] ?? 0) || (allSuccs[b]?.length ?? 0) - (allSuccs[a]?.length ?? 0) || a - b,
  );
