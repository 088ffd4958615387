import type { SheetLanguage } from "@pinwright/words";
import { at, box, LINE, polyline, rect, stroke, TEXT, write } from "./draw.ts";
import type { Block } from "./flow.ts";
import type { Mark, PolygonMark } from "./mark.ts";
import { say } from "./say.ts";
import { tagged } from "./tag.ts";
import { leadingMm } from "./text.ts";
import { wrap } from "./wrap.ts";

/** General warning sign: a triangle with an exclamation mark, after ISO 7010 W001. */
function warningSign(xMm: number, yMm: number, sizeMm: number): Mark[] {
  const height = sizeMm * 0.87;
  const triangle: PolygonMark = {
    kind: "polygon",
    points: [at(xMm, yMm + height), at(xMm + sizeMm, yMm + height), at(xMm + sizeMm / 2, yMm)],
    stroke: stroke("ink", LINE.bold),
    fill: "paper",
    layer: "BORDER",
  };
  const middle = xMm + sizeMm / 2;
  return [
    triangle,
    polyline([at(middle, yMm + height * 0.36), at(middle, yMm + height * 0.68)], stroke("ink", sizeMm * 0.1)),
    {
      kind: "circle",
      at: at(middle, yMm + height * 0.84),
      radiusMm: sizeMm * 0.06,
      stroke: null,
      fill: "ink",
      layer: "BORDER",
    },
  ];
}

/**
 * A framed box with the cautions that belong to the work on a sheet.
 * @param texts one text for each caution, with a line for each language
 */
export function cautionBlock(texts: readonly string[], language: SheetLanguage, widthMm: number): Block {
  const signMm = 8;
  const left = signMm + 5;
  const heightMm = TEXT.small;
  const heading = say(language, (w) => w.caution.heading, " · ");
  const lines = texts.flatMap((t) => wrap(t, widthMm - left - 2, heightMm));
  const step = leadingMm(heightMm);
  const total = Math.max(signMm + 4, 2.2 + TEXT.normal + lines.length * step + 2.2);
  return {
    heightMm: total,
    marks: [
      rect(box(0, 0, widthMm, total), stroke("ink", LINE.strong)),
      ...warningSign(2.5, 2.2, signMm),
      tagged({ role: "P" }, [
        write(heading, at(left, 2.2 + TEXT.normal), { weight: "bold" }),
        ...lines.map((t, i) => write(t, at(left, 2.2 + TEXT.normal + (i + 1) * step + 0.4), { heightMm })),
      ]),
    ],
  };
}
