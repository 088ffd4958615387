import { lineCheck } from "./check-sum.ts";

/** Number of the protocol, told with `who`. */
export const TESTER_PROTOCOL = 1;
/** Points that a tester may have. */
export const MOST_TESTER_POINTS = 512;
/** Characters of a line with its check, without its end: a scan of all points, all joined in pairs, takes half of it. */
export const LONGEST_TESTER_LINE = 4096;

export const TESTER_FAULTS = [
  "empty",
  "too-long",
  "not-plain",
  "no-check",
  "wrong-check",
  "unknown-word",
  "too-few-words",
  "too-many-words",
  "not-a-number",
  "out-of-range",
  "not-ascending",
  "point-twice",
  "bad-name",
  "missing-line",
  "line-twice",
] as const;

/** What is wrong with a line, with what stands there and what belongs there, both as on the wire. */
export interface TesterFault {
  readonly kind: (typeof TESTER_FAULTS)[number];
  readonly found: string;
  readonly expected: string;
}

export type TesterParsed<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly fault: TesterFault };

/** Carries a fault out of the functions that read parts of a line. */
class FaultyLine extends Error {
  readonly fault: TesterFault;

  constructor(kind: TesterFault["kind"], found: string, expected: string) {
    super(`${kind}: ${found}, expected ${expected}`);
    this.fault = { kind, found, expected };
  }
}

/** A text with its check behind it. */
export const checkedLine = (text: string): string => `${text} #${lineCheck(text)}`;

/** The words of a line, read one after the other. */
export class LineWords {
  readonly #words: readonly string[];
  #at = 0;

  constructor(line: string) {
    if (line === "") throw new FaultyLine("empty", "", "a word");
    if (line.length > LONGEST_TESTER_LINE)
      throw new FaultyLine("too-long", String(line.length), `1..${LONGEST_TESTER_LINE}`);
    const odd = /[^ -~]/.exec(line);
    if (odd !== null) throw new FaultyLine("not-plain", `U+${hex(odd[0].charCodeAt(0))}`, "U+0020..U+007E");
    const cut = /^(.*) #([0-9A-Fa-f]{4})$/.exec(line);
    if (cut === null) throw new FaultyLine("no-check", line.slice(-6), " #0000.. #FFFF");
    const [, text = "", check = ""] = cut;
    const expected = lineCheck(text);
    if (check.toUpperCase() !== expected) throw new FaultyLine("wrong-check", check, expected);
    this.#words = text.split(" ");
  }

  /** Whether words are left. */
  get more(): boolean {
    return this.#at < this.#words.length;
  }

  next(expected: string): string {
    const word = this.#words[this.#at++];
    if (word === undefined) throw new FaultyLine("too-few-words", String(this.#words.length), expected);
    return word;
  }

  /** A word of a few. */
  oneOf<W extends string>(words: readonly W[]): W {
    const word = this.next(words.join("|"));
    const known = words.find((one) => one === word);
    return known ?? fail("unknown-word", word, words.join("|"));
  }

  /** Takes the next word if it is this one. */
  take(word: string): boolean {
    if (this.#words[this.#at] !== word) return false;
    this.#at++;
    return true;
  }

  number(most: number): number {
    return numberIn(this.next(`1..${most}`), most);
  }

  /** A name of 1 to 40 letters, digits and `-`, `_`, `.`. */
  name(): string {
    const word = this.next("A-Z a-z 0-9 - _ .");
    return /^[A-Za-z0-9._-]{1,40}$/.test(word) ? word : fail("bad-name", word, "A-Z a-z 0-9 - _ .");
  }

  end(): void {
    if (this.more) fail("too-many-words", String(this.#words.length), String(this.#at));
  }
}

const hex = (code: number): string => code.toString(16).toUpperCase().padStart(4, "0");

/** Ends the reading of a line. */
export function fail(kind: TesterFault["kind"], found: string, expected: string): never {
  throw new FaultyLine(kind, found, expected);
}

/** A number from 1 without sign or leading nought. */
export function numberIn(word: string, most: number): number {
  if (!/^(0|[1-9][0-9]*)$/.test(word)) fail("not-a-number", word, `1..${most}`);
  const number = Number(word);
  return number >= 1 && number <= most ? number : fail("out-of-range", word, `1..${most}`);
}

/** Numbers that must rise from one to the next. */
export function ascending(numbers: readonly number[]): readonly number[] {
  numbers.forEach((number, i) => {
    const before = numbers[i - 1] ?? 0;
    if (number <= before) fail("not-ascending", String(number), `${before + 1}..`);
  });
  return numbers;
}

/** What a reader of lines gives, with its fault as data. */
export function reading<T>(read: () => T): TesterParsed<T> {
  try {
    return { ok: true, value: read() };
  } catch (error) {
    if (error instanceof FaultyLine) return { ok: false, fault: error.fault };
    throw error;
  }
}
