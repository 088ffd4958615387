import type { FastenerCount, LineResult, StationKit } from "@pinwright/engine";
import type { SheetLanguage } from "@pinwright/words";
import { rowLabel, tightenText } from "../assembly/step-texts.ts";
import { symbolMark } from "../assembly/symbol-mark.ts";
import type { PageBody } from "../compose/document.ts";
import { at, box, group, LINE, rect, stroke, TEXT, write } from "../compose/draw.ts";
import { roomOf } from "../compose/listing.ts";
import type { Mark } from "../compose/mark.ts";
import type { Paper } from "../compose/paper.ts";
import { say } from "../compose/say.ts";
import { leadingMm, textWidthMm } from "../compose/text.ts";
import { wrap } from "../compose/wrap.ts";

/** A label for the front of a box: common practice, no source. */
const LABEL_MM = { widthMm: 85, heightMm: 46 } as const;
const SYMBOL_MM = 18;
const LETTER_MM = 15;
const PAD_MM = 3;

/** Pages of labels, one for each box of a kit. @param first page of the sheet that they begin on */
export function labelBodies(
  line: LineResult,
  kit: StationKit,
  title: string,
  language: SheetLanguage,
  paper: Paper,
  first: number,
): readonly PageBody[] {
  const room = roomOf(paper, first);
  const hint = say(language, (w) => `${w.steps.kit.labels}. ${w.steps.kit.labelHint}`, " · ");
  const hintLines = wrap(hint, room.widthMm, TEXT.normal);
  const topMm = hintLines.length * leadingMm(TEXT.normal) + 2;
  const columns = Math.max(1, Math.floor(room.widthMm / LABEL_MM.widthMm));
  const rows = Math.max(1, Math.floor((room.heightMm - topMm) / LABEL_MM.heightMm));
  const bodies: PageBody[] = [];
  for (let from = 0; from < kit.fasteners.length; from += columns * rows) {
    const own = kit.fasteners.slice(from, from + columns * rows);
    bodies.push({
      paper,
      marks: [
        ...hintLines.map((t, i) =>
          write(t, at(room.xMm, room.yMm + TEXT.normal + i * leadingMm(TEXT.normal))),
        ),
        ...own.map((count, i) =>
          group(
            labelMarks(line, count, title, language),
            room.xMm + (i % columns) * LABEL_MM.widthMm,
            room.yMm + topMm + Math.floor(i / columns) * LABEL_MM.heightMm,
          ),
        ),
      ],
    });
  }
  return bodies;
}

/** First lines of a text in a column, at the largest of some heights at which all of it fits. */
function fitted(text: string, widthMm: number, roomMm: number): { lines: string[]; heightMm: number } {
  for (const heightMm of [TEXT.large, TEXT.normal]) {
    const lines = wrap(text, widthMm, heightMm, "bold");
    if (lines.length * leadingMm(heightMm) <= roomMm) return { lines, heightMm };
  }
  const lines = wrap(text, widthMm, TEXT.small, "bold");
  return { lines: lines.slice(0, Math.floor(roomMm / leadingMm(TEXT.small))), heightMm: TEXT.small };
}

function labelMarks(line: LineResult, count: FastenerCount, title: string, language: SheetLanguage): Mark[] {
  const { widthMm, heightMm } = LABEL_MM;
  const type = line.machine.book.tables.fastener_types.find((t) => t.id === count.typeId);
  const letter = count.symbol?.letter ?? "";
  const leftMm = count.symbol === null ? 0 : SYMBOL_MM + 3 + textWidthMm(letter, LETTER_MM, "bold") + 4;
  const right = PAD_MM + leftMm;
  const name = fitted(
    rowLabel(type, count.typeId, language, "\n"),
    widthMm - right - PAD_MM,
    heightMm - 2 * PAD_MM - 14,
  );
  const figures = `× ${count.count}`;
  // Drive and clutch are figures in any language.
  const own = language === "both" ? "en" : language;
  const foot = [type?.drive ?? "", type === undefined ? "" : tightenText(type, own)].filter((t) => t !== "");
  const footLines = wrap(`${title.split("\n").join(" · ")}`, widthMm - 2 * PAD_MM, TEXT.small).slice(0, 2);
  const footTop = heightMm - PAD_MM - (footLines.length - 1) * leadingMm(TEXT.small);
  return [
    rect(box(0, 0, widthMm, heightMm), stroke("faint", LINE.thin, [3, 2])),
    ...(count.symbol === null
      ? []
      : [
          symbolMark(count.symbol, at(PAD_MM + SYMBOL_MM / 2, PAD_MM + SYMBOL_MM / 2 + 1), SYMBOL_MM),
          write(letter, at(PAD_MM + SYMBOL_MM + 3, PAD_MM + SYMBOL_MM - 1), {
            heightMm: LETTER_MM,
            weight: "bold",
          }),
        ]),
    ...name.lines.map((t, i) =>
      write(t, at(right, PAD_MM + name.heightMm + 1 + i * leadingMm(name.heightMm)), {
        heightMm: name.heightMm,
        weight: "bold",
      }),
    ),
    write(figures, at(PAD_MM, footTop - 6.5), { heightMm: TEXT.huge, weight: "bold" }),
    ...foot.map((t, i) =>
      write(t, at(widthMm - PAD_MM, footTop - 6.5 - (foot.length - 1 - i) * leadingMm(TEXT.small)), {
        heightMm: TEXT.small,
        anchor: "end",
      }),
    ),
    ...footLines.map((t, i) =>
      write(t, at(PAD_MM, footTop + i * leadingMm(TEXT.small) - 0.5), { heightMm: TEXT.small }),
    ),
  ];
}
