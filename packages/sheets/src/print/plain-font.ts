import type { Font, Glyph } from "fontkit";
import type { FontName } from "../compose/text.ts";
import { openFont } from "./fonts.ts";

interface PlainPosition {
  xAdvance: number;
  yAdvance: number;
  xOffset: number;
  yOffset: number;
}

interface PlainRun {
  readonly glyphs: Glyph[];
  readonly positions: PlainPosition[];
  readonly advanceWidth: number;
}

const plain = new Map<FontName, Font>();

/**
 * The shipped font laid out glyph by glyph: no kerning, no ligatures, so that a text is exactly as wide as
 * composing took it to be.
 */
export function plainFont(name: FontName): Font {
  const known = plain.get(name);
  if (known !== undefined) return known;
  const font = openFont(name);
  const layout = (text: string): PlainRun => {
    const glyphs: Glyph[] = [];
    const positions: PlainPosition[] = [];
    let advanceWidth = 0;
    for (const char of text) {
      const glyph = font.glyphForCodePoint(char.codePointAt(0) ?? 0);
      glyphs.push(glyph);
      positions.push({ xAdvance: glyph.advanceWidth, yAdvance: 0, xOffset: 0, yOffset: 0 });
      advanceWidth += glyph.advanceWidth;
    }
    return { glyphs, positions, advanceWidth };
  };
  const own: Font = Object.create(font, { layout: { value: layout } });
  plain.set(name, own);
  return own;
}
