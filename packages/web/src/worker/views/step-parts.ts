import type { BookRow } from "@pinwright/book";
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

/** Parts, harness and bench work of one step; no entry when there is no such step. */
export const stepParts = view<{ readonly id: string }, StepParts>({
  uses: ({ line, book }) => [
    line.steps,
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
        },
      ],
    ]);
  },
  restsInPreview: true,
});
