import type { Seen } from "@pinwright/engine";
import { GROUPS, type Group, type NamedFunction } from "./names.ts";

/** Words that a letter may use, in small letters. */
export type LetterWords = Readonly<Record<Seen | Group, readonly string[]>>;

/** A number of a kind of thing. */
interface Numbered {
  readonly group: Group;
  readonly number: number;
}

export interface ReadLetter {
  readonly seen: Readonly<Record<string, Seen>>;
  /** Clauses that were not understood. */
  readonly missed: readonly string[];
  /** What the machine does not have. */
  readonly absent: readonly Numbered[];
  /** Numbers that several things have: nothing was taken over of them. */
  readonly unclear: readonly (Numbered & { readonly names: readonly string[] })[];
}

/** What comes and goes, stays on or is mixed up is said beside words such as `dead`: the special first. */
const ORDER: readonly Seen[] = ["sometimes", "on", "mixed", "dead", "works"];
/** Numbers of a range beyond this are a slip of the pen. */
const LONGEST_RANGE = 200;

/**
 * Reads a letter: clauses of numbers and what they do, with semicolons, full stops or new lines between them. A kind that
 * is named holds until another is.
 * @param usual kind of numbers for which none is named
 */
export function readLetter(
  text: string,
  words: LetterWords,
  functions: readonly NamedFunction[],
  usual: Group,
): ReadLetter {
  const seen: Record<string, Seen> = {};
  const missed: string[] = [];
  const absent: Numbered[] = [];
  const unclear: ReadLetter["unclear"][number][] = [];
  let group = usual;
  const says = (small: string, list: readonly string[]): boolean => list.some((word) => hasWord(small, word));
  for (const clause of text.split(/[;；。\n]|\.(?=\s|$)/u).map((part) => part.trim())) {
    if (clause === "") continue;
    const small = clause.toLowerCase();
    group = GROUPS.find((one) => says(small, words[one])) ?? group;
    const does = ORDER.find((one) => says(small, words[one]));
    const numbers = numbersOf(clause);
    if (does === undefined || numbers.length === 0) {
      missed.push(clause);
      continue;
    }
    for (const number of numbers) {
      const found = functions.filter((one) => one.number === number && one.group === group);
      const items = new Set(found.map(({ item }) => item));
      if (items.size > 1) unclear.push({ group, number, names: found.map(({ name }) => name) });
      else for (const { id } of found) seen[id] = does;
      if (found.length === 0) absent.push({ group, number });
    }
  }
  return { seen, missed, absent, unclear };
}

/** A word by itself with its endings, so that `led` is not found in `called`; Chinese words stand without spaces. */
function hasWord(text: string, word: string): boolean {
  if (!/^[a-z' ]+$/u.test(word)) return text.includes(word);
  return new RegExp(`(^|[^a-z])${word}(s|es|ed|ing)?($|[^a-z])`, "u").test(text);
}

function numbersOf(clause: string): readonly number[] {
  return [...clause.matchAll(/(\d+)(?:\s*[-–~至到]\s*(\d+))?/gu)].flatMap(([, from, to]) => {
    const first = Number(from);
    const last = to === undefined ? first : Number(to);
    if (last < first || last - first > LONGEST_RANGE) return [first];
    return Array.from({ length: last - first + 1 }, (_, n) => first + n);
  });
}
