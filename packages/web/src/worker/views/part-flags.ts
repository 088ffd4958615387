import type { Finding } from "@pinwright/engine";
import { view } from "./view.ts";

/** What a part is called out for. */
export const PART_FLAGS = [
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

/** What is called out about parts, by the part that it is about. */
export const partFlags = view<null, FlaggedPart>({
  uses: ({ line }) => [line.findings],
  entries: ({ line }) => {
    const flagged = new Map<string, FlaggedPart>();
    for (const finding of line.findings) {
      const rule = flagOf(finding.rule);
      const [id] = finding.subjects;
      if (rule === undefined || id === undefined) continue;
      const before = flagged.get(id)?.flags ?? [];
      if (!before.some((one) => one.rule === rule))
        flagged.set(id, { id, flags: [...before, { rule, finding }] });
    }
    return flagged;
  },
  restsInPreview: true,
});
