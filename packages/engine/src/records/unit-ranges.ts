import { compareText } from "@pinwright/kernel";

const SERIAL = /^(.*?)(\d+)$/u;

/**
 * Serial numbers as ranges: `m-0031 … m-0044, m-0050`. Numbers in a row with the same letters and as many digits are
 * one range; two in a row stand side by side. Each number is named once.
 * @param joint between the first and the last of a range
 */
export function unitRanges(units: readonly string[], joint = " … "): readonly string[] {
  const ranges: { readonly first: string; last: string; head: string; end: number; digits: number }[] = [];
  for (const unit of [...new Set(units)].sort(compareText)) {
    const [, head = "", digits = ""] = SERIAL.exec(unit) ?? [];
    const last = ranges.at(-1);
    const follows =
      digits !== "" &&
      last !== undefined &&
      last.head === head &&
      last.digits === digits.length &&
      last.end + 1 === Number(digits);
    if (follows) {
      last.last = unit;
      last.end++;
    } else
      ranges.push({
        first: unit,
        last: unit,
        head: digits === "" ? unit : head,
        end: Number(digits),
        digits: digits.length,
      });
  }
  return ranges.flatMap(({ first, last, end }) => {
    if (first === last) return [first];
    const isPair = Number(SERIAL.exec(first)?.[2]) + 1 === end;
    return isPair ? [first, last] : [`${first}${joint}${last}`];
  });
}
