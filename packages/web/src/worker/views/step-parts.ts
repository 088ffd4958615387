import type { BookRow } from "@pinwright/book";
import type { FastenerMoment, Languages, WorkStep } from "@pinwright/engine";
import { stepCautions } from "@pinwright/sheets";
import type { Model } from "../model.ts";
import { type NamedId, namedItem, namedType } from "../steps/named.ts";
import { view } from "./view.ts";

/** What is put together, set, cycled or tightened again at a mechanism's own bench. */
export interface BenchLine {
  readonly order: number;
  readonly kind: BookRow<"mechanism_steps">["kind"];
  readonly label: string;
  readonly labelZh: string;
  readonly tool: string;
  readonly unit: string;
  readonly nominal: number | null;
  readonly min: number | null;
  readonly max: number | null;
  readonly caution: string;
  readonly cautionZh: string;
}

/** What goes into a step beside its screws. */
export interface StepParts {
  readonly items: readonly (NamedId & { readonly kind: string })[];
  readonly harness: (NamedId & { readonly number: number }) | null;
  readonly mechanismType: NamedId | null;
  readonly bench: readonly BenchLine[];
  /** As its card prints them: the designer's own, and what the work itself can do. */
  readonly cautions: readonly Languages[];
  /** Moments of those of its fasteners that are driven more than once, each sequence once. */
  readonly moments: readonly (readonly FastenerMoment[])[];
}

const cautionsOf = ({ line }: Model, step: WorkStep): readonly Languages[] => {
  const zh = stepCautions(line, step, "zh");
  return stepCautions(line, step, "en").map((en, i) => ({ en, zh: zh[i] ?? en }));
};

function momentsOf({ line }: Model, step: WorkStep): StepParts["moments"] {
  const found = new Map<string, readonly FastenerMoment[]>();
  for (const id of step.fastenerIds) {
    const item = line.machine.items.get(id);
    if (item?.kind === "fastener" && item.moments.length > 1) found.set(item.moments.join(" "), item.moments);
  }
  return [...found.values()];
}

function benchLines({ book }: Model, mechanismTypeId: string | null): readonly BenchLine[] {
  return book.tables.mechanism_steps
    .filter((row) => row.mechanism_type === mechanismTypeId)
    .toSorted((a, b) => a.order - b.order)
    .map((row) => ({
      order: row.order,
      kind: row.kind,
      label: row.label,
      labelZh: row.label_zh,
      tool: row.tool,
      unit: row.unit,
      nominal: row.nominal,
      min: row.min,
      max: row.max,
      caution: row.caution,
      cautionZh: row.caution_zh,
    }));
}

/** Parts, harness, bench work and cautions of one step; no entry when there is no such step. */
export const stepParts = view<{ readonly id: string }, StepParts>({
  uses: ({ line, book }) => [
    line.steps,
    line.harnesses,
    line.machine.items,
    book.tables.mechanism_steps,
    book.tables.mechanism_types,
  ],
  entries: (model, { id }) => {
    const { machine, steps } = model.line;
    const step = steps.steps.find((one) => one.id === id);
    if (step === undefined) return new Map();
    const harness = machine.harnesses.get(step.harnessId ?? "");
    const type = model.book.tables.mechanism_types.find((row) => row.id === step.mechanismTypeId);
    return new Map([
      [
        "",
        {
          items: step.itemIds.map((itemId) => ({
            ...namedItem(model, itemId),
            kind: machine.items.get(itemId)?.kind ?? "",
          })),
          harness: harness === undefined ? null : { ...namedType(harness), number: harness.number },
          mechanismType: type === undefined ? null : namedType(type),
          bench: step.kind === "bench" ? benchLines(model, step.mechanismTypeId) : [],
          cautions: cautionsOf(model, step),
          moments: momentsOf(model, step),
        },
      ],
    ]);
  },
  restsInPreview: true,
});
