import type { AnswerOf, FloorUnit, UnitKind } from "@pinwright/contract";
import { compareText } from "@pinwright/kernel";

export type FloorNow = AnswerOf<"floorNow">;

/** A stage of the shop. */
export interface StageOfShop {
  readonly id: string;
  readonly kind: string;
}

/** A place of the machine that holds a unit. */
export interface PlaceOfMachine {
  readonly id: string;
  readonly what: "board" | "harness";
  readonly type: string;
}

/** Units at one stage; those that are on the way or inside another are at none. */
interface StageRow {
  /** Blank: machines that were begun and not handed over yet. */
  readonly stage: string;
  readonly machines: readonly string[];
  readonly counts: Readonly<Record<UnitKind, number>>;
}

type StuckWhy = "defect" | "test" | "way" | "quiet";

/** A unit that does not go on, with the first reason. */
export interface Stuck {
  readonly unit: string;
  readonly what: UnitKind;
  readonly type: string;
  readonly stage: string;
  readonly within: string;
  readonly why: StuckWhy;
  /** What is wrong, the test or the site. */
  readonly of: string;
  readonly at: string;
  /** Further reasons. */
  readonly others: number;
}

/** Boards or harnesses of a kind that machines wait for. */
export interface Wait {
  readonly what: "board" | "harness";
  readonly type: string;
  /** Machines that lack one or more. */
  readonly machines: number;
  readonly missing: number;
  /** Good and handed on, and in no machine yet. */
  readonly ready: number;
  readonly inWork: number;
}

/** How one run stands. */
export interface RunBoard {
  readonly run: string;
  readonly machines: number;
  readonly released: number;
  readonly rows: readonly StageRow[];
  readonly stuck: readonly Stuck[];
  /** Null: what a machine holds is not known yet. */
  readonly waits: readonly Wait[] | null;
  readonly today: { readonly units: number; readonly first: number };
}

/** Stages at which a kind of unit is made, before it is handed on. */
const OWN_STAGE: Readonly<Partial<Record<UnitKind, string>>> = {
  board: "boards",
  harness: "harness",
  mechanism: "mechanisms",
};
const WHYS: readonly StuckWhy[] = ["defect", "test", "way", "quiet"];
const HOUR_MS = 3_600_000;

/** Where a unit is: as it was handed over, else at the stage that makes its kind. */
export function stageOf(unit: FloorUnit, stages: readonly StageOfShop[]): string {
  if (unit.stage !== "") return unit.stage;
  const kind = OWN_STAGE[unit.what];
  return stages.find((stage) => stage.kind === kind)?.id ?? "";
}

const isFree = (unit: FloorUnit): boolean => unit.within === null && unit.onTheWay === null;

function rowsOf(units: readonly FloorUnit[], stages: readonly StageOfShop[]): readonly StageRow[] {
  const order = ["", ...stages.map(({ id }) => id)];
  const rows = new Map<string, { machines: string[]; counts: Record<UnitKind, number> }>();
  for (const unit of units.filter(isFree)) {
    const stage = stageOf(unit, stages);
    if (!order.includes(stage)) order.push(stage);
    const row = rows.get(stage) ?? {
      machines: [],
      counts: { machine: 0, board: 0, harness: 0, mechanism: 0 },
    };
    row.counts[unit.what] += 1;
    if (unit.what === "machine") row.machines.push(unit.unit);
    rows.set(stage, row);
  }
  return order.flatMap((stage) => {
    const row = rows.get(stage);
    // A stage of the shop is there also while nothing is at it; what has no stage only if there is something.
    if (row === undefined && stage === "") return [];
    return [
      {
        stage,
        machines: row?.machines ?? [],
        counts: row?.counts ?? { machine: 0, board: 0, harness: 0, mechanism: 0 },
      },
    ];
  });
}

function stuckOf(
  unit: FloorUnit,
  stages: readonly StageOfShop[],
  nowMs: number,
  quietHours: number,
): readonly Stuck[] {
  const { open, failed, onTheWay, lastAt, begunAt, within } = unit;
  const reasons: Pick<Stuck, "why" | "of" | "at">[] = [
    ...open.map(({ kind, at }) => ({ why: "defect" as const, of: kind, at })),
    ...failed.map(({ test, at }) => ({ why: "test" as const, of: test, at })),
    ...(onTheWay === null ? [] : [{ why: "way" as const, of: onTheWay.to, at: onTheWay.at }]),
  ];
  const isQuiet = lastAt !== begunAt && within === null && nowMs - Date.parse(lastAt) > quietHours * HOUR_MS;
  if (reasons.length === 0 && isQuiet) reasons.push({ why: "quiet", of: "", at: lastAt });
  const [first] = reasons;
  if (first === undefined) return [];
  return [
    {
      ...{ unit: unit.unit, what: unit.what, type: unit.type, stage: stageOf(unit, stages) },
      ...{ within: within?.unit ?? "", ...first, others: reasons.length - 1 },
    },
  ];
}

function waitsOf(
  units: readonly FloorUnit[],
  stages: readonly StageOfShop[],
  places: readonly PlaceOfMachine[],
): readonly Wait[] {
  const kinds = new Map(stages.map(({ id, kind }) => [id, kind]));
  const waits = new Map<
    string,
    { what: Wait["what"]; type: string; machines: Set<string>; missing: number }
  >();
  // A machine of which nothing was recorded but its number is not begun, and waits for nothing. Clocks of devices differ, so
  // whether a time is another one tells, not whether it is later.
  for (const machine of units.filter(({ what, lastAt, begunAt }) => what === "machine" && lastAt !== begunAt))
    for (const { id, what, type } of places) {
      if (machine.filled.includes(id)) continue;
      const wait = waits.get(`${what} ${type}`) ?? { what, type, machines: new Set<string>(), missing: 0 };
      wait.missing += 1;
      wait.machines.add(machine.unit);
      waits.set(`${what} ${type}`, wait);
    }
  return [...waits.values()]
    .map(({ what, type, machines, missing }): Wait => {
      const free = units.filter((unit) => unit.what === what && unit.type === type && isFree(unit));
      const ready = free.filter(
        ({ stage, open, failed }) =>
          stage !== "" && kinds.get(stage) !== OWN_STAGE[what] && open.length === 0 && failed.length === 0,
      ).length;
      return { what, type, machines: machines.size, missing, ready, inWork: free.length - ready };
    })
    .sort((a, b) => b.missing - b.ready - (a.missing - a.ready) || compareText(a.type, b.type));
}

/**
 * How each run stands, in the order of the runs, what belongs to none last.
 * @param nowMs ms since 1970
 * @param quietHours a unit of which nothing was recorded for so long is stuck
 */
export function floorBoards(
  floor: FloorNow,
  {
    stages,
    places,
    runOrder,
    nowMs,
    quietHours,
  }: {
    readonly stages: readonly StageOfShop[];
    /** Null: not known yet. */
    readonly places: readonly PlaceOfMachine[] | null;
    /** Runs in their order; others come after them. */
    readonly runOrder: readonly string[];
    readonly nowMs: number;
    readonly quietHours: number;
  },
): readonly RunBoard[] {
  const runs = new Set(floor.units.map(({ run }) => run));
  const placeOf = (run: string): number => {
    const place = runOrder.indexOf(run);
    return run === "" ? runOrder.length + 1 : place < 0 ? runOrder.length : place;
  };
  return [...runs]
    .sort((a, b) => placeOf(a) - placeOf(b) || compareText(a, b))
    .map((run) => {
      const units = floor.units.filter((unit) => unit.run === run);
      const released = floor.released.find((one) => one.run === run && one.what === "machine")?.units ?? 0;
      const yields = floor.today.yields.filter((one) => one.run === run);
      return {
        run,
        machines: units.filter(({ what }) => what === "machine").length + released,
        released,
        rows: rowsOf(units, stages),
        stuck: units
          .flatMap((unit) => stuckOf(unit, stages, nowMs, quietHours))
          .sort(
            (a, b) =>
              WHYS.indexOf(a.why) - WHYS.indexOf(b.why) ||
              compareText(a.at, b.at) ||
              compareText(a.unit, b.unit),
          ),
        waits: places === null ? null : waitsOf(units, stages, places),
        today: {
          units: yields.reduce((sum, one) => sum + one.units, 0),
          first: yields.reduce((sum, one) => sum + one.first, 0),
        },
      };
    });
}

/** A serial number without what all of its kind share: `m-000012` is 12. */
export const shortNumber = (unit: string): string => /^[a-z]-0*(\d+)$/u.exec(unit)?.[1] ?? unit;
