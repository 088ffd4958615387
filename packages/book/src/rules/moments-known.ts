import { nearest } from "../text/nearest.ts";
import { type Rule, rowRule } from "./rule.ts";

/** Moments at which a fastener can be driven. */
export const MOMENTS = ["start", "align", "tighten", "recheck"] as const;

const known: readonly string[] = MOMENTS;
const about = "The moments of a fastener are `start`, `align`, `tighten` and `recheck`, each at most once.";

function judge(row: {
  readonly moments: string;
}): { column: "moments"; expected: string; nearest: string | null } | null {
  const words = row.moments.split(" ").filter((word) => word !== "");
  const wrong = words.find((word, i) => !known.includes(word) || words.indexOf(word) !== i);
  if (wrong === undefined) return null;
  return {
    column: "moments",
    expected: `${known.join(", ")}, each at most once; not \`${wrong}\``,
    nearest: nearest(wrong, known),
  };
}

export const fastenersMoments: Rule = rowRule({ table: "fasteners", about, reads: ["moments"] }, () => judge);
export const mechanismFastenersMoments: Rule = rowRule(
  { table: "mechanism_fasteners", about, reads: ["moments"] },
  () => judge,
);
