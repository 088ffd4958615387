import type { Shop } from "@pinwright/book";
import type { DayNumber } from "../../model/index.ts";
import type { WorkCalendar } from "../calendar.ts";
import type { PlannedStage } from "./stage.ts";

/** Rounding of minutes that is not taken for time that is left. */
const EPSILON = 1e-9;

interface Taken {
  readonly map: Map<number, number>;
  readonly day: DayNumber;
  readonly before: number;
}

/** What benches and stages still have room for, day by day, shared by all runs. */
export class Ledger {
  readonly #shop: Shop;
  readonly #calendar: WorkCalendar;
  /** Minutes of each bench that are taken, by day. */
  readonly #minutes: readonly Map<number, number>[];
  /** Machines that each stage has taken, by day. */
  readonly #machines = new Map<string, Map<number, number>>();
  readonly #log: Taken[] = [];

  constructor(shop: Shop, calendar: WorkCalendar) {
    this.#shop = shop;
    this.#calendar = calendar;
    this.#minutes = shop.tables.benches.map(() => new Map());
  }

  /** Where to go back to with `undo`. */
  get mark(): number {
    return this.#log.length;
  }

  /** Gives back all that was taken since a mark. */
  undo(mark: number): void {
    while (this.#log.length > mark) {
      const taken = this.#log.pop();
      taken?.map.set(taken.day, taken.before);
    }
  }

  /** Whether anybody could ever work on a stage. */
  hasPeople(stage: PlannedStage): boolean {
    return stage.people > 0 && stage.benches.some((b) => (this.#shop.tables.benches[b]?.hours_day ?? 0) > 0);
  }

  /** Takes work of a stage on a day, as much of it as there is room for; gives the share of the machines that it took. */
  take(stage: PlannedStage, day: DayNumber, machines: number, minutesEach: number): Work {
    const free = this.hasPeople(stage) && minutesEach > 0 ? this.#freeMinutes(stage, day) : null;
    if (free === null && this.#calendar.hours(stage.siteId, day) <= 0) return NO_WORK;
    const done = Math.min(
      machines,
      free === null ? machines : free / minutesEach,
      this.#freeMachines(stage, day),
    );
    if (done <= EPSILON) return NO_WORK;
    const minutes = done * minutesEach;
    if (free !== null) this.#takeMinutes(stage, day, minutes);
    if (stage.mostPerDay !== null) this.#add(this.#machinesOf(stage), day, done);
    return { machines: machines - done <= EPSILON ? machines : done, minutes };
  }

  #capacity(bench: number, day: DayNumber): number {
    const row = this.#shop.tables.benches[bench];
    if (row === undefined) return 0;
    return row.people * 60 * this.#calendar.hours(row.site, day, row.hours_day);
  }

  #freeOf(bench: number, day: DayNumber): number {
    return Math.max(0, this.#capacity(bench, day) - (this.#minutes[bench]?.get(day) ?? 0));
  }

  #freeMinutes(stage: PlannedStage, day: DayNumber): number {
    return stage.benches.reduce((sum, bench) => sum + this.#freeOf(bench, day), 0);
  }

  #takeMinutes(stage: PlannedStage, day: DayNumber, minutes: number): void {
    let left = minutes;
    for (const bench of stage.benches) {
      const here = Math.min(left, this.#freeOf(bench, day));
      const map = this.#minutes[bench];
      if (here <= 0 || map === undefined) continue;
      this.#add(map, day, here);
      left -= here;
    }
  }

  #machinesOf(stage: PlannedStage): Map<number, number> {
    const map = this.#machines.get(stage.id) ?? new Map<number, number>();
    this.#machines.set(stage.id, map);
    return map;
  }

  #freeMachines(stage: PlannedStage, day: DayNumber): number {
    if (stage.mostPerDay === null) return Number.POSITIVE_INFINITY;
    return Math.max(0, stage.mostPerDay - (this.#machinesOf(stage).get(day) ?? 0));
  }

  #add(map: Map<number, number>, day: DayNumber, amount: number): void {
    const before = map.get(day) ?? 0;
    this.#log.push({ map, day, before });
    map.set(day, before + amount);
  }
}

export interface Work {
  readonly machines: number;
  readonly minutes: number;
}
const NO_WORK: Work = { machines: 0, minutes: 0 };
