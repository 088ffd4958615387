import type {
  CashWeek,
  Finding,
  FirstArticle,
  MachineCost,
  PartLots,
  PartNeed,
  PartSource,
  ProposedOrder,
  RunTiming,
  StageBlock,
  ToolPurchase,
} from "@pinwright/engine";
import { type Subject, subjectOf } from "../findings/subject-of.ts";
import type { Model } from "../model.ts";
import { namedPart, namedSupplier, partRows } from "../parts/named-part.ts";
import { type PlanQuestion, planned } from "../runs/planned.ts";
import type { NamedId } from "../steps/named.ts";

/** A finding of a plan, with what it names. */
interface PlanFinding {
  readonly finding: Finding;
  readonly subjects: readonly Subject[];
}

/** A part by its name, with its unit. */
export interface PlanPart extends NamedId {
  readonly unit: string;
}

/** All runs in figures. */
export interface RunsFigures {
  readonly currency: string;
  readonly timings: readonly RunTiming[];
  readonly costs: readonly MachineCost[];
  readonly cash: readonly CashWeek[];
  readonly findings: readonly PlanFinding[];
}

/** One run of a plan, with the names of everything in it. */
export interface RunPlan extends RunsFigures {
  readonly timing: RunTiming | null;
  readonly cost: MachineCost | null;
  readonly needs: readonly PartNeed[];
  readonly lots: readonly PartLots[];
  /** Orders in which something is for this run. */
  readonly orders: readonly ProposedOrder[];
  readonly tools: readonly ToolPurchase[];
  readonly articles: readonly FirstArticle[];
  /** Work of all runs: they share the benches. */
  readonly stages: readonly StageBlock[];
  readonly sources: ReadonlyMap<string, PartSource>;
  readonly parts: ReadonlyMap<string, PlanPart>;
  readonly suppliers: ReadonlyMap<string, NamedId>;
  readonly stageNames: ReadonlyMap<string, NamedId>;
}

const MOST_SUBJECTS = 12;

const withSubjects = (model: Model, findings: readonly Finding[]): readonly PlanFinding[] =>
  findings.map((finding) => ({
    finding,
    subjects: finding.subjects.slice(0, MOST_SUBJECTS).map((id) => subjectOf(model, id)),
  }));

/** Times, costs and money of all runs of the book. */
export function runsFigures(model: Model, question: PlanQuestion): RunsFigures {
  const { plan } = planned(model, question);
  const { currency, runs, costs, cash, findings } = plan;
  return { currency, timings: runs, costs, cash, findings: withSubjects(model, findings) };
}

/** Whether a finding is about a run, or about no run in particular. */
function isAbout(model: Model, runId: string, { subjects }: Finding): boolean {
  const runs = new Set(model.shop.tables.runs.map(({ id }) => id));
  return subjects.includes(runId) || !subjects.some((id) => runs.has(id));
}

/** Everything about one run. */
export function runPlan(
  model: Model,
  { runId, ...question }: PlanQuestion & { readonly runId: string },
): RunPlan {
  const { plan } = planned(model, question);
  const needs = plan.needs.filter((need) => need.runId === runId);
  const orders = plan.orders.filter(({ lines }) => lines.some(({ runIds }) => runIds.includes(runId)));
  const tools = plan.tools.filter((tool) => tool.runId === runId);
  const lots = plan.lots.filter((lot) => lot.orders.some(({ runIds }) => runIds.includes(runId)));
  const rows = partRows(model);
  const partIds = new Set([
    ...needs.map(({ partId }) => partId),
    ...orders.flatMap(({ lines }) => lines.map(({ partId }) => partId)),
    ...tools.map(({ partId }) => partId),
    ...plan.articles.map(({ partId }) => partId),
    ...lots.map(({ partId }) => partId),
  ]);
  const { stages, suppliers } = model.shop.tables;
  const ofRun = plan.findings.filter((finding) => isAbout(model, runId, finding));
  return {
    currency: plan.currency,
    timings: plan.runs,
    costs: plan.costs,
    cash: plan.cash,
    findings: withSubjects(model, ofRun),
    timing: plan.runs.find((run) => run.runId === runId) ?? null,
    cost: plan.costs.find((cost) => cost.runId === runId) ?? null,
    needs,
    lots,
    orders,
    tools,
    articles: plan.articles.filter(({ partId }) => needs.some((need) => need.partId === partId)),
    stages: plan.stages,
    sources: new Map([...plan.sources].filter(([id]) => partIds.has(id))),
    parts: new Map(
      [...partIds].map((id) => [id, { ...namedPart(model, id), unit: rows.get(id)?.unit ?? "each" }]),
    ),
    suppliers: new Map(
      suppliers.map(({ id }) => [id, namedSupplier(model, id) ?? { id, label: "", labelZh: "" }]),
    ),
    stageNames: new Map(
      stages.map((row) => [row.id, { id: row.id, label: row.label, labelZh: row.label_zh }]),
    ),
  };
}
