import type { Shop, ShopNumbers } from "@pinwright/book";
import type { MachineVariant, StageKind } from "./input.ts";
import type { StageWork } from "./schedule/schedule-run.ts";
import type { PlannedStage } from "./schedule/stage.ts";

/** Kinds of work that get quicker while a run is built: their minutes are those of the first machine. */
const LEARNT: ReadonlySet<StageKind> = new Set(["assembly", "mechanisms"]);

/** Work of a run at a stage, and whether somebody has said how long it takes. */
export interface KnownWork extends StageWork {
  readonly isKnown: boolean;
}

/**
 * Work at each stage, averaged over the machines of a run. A stage's own minutes count; else those that follow from the
 * book, shared by the stages of one kind that say nothing.
 */
export function workAt(
  stages: readonly PlannedStage[],
  variants: readonly MachineVariant[],
  counts: readonly number[],
  numbers: ShopNumbers,
): readonly KnownWork[] {
  const machines = counts.reduce((sum, count) => sum + count, 0);
  return stages.map(({ kind, minutes }) => {
    if (minutes !== null) return { firstMinutes: minutes, learningPct: 100, isKnown: true };
    const silent = stages.filter((stage) => stage.kind === kind && stage.minutes === null).length;
    let sum = 0;
    let isKnown = true;
    for (const [v, variant] of variants.entries()) {
      const count = counts[v] ?? 0;
      const own = minutesOf(variant, kind, machines);
      if (count > 0 && own === null) isKnown = false;
      sum += count * (own ?? 0);
    }
    return {
      firstMinutes: machines === 0 ? 0 : sum / machines / silent,
      learningPct: LEARNT.has(kind) ? Math.min(100, numbers.learning_pct) : 100,
      isKnown,
    };
  });
}

/** Minutes of a machine of a run of so many. */
function minutesOf(
  { minutes, boardMinutes }: MachineVariant,
  kind: StageKind,
  machines: number,
): number | null {
  if (kind === "boards" && boardMinutes.length > 0) return onCurve(boardMinutes, machines);
  return minutes[kind];
}

/** Minutes of one machine at a number of machines, between the points of a curve in a straight line. */
function onCurve(points: MachineVariant["boardMinutes"], machines: number): number {
  const after = points.findIndex((point) => point.machines >= machines);
  const high = points[after] ?? points.at(-1);
  const low = points[after - 1] ?? high;
  if (high === undefined || low === undefined) return 0;
  if (high === low || after < 0) return high.minutes;
  const share = (machines - low.machines) / (high.machines - low.machines);
  return low.minutes + share * (high.minutes - low.minutes);
}

/** What an hour of one person costs at a stage, in the shop's currency: its benches', by the people at each. */
export function rateAt(stage: PlannedStage, { tables, numbers }: Shop): number {
  const benches = stage.benches.flatMap((b) => tables.benches[b] ?? []);
  const people = benches.reduce((sum, bench) => sum + bench.people, 0);
  if (people === 0) return numbers.labour_rate;
  return benches.reduce((sum, bench) => sum + bench.people * (bench.rate ?? numbers.labour_rate), 0) / people;
}
