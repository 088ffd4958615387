import type { Column } from "../schema/column.ts";
import { plainDecimal } from "./plain-decimal.ts";
import { CellProblem, type Reading } from "./problem.ts";
import { columnUnit, convertToColumn } from "./units.ts";

const PLAIN = /^-?\d+(?:\.\d+)?$/;

type NumberColumn = Pick<Column<unknown>, "kind" | "min" | "max">;

/** What a number column takes, in words: `a plain decimal number in mm, from 0 to 200`. */
function expectedNumber(name: string, column: NumberColumn): string {
  const unit = columnUnit(name);
  const kind =
    column.kind === "integer" ? "a whole number" : "a plain decimal number with `.` as decimal point";
  const { min, max } = column;
  const range =
    min !== undefined && max !== undefined
      ? `, from ${plainDecimal(min)} to ${plainDecimal(max)}`
      : min !== undefined
        ? `, ${plainDecimal(min)} or more`
        : max !== undefined
          ? `, ${plainDecimal(max)} or less`
          : "";
  return `${kind}${unit === null ? "" : ` in ${unit}`}${range}`;
}

/** A valid value near to `value`, or null when there is none to offer. */
function offer(value: number, column: NumberColumn): string | null {
  if (!Number.isFinite(value)) return null;
  const low = column.min ?? -Infinity;
  const high = column.max ?? Infinity;
  if (value < low || value > high) return null;
  return plainDecimal(column.kind === "integer" ? Math.round(value) : value);
}

function clamp(value: number, column: NumberColumn): string | null {
  const { min, max } = column;
  if (min !== undefined && value < min) return plainDecimal(column.kind === "integer" ? Math.ceil(min) : min);
  if (max !== undefined && value > max)
    return plainDecimal(column.kind === "integer" ? Math.floor(max) : max);
  return null;
}

/** Digits grouped in threes by comma, apostrophe, space or thin space, with a point before the fraction. */
const GROUPED = /^-?\d{1,3}(?:[,' \u00a0\u2009\u202f]\d{3})+(?:\.\d+)?$/;
/** The same with points between the groups and a comma before the fraction. */
const GROUPED_COMMA = /^-?\d{1,3}(?:\.\d{3})+,\d+$|^-?\d{1,3}(?:\.\d{3}){2,}$/;
const DECIMAL_COMMA = /^-?\d+,\d+$/;
const WITH_UNIT = /^(-?(?:\d+(?:[.,]\d+)?|[.,]\d+|\d+\/\d+|\d+[ -]\d+\/\d+))\s*([\p{L}°"″%µ]+[2²]?)\.?$/u;

function fraction(written: string): number {
  const mixed = /^(-?)(?:(\d+)[ -])?(\d+)\/(\d+)$/.exec(written);
  if (mixed === null) return Number(written.replace(",", "."));
  const value = Number(mixed[2] ?? 0) + Number(mixed[3]) / Number(mixed[4]);
  return mixed[1] === "-" ? -value : value;
}

/** Why a cell is not a plain decimal, and which number it probably means. */
function numberProblem(raw: string, name: string, column: NumberColumn): CellProblem {
  const expected = expectedNumber(name, column);
  // Compatibility form turns full-width digits of Chinese input into plain ones.
  const cell = raw.normalize("NFKC").replace(/[−–]/g, "-").trim();
  const form = (why: string, value: number) =>
    new CellProblem("number-form", `${expected}; ${why}`, offer(value, column));
  if (PLAIN.test(cell)) return form("write plain digits", Number(cell));
  if (GROUPED.test(cell)) {
    const decimalComma = /^-?\d{1,3},\d{3}$/.test(cell) ? " (a decimal comma is not one either)" : "";
    return form(
      `no separators between thousands${decimalComma}`,
      Number(cell.replace(/[,' \u00a0\u2009\u202f]/g, "")),
    );
  }
  if (GROUPED_COMMA.test(cell))
    return form(
      "no separators between thousands, `.` as decimal point",
      Number(cell.replace(/\./g, "").replace(",", ".")),
    );
  if (DECIMAL_COMMA.test(cell))
    return form("`.` as decimal point, not a comma", Number(cell.replace(",", ".")));
  const withUnit = WITH_UNIT.exec(cell);
  const isExponent = /^[-+]?\d*\.?\d+e[-+]?\d+$/i.test(cell);
  if (withUnit !== null && !isExponent) {
    const value = convertToColumn(fraction(withUnit[1] ?? ""), withUnit[2] ?? "", name);
    const why = value === null ? "no unit in the cell" : "no unit in the cell; the column's unit counts";
    return new CellProblem(
      "number-unit",
      `${expected}; ${why}`,
      value === null ? null : offer(value, column),
    );
  }
  if (isExponent) {
    const value = Number(cell);
    if (!Number.isFinite(value))
      return new CellProblem(
        "number-form",
        `${expected}; no number is that large here`,
        clamp(value, column),
      );
    return form("no exponent", value);
  }
  if (/^[-+]?(?:nan|inf|infinity|∞|#.*)$/i.test(cell))
    return form("a result that is not a number cannot be kept", Number.NaN);
  if (/^\+?\d*\.?\d+$|^-?\d*\.?\d*$/.test(cell) && /\d/.test(cell))
    return form("digits before and after the point, no plus sign", Number(cell));
  return new CellProblem("number-form", expected);
}

/**
 * Reads a cell of a `number` or `integer` column. Only plain decimals are numbers; anything else is a problem
 * that says why and offers the number that was probably meant.
 */
export function readNumber(raw: string, name: string, column: NumberColumn): Reading<number> {
  if (!PLAIN.test(raw)) return numberProblem(raw, name, column);
  const value = Number(raw);
  if (!Number.isFinite(value))
    return new CellProblem("number-range", expectedNumber(name, column), clamp(value, column));
  if (column.kind === "integer" && !Number.isSafeInteger(value)) {
    return new CellProblem("number-form", expectedNumber(name, column), offer(Math.round(value), column));
  }
  if ((column.min !== undefined && value < column.min) || (column.max !== undefined && value > column.max)) {
    return new CellProblem("number-range", expectedNumber(name, column), clamp(value, column));
  }
  return value === 0 ? 0 : value;
}
