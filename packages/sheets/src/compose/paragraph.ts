import { at, TEXT, write } from "./draw.ts";
import type { Block } from "./flow.ts";
import { tagged } from "./tag.ts";
import { leadingMm } from "./text.ts";
import { wrap } from "./wrap.ts";

/** A paragraph as a block; one that is bold and large is a heading. */
export function paragraph(text: string, widthMm: number, heightMm: number, bold = false): Block {
  const lines = wrap(text, widthMm, heightMm, bold ? "bold" : "regular");
  const step = leadingMm(heightMm);
  return {
    heightMm: lines.length * step + 1,
    marks: [
      tagged(
        { role: bold && heightMm >= TEXT.large ? "H2" : "P" },
        lines.map((t, i) =>
          write(t, at(0, (i + 1) * step - 0.25 * step), { heightMm, weight: bold ? "bold" : "regular" }),
        ),
      ),
    ],
  };
}
