import { COLOUR_CODES, splitColours } from "@pinwright/kernel";
import { LIMITS } from "../limits.ts";
import { nearest } from "../text/nearest.ts";
import { CellProblem, type Reading } from "./problem.ts";

const ID = /^[a-z0-9]+(?:[._-][a-z0-9]+)*$/;
const ID_EXPECTED =
  "lower-case letters and digits in words joined by `.`, `-` or `_`, such as `sw.lane-left`";

/** An id that the text could have meant: lower case, other characters as one hyphen; null when nothing is left. */
function nearestId(raw: string): string | null {
  const id = raw
    .normalize("NFKC")
    .toLowerCase()
    .replace(/[^a-z0-9._-]+/g, "-")
    .replace(/[._-]*([._-])/g, "$1")
    .replace(/^[._-]+|[._-]+$/g, "")
    .slice(0, LIMITS.idChars);
  return ID.test(id) && id !== raw ? id : null;
}

/** Reads an id. */
export function readId(raw: string): Reading<string> {
  if (raw.length > LIMITS.idChars) {
    return new CellProblem("id-form", `an id of at most ${LIMITS.idChars} characters: ${ID_EXPECTED}`);
  }
  return ID.test(raw) ? raw : new CellProblem("id-form", ID_EXPECTED, nearestId(raw));
}

/** Whether a text has the form of an id. */
export const isId = (text: string): boolean => text.length <= LIMITS.idChars && ID.test(text);

/** Reads one of the words of a choice. */
export function readChoice(raw: string, oneOf: readonly string[]): Reading<string> {
  if (oneOf.includes(raw)) return raw;
  return new CellProblem("choice-unknown", `one of: ${oneOf.join(", ")}`, nearest(raw, oneOf));
}

const YES = /^(?:y|yes|true|1|x|✓|wahr|ja|是)$/i;
const NO = /^(?:n|false|0|nein|falsch|否)$/i;

/** Reads a flag: `yes`, or `no` which is the same as blank. */
export function readFlag(raw: string): Reading<boolean> {
  if (raw === "yes") return true;
  if (raw === "no") return false;
  return new CellProblem("flag-form", "`yes` or blank", YES.test(raw) ? "yes" : NO.test(raw) ? "no" : null);
}

const SINGLE_CODES = COLOUR_CODES.map(({ code }) => code).filter((code) => code.length === 2);

/** Reads a wire colour: a base code of IEC 60757 and, if striped, a different stripe code; or `GNYE`. */
export function readColour(raw: string): Reading<string> {
  if (splitColours(raw) !== null) return raw;
  const expected = `one or two different IEC 60757 codes written together, base then stripe: ${SINGLE_CODES.join(" ")}`;
  const plain = raw.toUpperCase().replace(/[\s/,+-]+/g, "");
  const meant = splitColours(plain) === null ? nearestColour(plain) : plain;
  return new CellProblem("colour-form", expected, meant);
}

/** The one colour of a code written twice, or the only code that begins with the same letter. */
function nearestColour(plain: string): string | null {
  const [base, stripe] = [plain.slice(0, 2), plain.slice(2)];
  if (base === stripe && SINGLE_CODES.includes(base)) return base;
  const alike = /^[A-Z]{2}$/.test(plain) ? SINGLE_CODES.filter((code) => code[0] === plain[0]) : [];
  return alike.length === 1 ? (alike[0] ?? null) : null;
}

/** Reads the name of an outline file, without its folder. */
export function readOutlineName(raw: string): Reading<string> {
  if (isOutlineName(raw)) return raw;
  return new CellProblem(
    "outline-missing",
    "name of a `.dxf` or `.svg` file in the folder `outlines`, without a path",
  );
}

/** Whether a text can be the name of an outline file: no path, `.dxf` or `.svg`. */
export const isOutlineName = (name: string): boolean =>
  name.length <= 200 && /^[^\\/:*?"<>|\p{Cc}.][^\\/:*?"<>|\p{Cc}]*\.(?:dxf|svg)$/iu.test(name);

/** Reads a list of words separated by spaces; each word is read by `one`. */
export function readList(raw: string, one: (word: string) => Reading<string>): Reading<readonly string[]> {
  const words = raw.split(" ").filter((word) => word !== "");
  const seen = new Set<string>();
  for (const word of words) {
    const reading = one(word);
    if (reading instanceof CellProblem) {
      return new CellProblem(reading.code, `\`${word}\` should be ${reading.expected}`, reading.nearest);
    }
    if (seen.has(word)) {
      return new CellProblem(
        "choice-unknown",
        `each word once; \`${word}\` is there twice`,
        [...new Set(words)].join(" "),
      );
    }
    seen.add(word);
  }
  return words;
}
