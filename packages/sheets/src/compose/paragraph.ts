import { at, write } from "./draw.ts";
import type { Block } from "./flow.ts";
import { leadingMm } from "./text.ts";
import { wrap } from "./wrap.ts";

/** A paragraph as a block. */
export function paragraph(text: string, widthMm: number, heightMm: number, bold = false): Block {
  const lines = wrap(text, widthMm, heightMm, bold ? "bold" : "regular");
  const step = leadingMm(heightMm);
  return {
    heightMm: lines.length * step + 1,
    marks: lines.map((t, i) =>
      write(t, at(0, (i + 1) * step - 0.25 * step), { heightMm, weight: bold ? "bold" : "regular" }),
    ),
  };
}
