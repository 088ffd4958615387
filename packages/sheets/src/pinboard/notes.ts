import type { HarnessResult } from "@pinwright/engine";
import type { SheetLanguage } from "@pinwright/words";
import { at, box, LINE, line, polyline, rect, stroke, TEXT, write } from "../compose/draw.ts";
import { type Block, gap } from "../compose/flow.ts";
import type { Mark } from "../compose/mark.ts";
import { shortMm } from "../compose/number.ts";
import { paragraph } from "../compose/paragraph.ts";
import { say } from "../compose/say.ts";
import { leadingMm } from "../compose/text.ts";
import { wrap } from "../compose/wrap.ts";
import { pegMarks } from "./peg.ts";
import type { Scene } from "./scene.ts";

function signRow(sign: Mark[], text: string, widthMm: number): Block {
  const lines = wrap(text, widthMm - 16, TEXT.small);
  const step = leadingMm(TEXT.small);
  const heightMm = Math.max(7, lines.length * step + 2.5);
  const top = heightMm / 2 - (lines.length * step) / 2;
  return {
    heightMm,
    marks: [
      { kind: "group", marks: sign, dxMm: 6, dyMm: heightMm / 2, clip: null, part: "body" },
      ...lines.map((t, i) => write(t, at(16, top + (i + 0.75) * step), { heightMm: TEXT.small })),
    ],
  };
}

/** What the signs on a pinboard mean. */
export function legendBlocks(language: SheetLanguage, holeMm: number, widthMm: number): Block[] {
  const words = (choose: Parameters<typeof say>[1]): string => say(language, choose);
  const bundle = [
    polyline([at(-5, 0), at(5, 0)], stroke("ink", 3.4), "BRANCHES"),
    polyline([at(-5, 0), at(5, 0)], stroke("tint", 3), "BRANCHES"),
    polyline([at(-5, 0), at(5, 0)], stroke("accent", LINE.medium), "BRANCHES"),
  ];
  const square = (x: number, filled: boolean): Mark =>
    rect(box(x, -0.8, 1.6, 1.6), stroke("ink", LINE.hair), filled ? "ink" : null, "HOLDERS");
  return [
    paragraph(
      say(language, (w) => w.pinboard.legend, " · "),
      widthMm,
      TEXT.normal,
      true,
    ),
    signRow(
      bundle,
      words((w) => w.pinboard.branch),
      widthMm,
    ),
    signRow(
      pegMarks(at(0, 0), holeMm),
      words((w) => `${w.pinboard.peg}; ${w.pinboard.hole(shortMm(holeMm))}`),
      widthMm,
    ),
    signRow(
      [...bundle, line(at(0, -2.5), at(0, 2.5), stroke("ink", LINE.frame), "TIES")],
      words((w) => w.pinboard.tie),
      widthMm,
    ),
    signRow(
      [
        rect(box(-5, -2.6, 10, 5.2), stroke("ink", LINE.medium), "paper", "HOLDERS"),
        line(at(-5, 2.6), at(5, 2.6), stroke("ink", LINE.frame), "HOLDERS"),
        square(-3.8, true),
        square(-0.8, false),
        square(2.2, false),
      ],
      words((w) => w.pinboard.holder),
      widthMm,
    ),
    signRow(
      [
        write("240", at(0, -0.6), {
          heightMm: TEXT.small,
          weight: "bold",
          anchor: "middle",
          layer: "DIMENSIONS",
        }),
        write("Ø 6 · 9×", at(0, 2.6), { heightMm: TEXT.small, anchor: "middle", layer: "DIMENSIONS" }),
      ],
      words((w) => w.pinboard.dimension),
      widthMm,
    ),
  ];
}

/** How to read this board: its view, its size, what is odd about it, and how to print it. */
export function noteBlocks(
  harness: HarnessResult,
  scene: Scene,
  language: SheetLanguage,
  widthMm: number,
): Block[] {
  const { pinboard } = harness;
  const words = (choose: Parameters<typeof say>[1]): string => say(language, choose);
  const view = words((w) =>
    pinboard.kind === "unfolded"
      ? w.pinboard.unfolded
      : pinboard.side === "under"
        ? w.pinboard.mirrored
        : w.pinboard.upright,
  );
  const blocks = [
    paragraph(view, widthMm, TEXT.normal, true),
    paragraph(
      words((w) => w.pinboard.boardSize(shortMm(pinboard.widthMm), shortMm(pinboard.heightMm))),
      widthMm,
      TEXT.normal,
    ),
    paragraph(
      words((w) => w.pinboard.printTrue),
      widthMm,
      TEXT.normal,
    ),
  ];
  if (pinboard.crossings > 0) {
    blocks.push(
      paragraph(
        words((w) => w.pinboard.crossings(pinboard.crossings)),
        widthMm,
        TEXT.normal,
        true,
      ),
    );
  }
  if (scene.balloons.length > 0) {
    blocks.push(
      gap(1),
      paragraph(
        words((w) => w.pinboard.balloons),
        widthMm,
        TEXT.normal,
        true,
      ),
    );
    for (const b of scene.balloons) {
      const where = `x ${shortMm(b.target.xMm)}, y ${shortMm(scene.heightMm - b.target.yMm)} mm`;
      const text = b.lines.map((l) => l.text).join(" · ");
      blocks.push(
        paragraph(`${b.number}: ${text}${b.at === null ? ` (${where})` : ""}`, widthMm, TEXT.small),
      );
    }
  }
  return blocks;
}
