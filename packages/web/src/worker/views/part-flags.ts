import type { Finding } from "@pinwright/engine";
import type { Model } from "../model.ts";
import { view } from "./view.ts";

/** What a part is called out for. */
const PART_FLAGS = [
  "part-no-price",
  "part-no-source",
  "part-unnamed",
  "price-order",
  "price-currency",
  "pack-bad",
  "tool-no-cost",
  "single-source",
  "long-lead",
] as const;
export type PartFlag = (typeof PART_FLAGS)[number];

/** A part or nameless thing with the findings that name it. */
export interface FlaggedPart {
  readonly id: string;
  readonly flags: readonly { readonly rule: PartFlag; readonly finding: Finding }[];
}

const flagOf = (rule: string): PartFlag | undefined => PART_FLAGS.find((one) => one === rule);

/** What a finding's part is in the bill: a stuffed board is stocked under a part, but stands there as a board. */
function nodeIds({ line }: Model, id: string): readonly string[] {
  const { nodes } = line.parts.bill;
  if (nodes.has(id)) return [id];
  const found = [...nodes.values()].filter(({ partId }) => partId === id).map((node) => node.id);
  return found.length === 0 ? [id] : found;
}

/** What is called out about parts, by the thing of the bill that it is about. */
export const partFlags = view<null, FlaggedPart>({
  uses: ({ line }) => [line.findings, line.parts.bill],
  entries: (model) => {
    const flagged = new Map<string, FlaggedPart>();
    for (const finding of model.line.findings) {
      const rule = flagOf(finding.rule);
      const [subject] = finding.subjects;
      if (rule === undefined || subject === undefined) continue;
      for (const id of nodeIds(model, subject)) {
        const before = flagged.get(id)?.flags ?? [];
        if (!before.some((one) => one.rule === rule))
          flagged.set(id, { id, flags: [...before, { rule, finding }] });
      }
    }
    return flagged;
  },
  restsInPreview: true,
});
