import { expect, test } from "vitest";
import { CAP_HEIGHT, CJK_ODD, LATIN, LATIN_BOLD } from "../compose/font-metrics.ts";
import { textWidthMm } from "../compose/text.ts";
import { openFont } from "./fonts.ts";
import { fontTables } from "./measure-fonts.ts";

test("the committed widths are those of the font files", () => {
  const tables = fontTables();
  expect(CAP_HEIGHT).toBe(tables.capHeight);
  expect(LATIN).toEqual(tables.latin);
  expect(LATIN_BOLD).toEqual(tables.latinBold);
  expect(CJK_ODD).toEqual(tables.cjkOdd);
});

test("digits are of one width, so that columns of figures stand under each other", () => {
  for (const name of ["latin", "latinBold"] as const) {
    const widths = [..."0123456789"].map(
      (c) => openFont(name).glyphForCodePoint(c.codePointAt(0) ?? 0).advanceWidth,
    );
    expect(new Set(widths).size).toBe(1);
  }
});

test("a mixed text is as wide as its glyphs in the fonts", () => {
  const latin = openFont("latin");
  const cjk = openFont("cjk");
  const advance = (text: string, font: typeof latin): number =>
    [...text].reduce((sum, c) => sum + font.glyphForCodePoint(c.codePointAt(0) ?? 0).advanceWidth, 0);
  const thousandths = advance("AWG 22, Ø 1.4 mm ", latin) + advance("导线", cjk);
  const em = (2.5 * 1000) / latin.capHeight;
  expect(textWidthMm("AWG 22, Ø 1.4 mm 导线", 2.5)).toBeCloseTo((thousandths * em) / 1000, 9);
});
