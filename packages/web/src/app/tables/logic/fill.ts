import type { Block } from "./tsv.ts";

/** The first row repeated over all rows below it, as Ctrl+D does. */
export const fillDown = (block: Block): Block => block.map(() => block[0] ?? []);

/** The first column repeated over all columns beside it, as Ctrl+R does. */
export const fillRight = (block: Block): Block => block.map((row) => row.map(() => row[0] ?? ""));

const NUMBER = /^-?\d+(?:\.\d+)?$/;
const COUNTED = /^(.*?)(\d+)(\D*)$/s;

const decimals = (text: string): number => text.split(".")[1]?.length ?? 0;

/** Continues evenly spaced numbers; null when they are not. */
function numberSeries(texts: readonly string[], count: number): readonly string[] | null {
  if (texts.length < 2 || !texts.every((text) => NUMBER.test(text))) return null;
  const digits = Math.max(...texts.map(decimals));
  const scale = 10 ** digits;
  const values = texts.map((text) => Math.round(Number(text) * scale));
  const step = (values[1] ?? 0) - (values[0] ?? 0);
  if (values.some((value, i) => i > 0 && value - (values[i - 1] ?? 0) !== step)) return null;
  const last = values[values.length - 1] ?? 0;
  return Array.from({ length: count }, (_, i) => String((last + step * (i + 1)) / scale));
}

/** Continues names that end in a number, such as `sw.drop-3`; null when they do not. */
function nameSeries(texts: readonly string[], count: number): readonly string[] | null {
  const parts = texts.map((text) => (NUMBER.test(text) ? null : COUNTED.exec(text)));
  const [first] = parts;
  if (first === null || first === undefined) return null;
  const [, head = "", digits = "", tail = ""] = first;
  const values: number[] = [];
  for (const part of parts) {
    if (part === null || part[1] !== head || part[3] !== tail) return null;
    values.push(Number(part[2]));
  }
  const step = values.length > 1 ? (values[1] ?? 0) - (values[0] ?? 0) : 1;
  if (values.some((value, i) => i > 0 && value - (values[i - 1] ?? 0) !== step)) return null;
  const last = values[values.length - 1] ?? 0;
  const series = Array.from({ length: count }, (_, i) => last + step * (i + 1));
  if (series.some((value) => value < 0)) return null;
  const width = digits.startsWith("0") ? digits.length : 0;
  return series.map((value) => `${head}${String(value).padStart(width, "0")}${tail}`);
}

/**
 * Texts that follow on others when they are dragged on by the fill handle: evenly spaced numbers and names that
 * end in a number go on, anything else repeats.
 */
export function continueSeries(texts: readonly string[], count: number): readonly string[] {
  const series = numberSeries(texts, count) ?? nameSeries(texts, count);
  return series ?? Array.from({ length: count }, (_, i) => texts[i % texts.length] ?? "");
}

/** The rows that follow on a block. */
export function continueDown(block: Block, count: number): Block {
  const width = block[0]?.length ?? 0;
  const columns = Array.from({ length: width }, (_, col) =>
    continueSeries(
      block.map((row) => row[col] ?? ""),
      count,
    ),
  );
  return Array.from({ length: count }, (_, row) => columns.map((texts) => texts[row] ?? ""));
}
