import type { CellRows, CellTables } from "@pinwright/book";
import {
  type AnswerOf,
  type FloorUnit,
  type KeptDefect,
  MOST_DEFECTS,
  MOST_FAILS,
  type UnitKind,
} from "@pinwright/contract";
import { compareText } from "@pinwright/kernel";
import type { QualityStore, RecordedDefect, Span, UnitFirst } from "@pinwright/store";
import type { Handlers } from "../http/bind.ts";
import type { UnitStanding } from "../records/standing.ts";
import { KEPT_TABLES } from "../releases/kept-shop.ts";
import { releasedTables } from "../service-book/past-book.ts";
import type { ServerParts } from "./parts.ts";

type Names = "floorNow" | "releasedLine" | "defects" | "passes";
type Cells = AnswerOf<"releasedLine">["tables"];
type Units = ReadonlyMap<string, UnitStanding>;

/** How the floor stands, and how well the work goes. */
export function floorHandlers({ deps, standing }: ServerParts): Pick<Handlers, Names> {
  const { quality } = deps.store;
  return {
    floorNow: async ({ query: { book, since } }) => {
      const at = new Date(deps.now()).toISOString();
      const units = await standing.units();
      const firsts = await goodAtFirst(quality, { book, from: since });
      const defects = await quality.defects({ book, from: since });
      return {
        at,
        units: unitsInWork(units, book),
        countedIn: countedIn(units, book),
        released: releasedOf(units, book),
        today: {
          yields: counted(firsts, ({ unit, what }) => ({ what, run: units.get(unit)?.run ?? "" })),
          defects: defects.length,
        },
      };
    },
    releasedLine: async ({ parts: { book, release } }) => {
      const [tables, shop] = await Promise.all([
        releasedTables(deps.store, book, release, "book"),
        releasedTables(deps.store, book, release, "shop"),
      ]);
      const none: CellRows = new Map();
      // A table that the shop did not have then is not there, whatever it has now.
      const kept = new Map(KEPT_TABLES.map((name) => [name, shop.get(name) ?? none] as const));
      return { tables: cellsOf(tables), shop: cellsOf(kept) };
    },
    defects: async ({ query }) => {
      const found = await quality.defects(query);
      return { all: found.length, defects: await withRetests(quality, found.slice(0, MOST_DEFECTS)) };
    },
    passes: async ({ query }) => {
      const firsts = await goodAtFirst(quality, query);
      const { all, failed } = await quality.failedFirst(query, MOST_FAILS);
      return {
        tests: [...(await quality.testYields(query))],
        types: counted(firsts, ({ what, type }) => ({ what, type })),
        fails: all,
        failed: [...failed],
      };
    },
  };
}

/** Tables as objects, for JSON. */
const cellsOf = (tables: CellTables): Cells =>
  Object.fromEntries(
    [...tables].map(([name, rows]) => [
      name,
      Object.fromEntries([...rows].map(([row, cells]) => [row, Object.fromEntries(cells)])),
    ]),
  );

/** Units that took their first test in a time; good are those that failed none at first and never had a defect. */
async function goodAtFirst(quality: QualityStore, span: Span): Promise<readonly UnitFirst[]> {
  const firsts = await quality.unitFirsts(span);
  const withDefect = await quality.unitsWithDefect(firsts.map(({ unit }) => unit));
  return firsts.map((one) => ({
    ...one,
    isGood: one.isGood && !withDefect.has(one.unit),
  }));
}

/** Units in groups, each counted with those of it that were good at first, in the order of the groups' names. */
function counted<G extends { readonly what: UnitKind }>(
  firsts: readonly UnitFirst[],
  groupOf: (one: UnitFirst) => G,
): (G & { readonly units: number; readonly first: number })[] {
  const groups = new Map<string, G & { units: number; first: number }>();
  for (const one of firsts) {
    const group = groupOf(one);
    const key = Object.values(group).join(" ");
    const known = groups.get(key) ?? { ...group, units: 0, first: 0 };
    known.units += 1;
    if (one.isGood) known.first += 1;
    groups.set(key, known);
  }
  return [...groups].sort(([a], [b]) => compareText(a, b)).map(([, group]) => group);
}

/** Whether a unit, or one that it is in at any depth, was released. */
function isOut(units: Units, unit: UnitStanding): boolean {
  // Who wrote that a unit is in itself must not keep this going forever.
  const seen = new Set<string>();
  for (let at: UnitStanding | undefined = unit; at !== undefined && !seen.has(at.unit); ) {
    if (at.releasedAt !== null) return true;
    seen.add(at.unit);
    at = at.within === null ? undefined : units.get(at.within.unit);
  }
  return false;
}

/** Units that are in work. Of those that are in another, only the ones that keep it from going on. */
function unitsInWork(units: Units, book: string): FloorUnit[] {
  const filled = new Map<string, string[]>();
  const inWork: UnitStanding[] = [];
  for (const unit of units.values()) {
    const { within } = unit;
    if (within !== null) filled.set(within.unit, [...(filled.get(within.unit) ?? []), within.place]);
    const isQuiet = within !== null && unit.open.length === 0 && unit.failed.length === 0;
    if (unit.book === book && !isQuiet && !isOut(units, unit)) inWork.push(unit);
  }
  return inWork
    .sort((a, b) => compareText(a.unit, b.unit))
    .map(({ unit, what, type, run, stage, site, onTheWay, within, open, failed, ...rest }) => ({
      ...{ unit, what, type, run, stage, site, onTheWay, within },
      filled: (filled.get(unit) ?? []).sort(compareText),
      open: open.map(({ defect, what: kind, at }) => ({ defect, kind, at })),
      failed: failed.map(({ test, at }) => ({ test, at })),
      ...{ begunAt: rest.begunAt, lastAt: rest.lastAt, lastPerson: rest.lastPerson },
    }));
}

/** Units of transports of which not everything has come. */
function countedIn(units: Units, book: string): AnswerOf<"floorNow">["countedIn"] {
  const ofBook = [...units.values()].filter((unit) => unit.book === book);
  const open = new Set(ofBook.flatMap(({ onTheWay }) => onTheWay?.transport ?? []));
  return ofBook.flatMap(({ unit, what, type, onTheWay, countedIn: last }) =>
    onTheWay === null && last !== null && open.has(last.transport) ? [{ unit, what, type, ...last }] : [],
  );
}

function releasedOf(units: Units, book: string): { run: string; what: UnitKind; units: number }[] {
  const counts = new Map<string, { run: string; what: UnitKind; units: number }>();
  for (const { book: of, run, what, releasedAt } of units.values()) {
    if (of !== book || releasedAt === null) continue;
    const key = `${run} ${what}`;
    const known = counts.get(key) ?? { run, what, units: 0 };
    known.units += 1;
    counts.set(key, known);
  }
  return [...counts].sort(([a], [b]) => compareText(a, b)).map(([, count]) => count);
}

/** Defects with what the tests of their units said since they were mended. */
async function withRetests(quality: QualityStore, defects: readonly RecordedDefect[]): Promise<KeptDefect[]> {
  const mendedUnits = defects.flatMap(({ unit, mended }) => (mended === null ? [] : [unit]));
  const results = new Map<string, { readonly at: string; readonly good: boolean }[]>();
  for (const { unit, at, good } of await quality.lastResults([...new Set(mendedUnits)])) {
    const known = results.get(unit);
    if (known === undefined) results.set(unit, [{ at, good }]);
    else known.push({ at, good });
  }
  const retestOf = (unit: string, mendedAt: string): "passed" | "failed" | "none" => {
    const since = (results.get(unit) ?? []).filter(({ at }) => at >= mendedAt);
    if (since.length === 0) return "none";
    return since.every(({ good }) => good) ? "passed" : "failed";
  };
  return defects.map(({ unit, kind, type, run, defect, what, says, where, mended, ...rest }) => ({
    ...{ unit, what: kind, type, run, defect, kind: what, says, where },
    ...{ station: rest.station ?? "", picture: rest.picture ?? null, at: rest.at, person: rest.person },
    mended:
      mended === null
        ? null
        : {
            ...{ cause: mended.cause, says: mended.says, minutes: mended.minutes ?? null },
            ...{ at: mended.at, person: mended.person },
          },
    retest: mended === null ? null : retestOf(unit, mended.at),
  }));
}
