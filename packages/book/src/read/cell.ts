import { LIMITS } from "../limits.ts";
import type { CellKind, Column } from "../schema/column.ts";
import { readNumber } from "./number.ts";
import { CellProblem, type Reading } from "./problem.ts";
import { readChoice, readColour, readFlag, readId, readList, readOutlineName } from "./words.ts";

/** Reads one cell of one column. A blank cell reads as the column's blank. */
export type ReadCell = (raw: string) => Reading<unknown>;

const CONTROL = /[^\P{Cc}\n\t]|\p{Cs}|[\ufffe\uffff]/u;

const POINT_FORM = /^[^\s:]+:[^\s:]+$/;
const LOCAL_POINT_FORM = /^[^\s:]+(?::[^\s:]+)?$/;
const WORD = /^\S+$/;

const form =
  (pattern: RegExp, code: "point-form" | "ref-dangling", expected: string) =>
  (raw: string): Reading<string> =>
    pattern.test(raw) ? raw : new CellProblem(code, expected);

const readPoint = form(POINT_FORM, "point-form", "a point: `item:connector.pin` or `item:terminal`");
const readLocalPoint = form(
  LOCAL_POINT_FORM,
  "point-form",
  "a point inside the type: `connector.pin`, `terminal` or `child:terminal`",
);
const readWord = form(WORD, "ref-dangling", "one id, without spaces");

/** Reads a cell that is neither blank nor text; surrounding spaces do not count. */
type ReadFilled = (cell: string) => Reading<unknown>;

/** Form only: whether references lead anywhere is checked when all tables are read. */
const FILLED: Readonly<Record<CellKind, (name: string, column: Column<unknown>) => ReadFilled | "text">> = {
  id: () => readId,
  ref: () => readWord,
  refs: () => (cell) => readList(cell, readWord),
  item: () => readWord,
  items: () => (cell) => readList(cell, readWord),
  point: () => readPoint,
  "local-point": () => readLocalPoint,
  number: (name, column) => (cell) => readNumber(cell, name, column),
  integer: (name, column) => (cell) => readNumber(cell, name, column),
  choice: (_, column) => (cell) => readChoice(cell, column.oneOf ?? []),
  text: () => "text",
  label: () => "text",
  flag: () => readFlag,
  colour: () => readColour,
  colours: () => (cell) => readList(cell, readColour),
  names: () => (cell) => readList(cell, readWord),
  outline: () => readOutlineName,
};

/** Makes the reader of a column once, so that reading a cell is one call. */
export function compileCell(name: string, column: Column<unknown>): ReadCell {
  const { blank, required } = column;
  const missing = new CellProblem("cell-blank", `a value; the column must be filled: ${column.about}`);
  const filled = FILLED[column.kind](name, column);
  const read: ReadCell =
    filled === "text"
      ? (raw) => (raw.trim() === "" ? (required ? missing : raw === "" ? blank : raw) : raw)
      : (raw) => {
          const cell = raw.trim();
          return cell === "" ? (required ? missing : blank) : filled(cell);
        };
  const isText = filled === "text";
  return (raw) => {
    if (raw.length > LIMITS.cellChars) {
      return new CellProblem("cell-too-long", `at most ${LIMITS.cellChars} characters in a cell`);
    }
    const reading = read(raw);
    const suspicious = isText || reading instanceof CellProblem;
    if (suspicious && CONTROL.test(raw)) return controlProblem(raw);
    return reading;
  };
}

function controlProblem(raw: string): CellProblem {
  const cleaned = raw.replace(/[^\P{Cc}\n\t]|\p{Cs}|[\ufffe\uffff]/gu, "");
  return new CellProblem(
    "cell-control-character",
    "text without control characters; only line breaks and tabs may stand in a text",
    cleaned.length > 80 ? null : cleaned,
  );
}
