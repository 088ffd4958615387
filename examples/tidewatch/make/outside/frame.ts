import type { BookRow } from "@pinwright/book";
import { DrawnPage, type XY } from "./page.ts";

/** What stands at the foot of every drawing. */
export interface Title {
  readonly part: BookRow<"parts">;
  readonly revision: string;
  readonly file: string;
  readonly scale: string;
  readonly note: string;
}

/** A text that the fonts of the drawings have. */
const plain = (text: string): string => text.replace(/[^\u0020-\u007e\u00a0-\u00ff]/g, "-");

/** A page with frame and title: part, revision, material, finish, scale, and what holds for all that is not said. */
export function framedPage({ part, revision, scale, note }: Title): DrawnPage {
  const page = new DrawnPage();
  page.pen(0.7);
  page.ring([
    [20, 10],
    [287, 10],
    [287, 200],
    [20, 200],
  ]);
  page.pen(0.35);
  page.ring([
    [147, 10],
    [287, 10],
    [287, 46],
    [147, 46],
  ]);
  page.line([147, 34], [287, 34]);
  page.line([147, 22], [287, 22]);
  page.line([257, 22], [257, 46]);
  const cell = (head: string, text: string, [x, y]: XY, heightMm = 2.5): void => {
    page.text(plain(head), [x + 1.5, y + 8], 1.8);
    page.text(plain(text), [x + 1.5, y + 2.5], heightMm);
  };
  cell("Part", part.id, [147, 34], 3.5);
  cell("Revision", revision, [257, 34], 5);
  cell("Title", part.label, [147, 22]);
  cell("Scale", scale, [257, 22], 3.5);
  const thickness = part.thickness_mm === null ? "" : `, ${part.thickness_mm} mm`;
  const finish = part.finish === "" ? "" : `; finish: ${part.finish}`;
  cell("Material, finish", `${part.material}${thickness}${finish}`, [147, 10]);
  page.text(plain(note), [24, 20]);
  page.text("Dimensions in mm. Not said: \u00b1 0.2. Edges deburred. Balloons: first article.", [24, 14]);
  return page;
}

/** Draws at a scale about a place of the page. */
export const placedAt =
  (origin: XY, scale: number) =>
  ([x, y]: XY): XY => [origin[0] + x * scale, origin[1] + y * scale];
