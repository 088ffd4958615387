import { conversionTo, isUnit } from "../read/units.ts";

/** A heading without case, spaces, underscores and punctuation: `X_mm`, `x mm` and `X-MM` are the same. */
export const fold = (text: string): string =>
  text
    .normalize("NFKC")
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, "");

/** The words of a heading, folded. */
export const wordsOf = (text: string): readonly string[] =>
  text
    .normalize("NFKC")
    .toLowerCase()
    .split(/[^\p{L}\p{N}]+/u)
    .filter((word) => word !== "");

/** A heading that may name a unit: `X (mm)`, `x [in]`, `Length, inch`, `length mm`. */
export interface HeadingParts {
  readonly stem: string;
  readonly unit: string;
}

const BRACKETED = /^(.*?)[\s_]*[([{（【]\s*([^()[\]{}（）【】]{1,12}?)\s*[)\]}）】]\s*$/;
const TRAILING = /^(.*?)[\s,_/]+([^\s,_/]{1,8})\.?\s*$/;

/** The stem and the unit of a heading, or null when it names none. */
export function headingParts(heading: string): HeadingParts | null {
  const text = heading.normalize("NFC").trim();
  for (const pattern of [BRACKETED, TRAILING]) {
    const [, stem = "", unit = ""] = pattern.exec(text) ?? [];
    if (stem.trim() !== "" && isUnit(unit)) return { stem: stem.trim(), unit };
  }
  return null;
}

/** The unit from which the values below a heading are converted to a column; null: they are taken as they are. */
export function headingUnit(heading: string, column: string): string | null {
  const parts = headingParts(heading);
  const conversion = parts === null ? null : conversionTo(parts.unit, column);
  return parts === null || conversion === null || conversion.isSame || !conversion.isExact
    ? null
    : parts.unit;
}
