import type { Motion, OrderReason, Side, WorkStep } from "@pinwright/engine";
import type { Model } from "../model.ts";
import { type NamedId, namedTool } from "../steps/named.ts";
import { view } from "./view.ts";

/** A step that is done before, and what shows that it is. */
export interface StepBefore extends NamedId {
  readonly number: number;
  /** What shows it; several where one step has to come before for several reasons. */
  readonly reasons: readonly { readonly why: OrderReason; readonly at: string }[];
}

/** A step of work as lists and cards show it. */
export interface StepLine {
  readonly id: string;
  readonly number: number;
  readonly kind: WorkStep["kind"];
  readonly label: string;
  readonly labelZh: string;
  readonly panelId: string | null;
  readonly side: Side;
  readonly times: number;
  readonly seconds: number;
  readonly secondsFrom: WorkStep["secondsFrom"];
  readonly motions: readonly Motion[];
  readonly skill: string;
  readonly tools: readonly NamedId[];
  /** Station that somebody has fixed it to. */
  readonly stationId: string | null;
  /** Whether station and time are decisions of the book that can be taken back; else they stand in its table of steps. */
  readonly chosen: { readonly station: boolean; readonly time: boolean };
  readonly itemIds: readonly string[];
  /** In the order in which they are driven. */
  readonly fastenerIds: readonly string[];
  /** Fasteners that an earlier step drove and that are checked again here. */
  readonly recheckIds: readonly string[];
  /** Types of its fasteners in the order in which they are taken up. */
  readonly types: readonly { readonly typeId: string; readonly count: number }[];
  readonly harnessId: string | null;
  readonly mechanismTypeId: string | null;
  readonly after: readonly StepBefore[];
}

/** How many fasteners of each type a step drives. */
function typesOf({ line }: Model, { fastenerIds, recheckIds }: WorkStep): StepLine["types"] {
  const counts = new Map<string, number>();
  for (const id of [...fastenerIds, ...recheckIds]) {
    const item = line.machine.items.get(id);
    if (item?.kind === "fastener") counts.set(item.type.id, (counts.get(item.type.id) ?? 0) + 1);
  }
  return [...counts].map(([typeId, count]) => ({ typeId, count }));
}

function befores(model: Model): ReadonlyMap<string, readonly StepBefore[]> {
  const { steps, edges } = model.line.steps;
  const byId = new Map(steps.map((step) => [step.id, step]));
  const reasons = new Map<string, StepBefore["reasons"]>();
  for (const { beforeId, afterId, why, at } of edges) {
    const key = `${beforeId} ${afterId}`;
    reasons.set(key, [...(reasons.get(key) ?? []), { why, at }]);
  }
  return new Map(
    steps.map((step) => [
      step.id,
      step.afterIds.flatMap((id) => {
        const before = byId.get(id);
        if (before === undefined) return [];
        const { number, labels } = before;
        return {
          id,
          number,
          label: labels.en,
          labelZh: labels.zh,
          reasons: reasons.get(`${id} ${step.id}`) ?? [],
        };
      }),
    ]),
  );
}

/** Every step of work in the order of assembly. */
export const stepLines = view<null, StepLine>({
  uses: ({ line, shop }) => [line.steps, line.machine.items, line.machine.choices, shop.tables.drivers],
  entries: (model) => {
    const after = befores(model);
    const { choices } = model.line.machine;
    return new Map(
      model.line.steps.steps.map((step) => [
        step.id,
        {
          id: step.id,
          number: step.number,
          kind: step.kind,
          label: step.labels.en,
          labelZh: step.labels.zh,
          panelId: step.panelId,
          side: step.side,
          times: step.times,
          seconds: step.seconds,
          secondsFrom: step.secondsFrom,
          motions: step.motions,
          skill: step.skill,
          tools: step.tools.map((tool) => namedTool(model, tool)),
          stationId: step.stationId,
          chosen: {
            station: choices.get("station")?.has(step.id) ?? false,
            time: choices.get("time")?.has(step.id) ?? false,
          },
          itemIds: step.itemIds,
          fastenerIds: step.fastenerIds,
          recheckIds: step.recheckIds,
          types: typesOf(model, step),
          harnessId: step.harnessId,
          mechanismTypeId: step.mechanismTypeId,
          after: after.get(step.id) ?? [],
        },
      ]),
    );
  },
  restsInPreview: true,
});
