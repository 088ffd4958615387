import type { Fact, Gate, KeptUnit } from "@pinwright/contract";
import { corrected, type DefectRecord, foldUnits, type UnitState } from "@pinwright/engine";
import type { RecordStore, StandingRows } from "@pinwright/store";

/** Where a unit stands, by its own records. */
export interface UnitStanding extends KeptUnit {
  readonly begunAt: string;
  readonly stage: string;
  readonly site: string;
  readonly onTheWay: { readonly transport: string; readonly to: string; readonly at: string } | null;
  /** The transport that it was counted in from last. */
  readonly countedIn: { readonly transport: string; readonly at: string } | null;
  /** The unit that it is in now, and its place there. */
  readonly within: { readonly unit: string; readonly place: string } | null;
  /** Defects that are not mended, and that nobody lifted. */
  readonly open: readonly (Pick<DefectRecord, "defect" | "what" | "where" | "station"> & {
    readonly at: string;
  })[];
  /** Tests whose last reading is not good, and that nobody lifted since. */
  readonly failed: readonly { readonly test: string; readonly value: number | null; readonly at: string }[];
  /** Recalls that somebody lifted for this unit. */
  readonly liftedRecalls: readonly string[];
  readonly releasedAt: string | null;
  /** When and by whom the last of its records was written. */
  readonly lastAt: string;
  readonly lastPerson: string;
}

/** Units that are folded before others get their turn. */
const AT_ONCE = 100;

const pause = (): Promise<void> => new Promise((done) => setImmediate(done));

/**
 * Where every unit stands, kept in memory. Whoever asks has it brought up to date first: only units that something was
 * recorded of since are read again.
 */
export class Standing {
  readonly #records: RecordStore;
  readonly #units = new Map<string, UnitStanding>();
  /** Where each unit was fitted last, by its own records; what was fitted there later took its place. */
  readonly #fitted = new Map<string, UnitStanding["within"]>();
  /** Units in each place of a unit, by the records of that unit. */
  readonly #inside = new Map<string, ReadonlySet<string>>();
  #no = 0;
  #waiting: readonly number[] = [];
  #isFresh = true;
  #running: Promise<void> | null = null;

  constructor(records: RecordStore) {
    this.#records = records;
  }

  /** Every unit that was begun, by its serial number. */
  async units(): Promise<ReadonlyMap<string, UnitStanding>> {
    // What was written before the question counts: whoever asks while another reading runs waits for one of his own.
    await this.#running;
    this.#running ??= this.#update().finally(() => {
      this.#running = null;
    });
    await this.#running;
    return this.#units;
  }

  async #update(): Promise<void> {
    try {
      const changed = await this.#changed();
      for (let at = 0; at < changed.length; at += AT_ONCE) {
        const some = changed.slice(at, at + AT_ONCE);
        this.#take(some, await this.#records.standing(some));
        await pause();
      }
      if (changed.length > 0) this.#settle();
    } catch (error) {
      // Some were not read: the next to ask begins anew.
      this.#isFresh = true;
      throw error;
    }
  }

  /** A unit is where it was fitted last, unless something else was fitted there since. */
  #settle(): void {
    for (const [unit, standing] of this.#units) {
      const fitted = this.#fitted.get(unit) ?? null;
      const within = fitted !== null && this.#inside.get(fitted.unit)?.has(unit) === true ? fitted : null;
      if (within !== standing.within) this.#units.set(unit, { ...standing, within });
    }
  }

  async #changed(): Promise<readonly string[]> {
    if (!this.#isFresh) {
      const { units, no, waiting } = await this.#records.changedSince(this.#no, this.#waiting);
      [this.#no, this.#waiting] = [no, waiting];
      return units;
    }
    const { no, waiting } = await this.#records.lastFact();
    const all = await this.#records.units({});
    [this.#no, this.#waiting, this.#isFresh] = [no, waiting, false];
    return all.map(({ unit }) => unit);
  }

  #take(units: readonly string[], rows: StandingRows): void {
    const facts = rows.facts.map(({ fact }) => fact);
    const states = foldUnits(facts);
    const arrivals = lastArrivals(facts);
    const last = new Map(rows.last.map((row) => [row.unit, row]));
    const failed = new Map<string, UnitStanding["failed"][number][]>();
    for (const { unit, ...bad } of rows.failed) failed.set(unit, [...(failed.get(unit) ?? []), bad]);
    for (const unit of units) {
      const state = states.get(unit);
      if (state?.begun == null) continue;
      const end = last.get(unit);
      const fitted = state.within.findLast(({ until }) => until === null);
      this.#fitted.set(unit, fitted === undefined ? null : { unit: fitted.unit, place: fitted.place });
      const inside = state.inside.filter(({ until }) => until === null);
      this.#inside.set(unit, new Set(inside.map((one) => one.unit)));
      this.#units.set(unit, {
        ...standingOf(state, state.begun),
        countedIn: arrivals.get(unit) ?? null,
        failed: (failed.get(unit) ?? []).filter(({ test, at }) => !isLifted(state, "test", test, at)),
        lastAt: end?.at ?? state.begun.source.at,
        lastPerson: end?.person ?? state.begun.source.person,
      });
    }
  }
}

/** Whether somebody lifted what holds a unit; a test only since its last reading. */
const isLifted = ({ overrides }: UnitState, gate: Gate, of: string, after = ""): boolean =>
  overrides.some((one) => one.gate === gate && one.of === of && one.source.at >= after);

function standingOf(
  state: UnitState,
  { what, type, book, revision, run = "", source }: NonNullable<UnitState["begun"]>,
): Omit<UnitStanding, "failed" | "countedIn" | "lastAt" | "lastPerson"> {
  return {
    ...{ unit: state.unit, what, type, book, revision, run, begunAt: source.at },
    ...{ stage: state.stage, site: state.site },
    onTheWay:
      state.onTheWay === null
        ? null
        : { transport: state.onTheWay.transport, to: state.onTheWay.to, at: state.onTheWay.source.at },
    within: null,
    open: [...state.defects.values()]
      .filter(({ mended, defect }) => mended === null && !isLifted(state, "defect", defect))
      .map(({ defect, what: wrong, where, station, found }) => ({
        ...{ defect, what: wrong, where, station },
        at: found.at,
      })),
    liftedRecalls: state.overrides.flatMap(({ gate, of }) => (gate === "recall" ? [of] : [])),
    releasedAt: state.released?.at ?? null,
  };
}

/** The last transport that each unit was counted in from. */
function lastArrivals(facts: readonly Fact[]): ReadonlyMap<string, NonNullable<UnitStanding["countedIn"]>> {
  const gone = corrected(facts);
  const found = new Map<string, NonNullable<UnitStanding["countedIn"]>>();
  for (const { stream, seq, at, body } of facts) {
    if (body.kind !== "arrived" || gone.has(`${stream} ${seq}`)) continue;
    const known = found.get(body.unit);
    if (known === undefined || known.at <= at) found.set(body.unit, { transport: body.transport, at });
  }
  return found;
}
