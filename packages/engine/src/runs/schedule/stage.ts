import type { Shop, ShopRow } from "@pinwright/book";
import { compareText } from "@pinwright/kernel";
import { type Finding, type Languages, labelsOf, makeFinding } from "../../model/index.ts";
import { extraDays } from "../calendar.ts";
import type { StageKind } from "../input.ts";

/** A stage as it is planned with. */
export interface PlannedStage {
  readonly id: string;
  readonly labels: Languages;
  readonly kind: StageKind;
  /** Places in the list of stages; a stage comes after all that it waits for. */
  readonly after: readonly number[];
  /** Places in the shop's list of benches. */
  readonly benches: readonly number[];
  readonly siteId: string | null;
  readonly people: number;
  /** Of all its people in a usual working day. */
  readonly minutesDay: number;
  readonly minutes: number | null;
  readonly batch: number;
  /** Days beyond the next that a batch waits afterwards. */
  readonly waitDays: number;
  readonly mostPerDay: number | null;
}

export interface Stages {
  /** Each after those that it waits for. */
  readonly stages: readonly PlannedStage[];
  readonly findings: readonly Finding[];
}

/** Kind of bench at which a stage is done when it names none. */
const BENCH_KINDS: Readonly<Record<StageKind, ShopRow<"benches">["kind"] | null>> = {
  panels: "panel",
  paint: "paint",
  boards: "board",
  mechanisms: "assembly",
  harness: "harness",
  assembly: "assembly",
  test: "test",
  pack: "pack",
  transport: null,
};

/** The stages of a shop in an order in which each comes after those it waits for; what runs in a circle is told. */
export function stagesOf(shop: Shop): Stages {
  const { rows, circle } = ordered(shop.tables.stages);
  const placeOf = new Map(rows.map((row, i) => [row.id, i]));
  const stages = rows.map((row, i): PlannedStage => {
    const benches = benchesOf(shop, row);
    const first = shop.tables.benches[benches[0] ?? -1];
    return {
      id: row.id,
      labels: labelsOf(row, row.id),
      kind: row.kind,
      after: row.after.flatMap((id) => placeOf.get(id) ?? []).filter((place) => place < i),
      benches,
      siteId: first?.site ?? null,
      minutesDay: benches.reduce((sum, b) => sum + minutesOf(shop.tables.benches[b]), 0),
      people: benches.reduce((sum, b) => sum + (shop.tables.benches[b]?.people ?? 0), 0),
      minutes: row.minutes,
      batch: row.batch,
      waitDays: extraDays(row.wait_hours, first?.hours_day ?? 8),
      mostPerDay: row.most_per_day,
    };
  });
  const findings = circle.length === 0 ? [] : [makeFinding("stage-circle", "error", circle, {})];
  return { stages, findings };
}

const minutesOf = (bench: ShopRow<"benches"> | undefined): number =>
  bench === undefined ? 0 : bench.people * bench.hours_day * 60;

function benchesOf({ tables: { benches } }: Shop, row: ShopRow<"stages">): readonly number[] {
  const kind = BENCH_KINDS[row.kind];
  return benches.flatMap((bench, i) =>
    (row.benches.length > 0 ? row.benches.includes(bench.id) : bench.kind === kind) ? [i] : [],
  );
}

/** Rows after those that they wait for, else as written; those in a circle at the end, as written. */
function ordered(rows: readonly ShopRow<"stages">[]): {
  readonly rows: readonly ShopRow<"stages">[];
  readonly circle: readonly string[];
} {
  const known = new Set(rows.map((row) => row.id));
  const done = new Set<string>();
  const result: ShopRow<"stages">[] = [];
  let left = rows;
  while (left.length > 0) {
    const ready = left.find((row) => row.after.every((id) => done.has(id) || !known.has(id)));
    if (ready === undefined) break;
    done.add(ready.id);
    result.push(ready);
    left = left.filter((row) => row !== ready);
  }
  return { rows: [...result, ...left], circle: inCircle(left).sort(compareText) };
}

/** Of stages that wait for each other, those that wait for themselves and not only for such. */
function inCircle(left: readonly ShopRow<"stages">[]): string[] {
  const after = new Map(left.map((row) => [row.id, row.after]));
  const reaches = (from: string, to: string): boolean => {
    const seen = new Set<string>();
    const open = [...(after.get(from) ?? [])];
    for (let id = open.pop(); id !== undefined; id = open.pop()) {
      if (id === to) return true;
      if (seen.has(id)) continue;
      seen.add(id);
      open.push(...(after.get(id) ?? []));
    }
    return false;
  };
  return left.filter((row) => reaches(row.id, row.id)).map((row) => row.id);
}
