import type { AppWords } from "@pinwright/words/app";
import type { FindingEntry } from "../../worker/views/findings.ts";

type Bound = FindingEntry["bounds"][number];

/** Units by the end of a number's name, longest first. */
const UNITS: readonly (readonly [string, string])[] = [
  ["_mm2", " mm²"],
  ["_mm", " mm"],
  ["_deg", "°"],
  ["_pct", " %"],
  ["_v", " V"],
  ["_a2s", " A²s"],
  ["_mohm", " mΩ"],
  ["ohm", " Ω"],
  ["volts", " V"],
  ["_a", " A"],
  ["_ms", " ms"],
  ["_s", " s"],
  ["_mj", " mJ"],
  ["_j", " J"],
  ["_k_w", " K/W"],
  ["_w", " W"],
  ["_c", " °C"],
];

/** The unit that the name of a number says, with the space before it. */
export const unitOf = (name: string): string => UNITS.find(([end]) => name.endsWith(end))?.[1] ?? "";

/** The name of a number in the reader's language; a number that has none is called by its plain name. */
export function numberName(words: AppWords["checks"], name: string): string {
  const names: Readonly<Record<string, string>> = words.numbers;
  return names[name] ?? name.replaceAll("_", " ");
}

/** One way in which an accepted finding would open again, as a part of a sentence. */
export function boundText(words: AppWords["checks"], { name, relation, limit }: Bound): string {
  if (name === "severity") return words.serious;
  const text = decoded(limit) + unitOf(name);
  const what = numberName(words, name);
  if (relation === "<=") return words.above(what, text);
  return relation === ">=" ? words.below(what, text) : words.other(what, text);
}

/** A limit as the book writes it, with its spaces; a hand-written one may hold a lone percent sign. */
function decoded(limit: string): string {
  try {
    return decodeURIComponent(limit);
  } catch {
    return limit;
  }
}
