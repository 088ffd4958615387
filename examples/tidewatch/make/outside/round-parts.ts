import type { BookRow } from "@pinwright/book";
import { framedPage, placedAt } from "./frame.ts";

type Part = BookRow<"parts">;

/** Drawing of the shaft of a flipper: ground bar with a flat for the crank. */
export function shaftPdf(part: Part, revision: string, file: string): Uint8Array {
  const page = framedPage({
    part,
    revision,
    file,
    scale: "2:1",
    note: "Ends chamfered 0.5 \u00d7 45\u00b0, no burr.",
  });
  const at = placedAt([62, 110], 2);
  page.pen(0.5);
  page.ring([
    at([0, -3.5]),
    at([0.5, -4]),
    at([78, -4]),
    at([78.5, -3.5]),
    at([78.5, 3.5]),
    at([78, 4]),
    at([0.5, 4]),
    at([0, 3.5]),
  ]);
  page.line(at([60, 3]), at([78.5, 3]));
  page.line(at([60, 3]), at([60, 4]));
  page.pen(0.18, [4, 1, 1, 1]);
  page.line(at([-3, 0]), at([81.5, 0]));
  page.dimension("78.5 \u00b1 0.1", at([0, -4]), at([78.5, -4]), -14);
  page.dimension("18.5", at([60, 4]), at([78.5, 4]), 10);
  page.dimension("\u00d8 8 h7 (0 -0.015)", at([0, -4]), at([0, 4]), -8);
  page.dimension("7 0 -0.1", at([78.5, -4]), at([78.5, 3]), 14);
  page.balloon("1", at([-12, 13]), at([0, 4]));
  page.balloon("2", at([39, -16]), at([39, -11]));
  page.balloon("3", at([90, 10]), at([78.5, 3]));
  page.balloon("4", at([12, 12]), at([0.4, 3.9]));
  return page.pdf(`${part.id} ${revision}`);
}

/** Drawing of the plunger of a large coil: cylinder with a slot for the link and a hole for its pin. */
export function plungerPdf(part: Part, revision: string, file: string): Uint8Array {
  const page = framedPage({
    part,
    revision,
    file,
    scale: "2:1",
    note: "Working face flat and square within 0.05.",
  });
  const at = placedAt([75, 110], 2);
  page.pen(0.5);
  page.ring([at([0, -6]), at([62, -6]), at([62, 6]), at([0, 6])]);
  page.line(at([46, 2.1]), at([62, 2.1]));
  page.line(at([46, -2.1]), at([62, -2.1]));
  page.line(at([46, -2.1]), at([46, 2.1]));
  page.pen(0.25, [2, 1]);
  for (const x of [54, 58]) {
    page.line(at([x, -6]), at([x, -2.1]));
    page.line(at([x, 2.1]), at([x, 6]));
  }
  page.text("\u00d8 4 through, for the pin", at([50, 15]));
  page.dimension("62 \u00b1 0.2", at([0, -6]), at([62, -6]), -12);
  page.dimension("\u00d8 11.9 0 -0.05", at([0, -6]), at([0, 6]), -8);
  page.dimension("4.2 +0.1 0", at([62, -2.1]), at([62, 2.1]), 12);
  page.dimension("6", at([56, 6]), at([62, 6]), 8);
  page.balloon("1", at([-14, 14]), at([0, 6]));
  page.balloon("2", at([31, -16]), at([31, -12]));
  page.balloon("3", at([76, 10]), at([62, 1]));
  page.balloon("4", at([-12, -14]), at([0, -2]));
  return page.pdf(`${part.id} ${revision}`);
}

/** Drawing of the bat of a flipper: two rounds with straight flanks, a boss for the shaft. */
export function batPdf(part: Part, revision: string, file: string): Uint8Array {
  // Revision B has a thicker wall about the bore: the sample of revision A cracked there.
  const wall = revision === "A" ? 2 : 3;
  const page = framedPage({
    part,
    revision,
    file,
    scale: "2:1",
    note: `Draft 1\u00b0. Wall about the bore ${wall}.`,
  });
  const at = placedAt([90, 110], 2);
  const length = 58;
  const [large, small] = [8 + (wall - 2), 4];
  // Flanks touch both rounds.
  const tilt = Math.asin((large - small) / length);
  const [sin, cos] = [Math.sin(tilt), Math.cos(tilt)];
  page.pen(0.5);
  page.circle(at([0, 0]), large * 2);
  page.circle(at([length, 0]), small * 2);
  page.circle(at([0, 0]), 8);
  for (const side of [1, -1])
    page.line(at([large * sin, side * large * cos]), at([length + small * sin, side * small * cos]));
  page.dimension("58 \u00b1 0.3", at([0, 0]), at([length, 0]), -32);
  page.text("\u00d8 8.1 +0.05 0", at([-4, 12]));
  page.text("high 22 \u00b1 0.2", at([24, 14]));
  page.balloon("1", at([29, -22]), at([29, -16]));
  page.balloon("2", at([-16, 10]), at([-3, 2.6]));
  page.balloon("3", at([44, 16]), at([36, 15]));
  page.balloon("4", at([70, 10]), at([length + 2, 3]));
  return page.pdf(`${part.id} ${revision}`);
}
