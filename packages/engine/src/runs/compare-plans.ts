import { compareText, type Decimal } from "@pinwright/kernel";
import type { CostKind, DayNumber, MachineCost, RunsPlan, Total } from "../model/index.ts";

/** One run as it is set beside another. */
export interface RunFigures {
  readonly runId: string;
  readonly machines: number;
  readonly shipDay: DayNumber | null;
  readonly startDay: DayNumber | null;
  readonly readyDay: DayNumber | null;
  readonly isLate: boolean;
  readonly heldBy: string | null;
  /** Of one machine. */
  readonly cost: Total;
  readonly kinds: ReadonlyMap<CostKind, Decimal>;
}

/** Two runs, or one in two plans. Null: only the other one is there. */
export interface RunPair {
  readonly a: RunFigures | null;
  readonly b: RunFigures | null;
  /** Cost of one machine by kind, in descending order of the larger. */
  readonly kinds: readonly { readonly kind: CostKind; readonly a: Decimal; readonly b: Decimal }[];
  /** What makes the most difference in the cost of one machine, in descending order of it. */
  readonly contributors: readonly {
    readonly id: string;
    readonly kind: CostKind;
    readonly labels: MachineCost["contributors"][number]["labels"];
    readonly a: Decimal;
    readonly b: Decimal;
  }[];
}

export interface PlanPair {
  readonly currency: string;
  readonly runs: readonly RunPair[];
  /** Money that goes out until the end of each week. */
  readonly cash: readonly { readonly week: DayNumber; readonly a: Decimal; readonly b: Decimal }[];
  /** All that goes out. */
  readonly outlay: { readonly a: Decimal; readonly b: Decimal };
  readonly orders: { readonly a: number; readonly b: number };
}

/** Two plans side by side, run by run: before and after a change. */
export function comparePlans(a: RunsPlan, b: RunsPlan): PlanPair {
  const ids = [...new Set([...a.runs, ...b.runs].map((run) => run.runId))].sort(compareText);
  return {
    currency: a.currency || b.currency,
    runs: ids.map((id) => pairOf(a, id, b, id)),
    cash: cashPairs(a, b),
    outlay: { a: a.cash.at(-1)?.total ?? 0n, b: b.cash.at(-1)?.total ?? 0n },
    orders: { a: a.orders.length, b: b.orders.length },
  };
}

/** Two runs of one plan side by side. */
export const compareRuns = (plan: RunsPlan, runIdA: string, runIdB: string): RunPair =>
  pairOf(plan, runIdA, plan, runIdB);

function figuresOf(plan: RunsPlan, runId: string): RunFigures | null {
  const timing = plan.runs.find((run) => run.runId === runId);
  const cost = plan.costs.find((own) => own.runId === runId);
  if (timing === undefined || cost === undefined) return null;
  const { machines, shipDay, startDay, readyDay, isLate, heldBy } = timing;
  const kinds = new Map(cost.kinds.map(({ kind, each }) => [kind, each]));
  return { runId, machines, shipDay, startDay, readyDay, isLate, heldBy, cost: cost.each, kinds };
}

function pairOf(planA: RunsPlan, idA: string, planB: RunsPlan, idB: string): RunPair {
  const a = figuresOf(planA, idA);
  const b = figuresOf(planB, idB);
  const kinds = [...new Set([...(a?.kinds.keys() ?? []), ...(b?.kinds.keys() ?? [])])].map((kind) => ({
    kind,
    a: a?.kinds.get(kind) ?? 0n,
    b: b?.kinds.get(kind) ?? 0n,
  }));
  kinds.sort((x, y) => falling(larger(x), larger(y)) || compareText(x.kind, y.kind));
  return { a, b, kinds, contributors: contributorPairs(costOf(planA, idA), costOf(planB, idB)) };
}

const costOf = (plan: RunsPlan, runId: string): MachineCost | undefined =>
  plan.costs.find((own) => own.runId === runId);

interface Pair {
  readonly a: Decimal;
  readonly b: Decimal;
}

const larger = ({ a, b }: Pair): Decimal => (a > b ? a : b);
const apart = ({ a, b }: Pair): Decimal => (a > b ? a - b : b - a);
const falling = (a: Decimal, b: Decimal): number => (a > b ? -1 : a < b ? 1 : 0);

function contributorPairs(a: MachineCost | undefined, b: MachineCost | undefined): RunPair["contributors"] {
  const pairs = new Map<string, RunPair["contributors"][number]>();
  for (const { id, kind, labels, each } of a?.contributors ?? [])
    pairs.set(`${id} ${kind}`, { id, kind, labels, a: each, b: 0n });
  for (const { id, kind, labels, each } of b?.contributors ?? [])
    pairs.set(`${id} ${kind}`, { id, kind, labels, a: pairs.get(`${id} ${kind}`)?.a ?? 0n, b: each });
  return [...pairs.values()]
    .filter((pair) => pair.a !== pair.b)
    .sort((x, y) => falling(apart(x), apart(y)) || compareText(x.id, y.id));
}

/** Both curves week by week, from the first payment of either to the last. */
function cashPairs(a: RunsPlan, b: RunsPlan): PlanPair["cash"] {
  const weeks = [...new Set([...a.cash, ...b.cash].map(({ week }) => week))].sort((x, y) => x - y);
  const until = ({ cash }: RunsPlan, week: DayNumber): Decimal =>
    cash.findLast((own) => own.week <= week)?.total ?? 0n;
  return weeks.map((week) => ({ week, a: until(a, week), b: until(b, week) }));
}
