import { CAP_HEIGHT, CJK_ODD, LATIN, LATIN_BOLD } from "./font-metrics.ts";
import type { Box, TextMark, Weight } from "./mark.ts";

/** A shipped font. Chinese has one weight: a second one would add 10 MB. */
export type FontName = "latin" | "latinBold" | "cjk";

/** A stretch of text in one font. */
export interface Run {
  readonly font: FontName;
  readonly text: string;
  readonly widthMm: number;
}

const table = (runs: readonly string[]): ReadonlyMap<number, number> => {
  const advances = new Map<number, number>();
  for (const run of runs) {
    const [first, list] = run.split(":");
    let cp = Number.parseInt(first ?? "", 16);
    for (const advance of (list ?? "").split(" ")) advances.set(cp++, Number(advance));
  }
  return advances;
};

const ADVANCES: Readonly<Record<FontName, ReadonlyMap<number, number>>> = {
  latin: table(LATIN),
  latinBold: table(LATIN_BOLD),
  cjk: table(CJK_ODD),
};

/** Em of a text whose capitals are this high. */
export const emMm = (heightMm: number): number => (heightMm * 1000) / CAP_HEIGHT;

/** Distance of two baselines of the same text. */
export const leadingMm = (heightMm: number): number => 1.3 * emMm(heightMm);

const fontOf = (codePoint: number, weight: Weight): FontName => {
  const latin = weight === "bold" ? "latinBold" : "latin";
  return ADVANCES[latin].has(codePoint) ? latin : "cjk";
};

/** Advance of one character in thousandths of an em; a character of the Chinese font is 1 em unless listed. */
const advanceOf = (codePoint: number, font: FontName): number => ADVANCES[font].get(codePoint) ?? 1000;

/** Splits a text by the font that has its characters and measures each stretch; no kerning, no ligatures. */
export const runsOf = (text: string, heightMm: number, weight: Weight): readonly Run[] => {
  const em = emMm(heightMm);
  const runs: Run[] = [];
  let font: FontName | null = null;
  let chars = "";
  let thousandths = 0;
  const close = (): void => {
    if (font !== null && chars !== "") runs.push({ font, text: chars, widthMm: (thousandths * em) / 1000 });
  };
  for (const char of text) {
    const cp = char.codePointAt(0) ?? 0;
    const next = fontOf(cp, weight);
    if (next !== font) {
      close();
      font = next;
      chars = "";
      thousandths = 0;
    }
    chars += char;
    thousandths += advanceOf(cp, next);
  }
  close();
  return runs;
};

/** Advances of the first characters of Unicode, Latin with accents: most of all texts have no others. */
const firstAdvances = (weight: Weight): readonly number[] =>
  Array.from({ length: 0x250 }, (_, cp) => advanceOf(cp, fontOf(cp, weight)));
const FIRST: Readonly<Record<Weight, readonly number[]>> = {
  regular: firstAdvances("regular"),
  bold: firstAdvances("bold"),
};

/** Width of a text in one line. */
export const textWidthMm = (text: string, heightMm: number, weight: Weight = "regular"): number => {
  const first = FIRST[weight];
  let thousandths = 0;
  for (let i = 0; i < text.length; i++) {
    const cp = text.codePointAt(i) ?? 0;
    thousandths += first[cp] ?? advanceOf(cp, fontOf(cp, weight));
    // Characters beyond the first 65 536 take two places in a string.
    if (cp > 0xffff) i++;
  }
  return (thousandths * emMm(heightMm)) / 1000;
};

/** True if a character needs the Chinese font. */
const isWide = (codePoint: number): boolean => fontOf(codePoint, "regular") === "cjk";

/**
 * How far ink rises above and falls below the baseline, in em: Latin letters without accents reach 0.78 (b) and
 * −0.22 (g) in the shipped font, accented capitals 0.93; Chinese characters fill 0.88 to −0.14.
 */
const reach = (text: string): { up: number; down: number } => {
  let up = 0.78;
  let down = 0.22;
  for (const char of text) {
    const cp = char.codePointAt(0) ?? 0;
    if (isWide(cp)) up = Math.max(up, 0.88);
    else if (cp >= 0xc0 && cp < 0x250) up = 0.93;
  }
  if (/^[\dA-Z\s.,+±×=-]*$/.test(text)) {
    up = 0.72;
    down = 0.12;
  }
  return { up, down };
};

/** The box that a text covers before it is turned, relative to its own anchor. */
const flatBox = (mark: TextMark): Box => {
  const em = emMm(mark.heightMm);
  const widthMm = textWidthMm(mark.text, mark.heightMm, mark.weight);
  const { up, down } = reach(mark.text);
  const left = mark.anchor === "start" ? 0 : mark.anchor === "middle" ? -widthMm / 2 : -widthMm;
  return { xMm: left, yMm: -up * em, widthMm, heightMm: (up + down) * em };
};

/** Corners of the box of a text on the page, turned with it; the first is at its own top left. */
export const textCorners = (mark: TextMark): readonly (readonly [number, number])[] => {
  const b = flatBox(mark);
  const turn = (-mark.turnDeg * Math.PI) / 180;
  const cos = Math.cos(turn);
  const sin = Math.sin(turn);
  const corners: readonly (readonly [number, number])[] = [
    [b.xMm, b.yMm],
    [b.xMm + b.widthMm, b.yMm],
    [b.xMm + b.widthMm, b.yMm + b.heightMm],
    [b.xMm, b.yMm + b.heightMm],
  ];
  return corners.map(([x, y]) => [mark.at.xMm + x * cos - y * sin, mark.at.yMm + x * sin + y * cos]);
};
