import { columnStem, conversionTo } from "../read/units.ts";
import type { Table } from "../schema/table.ts";
import { nearest } from "../text/nearest.ts";
import { fold, headingParts, headingUnit, wordsOf } from "./fold.ts";
import { LABEL_WORDS } from "./label-words.ts";

/** Why a heading is taken for a column, the surest first. */
export const GUESSES = [
  /** It was mapped so before. */
  "remembered",
  /** It is the column's name. */
  "exact",
  /** It is the name but for case, spaces and punctuation. */
  "folded",
  /** It is the name without its unit, followed by a unit that can be converted: `X (in)`. */
  "unit",
  /** It is the name without its unit. */
  "stem",
  /** It is a usual word for the column. */
  "label",
  /** It has all words of the name. */
  "words",
  /** It is spelled almost like the name. */
  "nearest",
] as const;

export type Guess = (typeof GUESSES)[number];

/** A heading of a foreign sheet and the column that its values go to. */
export interface MappedHeading {
  readonly heading: string;
  /** Null when the values are not taken. */
  readonly column: string | null;
  /** Unit of the values when it is another one than the column's: they are converted. */
  readonly unit: string | null;
  /** How the column was found; null when none was, or when a person chose. */
  readonly how: Guess | null;
}

/** A mapping that was made before. */
export interface RememberedMapping {
  readonly table: string;
  readonly header: readonly string[];
  /** For each heading its column; empty when it was not taken. */
  readonly columns: readonly string[];
}

/** A heading that names a unit fits a column only when its values can be converted without rounding. */
function unitFits(heading: string, column: string): boolean {
  const parts = headingParts(heading);
  if (parts === null) return true;
  return conversionTo(parts.unit, column)?.isExact === true;
}

/** Whether the folded heading, or the heading without its unit, is one of some words. */
function isOneOf(heading: string, words: readonly string[]): boolean {
  const parts = headingParts(heading);
  return words.includes(fold(heading)) || (parts !== null && words.includes(fold(parts.stem)));
}

const stemOf = (column: string): string => columnStem(column) ?? column;

type Fits = (heading: string, column: string) => boolean;

const FITS: Readonly<Record<Exclude<Guess, "remembered" | "words" | "nearest">, Fits>> = {
  exact: (heading, column) => heading === column,
  folded: (heading, column) => fold(heading) === fold(column),
  unit: (heading, column) => {
    const parts = headingParts(heading);
    return parts !== null && fold(parts.stem) === fold(stemOf(column)) && unitFits(heading, column);
  },
  stem: (heading, column) => fold(heading) === fold(stemOf(column)),
  label: (heading, column) => isOneOf(heading, LABEL_WORDS[column] ?? []) && unitFits(heading, column),
};

/** The column whose name has most words of those in the heading, all of them. */
function byWords(heading: string, columns: readonly string[]): string | null {
  const words = new Set(wordsOf(heading));
  let best: string | null = null;
  let most = 0;
  for (const column of columns) {
    const own = wordsOf(stemOf(column));
    if (own.length <= most || !own.every((word) => words.has(word)) || !unitFits(heading, column)) continue;
    best = column;
    most = own.length;
  }
  return best;
}

function byNearest(heading: string, columns: readonly string[]): string | null {
  const folded = new Map(columns.map((column) => [fold(column), column]));
  const found = nearest(fold(heading), folded.keys());
  const column = found === null ? null : (folded.get(found) ?? null);
  return column !== null && unitFits(heading, column) ? column : null;
}

function pick(how: Exclude<Guess, "remembered">, heading: string, columns: readonly string[]): string | null {
  if (how === "words") return byWords(heading, columns);
  if (how === "nearest") return byNearest(heading, columns);
  return columns.find((column) => FITS[how](heading, column)) ?? null;
}

/** What was done with a heading before: the last mapping of the same headings, else the last that has it. */
function recall(
  header: readonly string[],
  table: Table,
  remembered: readonly RememberedMapping[],
): (heading: string, at: number) => string | null {
  const own = remembered.filter((mapping) => mapping.table === table.name);
  const same = own.findLast(
    (mapping) => mapping.header.length === header.length && mapping.header.every((h, i) => h === header[i]),
  );
  if (same !== undefined) return (_, at) => same.columns[at] ?? null;
  const byHeading = new Map<string, string>();
  for (const mapping of own) {
    for (const [i, heading] of mapping.header.entries()) {
      if (fold(heading) !== "") byHeading.set(fold(heading), mapping.columns[i] ?? "");
    }
  }
  return (heading) => byHeading.get(fold(heading)) ?? null;
}

/**
 * Guesses which column of a table each heading of a foreign sheet means. A column is taken once: by the heading
 * that means it most surely, then by the first. Headings that name a unit get a conversion, if there is an exact
 * one; a column whose unit cannot be reached is not offered.
 */
export function guessMapping(
  header: readonly string[],
  table: Table,
  remembered: readonly RememberedMapping[] = [],
): readonly MappedHeading[] {
  const free = new Set(Object.keys(table.columns));
  const found = new Map<number, { readonly column: string | null; readonly how: Guess }>();
  const recalled = recall(header, table, remembered);
  for (const [i, heading] of header.entries()) {
    const column = recalled(heading, i);
    if (column === null || (column !== "" && !free.has(column))) continue;
    free.delete(column);
    found.set(i, { column: column === "" ? null : column, how: "remembered" });
  }
  for (const how of GUESSES) {
    if (how === "remembered") continue;
    for (const [i, heading] of header.entries()) {
      if (found.has(i) || fold(heading) === "") continue;
      const column = pick(how, heading.trim(), [...free]);
      if (column === null) continue;
      free.delete(column);
      found.set(i, { column, how });
    }
  }
  return header.map((heading, i) => {
    const { column = null, how = null } = found.get(i) ?? {};
    return { heading, column, unit: column === null ? null : headingUnit(heading, column), how };
  });
}

/** The mapping that a person chose: for each heading its column, empty when it is not taken. */
export const chosenMapping = (
  header: readonly string[],
  columns: readonly string[],
  table: Table,
): readonly MappedHeading[] =>
  header.map((heading, i) => {
    const column = columns[i] ?? "";
    const isKnown = Object.hasOwn(table.columns, column);
    return {
      heading,
      column: isKnown ? column : null,
      unit: isKnown ? headingUnit(heading, column) : null,
      how: null,
    };
  });
