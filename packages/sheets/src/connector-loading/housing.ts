import type { LoadedCavity, LoadedLanding } from "@pinwright/engine";
import type { SheetLanguage } from "@pinwright/words";
import { at, box, LINE, rect, stroke, TEXT, write } from "../compose/draw.ts";
import type { Block } from "../compose/flow.ts";
import type { Ink, Mark } from "../compose/mark.ts";
import { say } from "../compose/say.ts";
import { textWidthMm } from "../compose/text.ts";

/** A cavity is drawn this wide at least, whatever its real pitch: it is read with gloves on, at arm's length. */
const CELL_LEAST_MM = 11;
const SMALL_STEP_MM = 3.2;
const WIRE_STEP_MM = 7.4;
const POINTER_MM = 4;

interface Words {
  readonly key: string;
  readonly spare: string;
  readonly empty: string;
}

/** Width that the widest colour code of a housing needs. */
function cellWidth(cavities: readonly LoadedCavity[], words: Words): number {
  const idle = [words.key, words.spare, words.empty].flatMap((t) => t.split("\n"));
  return Math.max(
    CELL_LEAST_MM,
    ...cavities.flatMap((c) => c.wires.map((w) => textWidthMm(w.colour, TEXT.normal, "bold") + 2.4)),
    ...(cavities.some((c) => c.wires.length === 0) ? idle.map((t) => textWidthMm(t, TEXT.small) + 2) : []),
  );
}

function cellMarks(
  cavity: LoadedCavity,
  xMm: number,
  yMm: number,
  widthMm: number,
  heightMm: number,
  words: Words,
): Mark[] {
  const middle = xMm + widthMm / 2;
  const key = cavity.state === "key";
  const ground: Ink = key ? "ink" : cavity.state === "wired" ? "paper" : "tint";
  const ink: Ink = key ? "paper" : "ink";
  const marks: Mark[] = [
    rect(box(xMm, yMm, widthMm, heightMm), stroke("ink", LINE.thin), ground, "HOLDERS"),
    write(cavity.name, at(xMm + 0.9, yMm + 2.7), { heightMm: TEXT.small, ink }),
  ];
  if (cavity.wires.length === 0) {
    const text = key ? words.key : cavity.state === "spare" ? words.spare : words.empty;
    text.split("\n").forEach((t, i) => {
      marks.push(
        write(t, at(middle, yMm + 6.4 + i * SMALL_STEP_MM), { heightMm: TEXT.small, anchor: "middle", ink }),
      );
    });
  }
  cavity.wires.forEach((wire, i) => {
    const top = yMm + 3.4 + i * WIRE_STEP_MM;
    marks.push(
      write(wire.colour, at(middle, top + TEXT.normal + 0.4), { weight: "bold", anchor: "middle", ink }),
      write(String(wire.number), at(middle, top + 2 * TEXT.normal + 1.6), { anchor: "middle", ink }),
    );
  });
  return marks;
}

/** A solid triangle at cavity 1, pointing at it from its left or, mirrored, from its right. */
function pointer(xMm: number, yMm: number, mirrored: boolean): Mark {
  const d = mirrored ? -POINTER_MM : POINTER_MM;
  return {
    kind: "polygon",
    points: [at(xMm, yMm), at(xMm - d, yMm - 2.2), at(xMm - d, yMm + 2.2)],
    stroke: null,
    fill: "accent",
    layer: "HOLDERS",
  };
}

/**
 * A housing from the wire-entry side, in the order of the loading's cells. Rows that are longer than the page is
 * wide are drawn in strips one below the other.
 */
export function housingBlock(
  landing: LoadedLanding,
  language: SheetLanguage,
  widthMm: number,
): Block & { readonly widthMm: number } {
  const { cavities, columns, rows } = landing;
  const words: Words = {
    key: say(language, (w) => w.common.key),
    spare: say(language, (w) => w.common.spare),
    empty: say(language, (w) => w.loading.noWire),
  };
  const mostWires = Math.max(1, ...cavities.map((c) => c.wires.length));
  const heightMm = Math.max(3.4 + mostWires * WIRE_STEP_MM + 0.6, language === "both" ? 11.4 : 0);
  const cellMm = cellWidth(cavities, words);
  const mirrored = landing.half === "b";
  const most = Math.max(1, Math.floor((widthMm - 2 * POINTER_MM - 2) / cellMm));
  const strips = Math.ceil(columns / most);
  const perStrip = Math.ceil(columns / strips);
  const stripMm = rows * heightMm + 4;
  const left = POINTER_MM + 1;
  const marks: Mark[] = [];
  for (const cavity of cavities) {
    const { column, row } = cavity.cell;
    const strip = Math.floor(column / perStrip);
    const x = left + (column - strip * perStrip) * cellMm;
    const y = strip * stripMm + row * heightMm + 1;
    marks.push(...cellMarks(cavity, x, y, cellMm, heightMm, words));
    if (cavity.pin === 1) {
      marks.push(pointer(mirrored ? x + cellMm + 0.6 : x - 0.6, y + heightMm / 2, mirrored));
    }
  }
  for (let strip = 0; strip < strips; strip++) {
    const count = Math.min(perStrip, columns - strip * perStrip);
    marks.push(
      rect(
        box(left, strip * stripMm + 1, count * cellMm, rows * heightMm),
        stroke("ink", LINE.bold),
        null,
        "HOLDERS",
      ),
    );
  }
  return {
    heightMm: strips * stripMm,
    widthMm: perStrip * cellMm + 2 * (POINTER_MM + 1),
    marks,
  };
}
