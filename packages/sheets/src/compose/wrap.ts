import type { Weight } from "./mark.ts";
import { textWidthMm } from "./text.ts";

/** A stretch that is kept together; `space` tells whether a space stands before it when it is not first. */
interface Token {
  readonly text: string;
  readonly space: boolean;
}

/** Characters after which a long id may be broken. */
const BREAK_AFTER = /(?<=[.:\-/_|,@])/u;
const CJK = /[\u2e80-\u9fff\uf900-\ufaff\uff00-\uffef]/u;
/** Punctuation that may not start a line (Chinese line breaking, W3C CLREQ 3.1.3). */
const NOT_FIRST = /^[、。，．：；！？）》」』】〉”’…%]/u;

/** White space that is not one space between two words. */
const UNEVEN = /[\t\n]|^ | $| {2}/u;

const tokensOf = (paragraph: string): Token[] => {
  const tokens: Token[] = [];
  for (const word of paragraph.split(/[ \t]+/u).filter((w) => w !== "")) {
    let space = tokens.length > 0;
    let latin = "";
    const push = (text: string): void => {
      if (text === "") return;
      const before = tokens[tokens.length - 1];
      if (!space && before !== undefined && NOT_FIRST.test(text))
        tokens[tokens.length - 1] = { text: before.text + text, space: before.space };
      else tokens.push({ text, space });
      space = false;
    };
    for (const char of word) {
      if (!CJK.test(char)) {
        latin += char;
        continue;
      }
      push(latin);
      latin = "";
      push(char);
    }
    push(latin);
  }
  return tokens;
};

/** Parts of a word that is wider than the line: broken after joining characters, else anywhere. */
const split = (word: string, widthMm: number, heightMm: number, weight: Weight): string[] => {
  const parts: string[] = [];
  let open = "";
  for (const piece of word.split(BREAK_AFTER)) {
    if (textWidthMm(open + piece, heightMm, weight) <= widthMm) {
      open += piece;
      continue;
    }
    if (open !== "") parts.push(open);
    open = "";
    for (const char of piece) {
      if (open !== "" && textWidthMm(open + char, heightMm, weight) > widthMm) {
        parts.push(open);
        open = "";
      }
      open += char;
    }
  }
  if (open !== "") parts.push(open);
  return parts;
};

/**
 * Lines of a text no wider than `widthMm`: Latin text is broken between words, Chinese between characters, a word
 * that is too long after one of `. : - / _ |` or, last, anywhere. A newline in the text starts a new line.
 */
export const wrap = (
  text: string,
  widthMm: number,
  heightMm: number,
  weight: Weight = "regular",
): string[] => {
  // Most cells of a table are one line that fits as it is.
  if (!UNEVEN.test(text) && textWidthMm(text, heightMm, weight) <= widthMm) return [text];
  const lines: string[] = [];
  for (const paragraph of text.split("\n")) {
    let current = "";
    for (const token of tokensOf(paragraph)) {
      const longer = current === "" ? token.text : `${current}${token.space ? " " : ""}${token.text}`;
      if (textWidthMm(longer, heightMm, weight) <= widthMm) {
        current = longer;
        continue;
      }
      if (current !== "") lines.push(current);
      const parts = split(token.text, widthMm, heightMm, weight);
      current = parts.pop() ?? "";
      lines.push(...parts);
    }
    lines.push(current);
  }
  return lines;
};

/** Width below which `wrap` would have to break a word of this text. */
export const widestWordMm = (text: string, heightMm: number, weight: Weight = "regular"): number =>
  Math.max(
    0,
    ...text.split("\n").flatMap((p) =>
      tokensOf(p)
        .flatMap((token) => token.text.split(BREAK_AFTER))
        .map((piece) => textWidthMm(piece, heightMm, weight)),
    ),
  );

/** Width of the widest line when nothing is broken but at newlines. */
export const naturalWidthMm = (text: string, heightMm: number, weight: Weight = "regular"): number =>
  Math.max(0, ...text.split("\n").map((p) => textWidthMm(p, heightMm, weight)));
