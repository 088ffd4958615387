import type { LineResult } from "@pinwright/engine";
import { seenCutouts } from "../assembly/ground.ts";
import type { PanelView } from "../assembly/panel-view.ts";
import { at, box, LINE, rect, stroke, TEXT, write } from "../compose/draw.ts";
import type { Box, Mark, PagePoint } from "../compose/mark.ts";
import { shortNumber } from "../compose/number.ts";
import type { TurnedBox } from "../compose/plane.ts";
import { say } from "../compose/say.ts";
import { textWidthMm } from "../compose/text.ts";
import type { SheetOptions } from "../options.ts";

/** Stops are strips on the template's edge that reach down over the panel's: common practice, no source. */
const STOP_MM = { length: 40, out: 7 } as const;
/** Round holes that a pin is turned for: common practice, no source. */
const PIN_MM = { least: 4, most: 40 } as const;
/** Turned over, a pin must miss its hole by this much. */
const MISS_MM = 3;

/** A round hole right through the panel that a pin of the template stands in. */
interface Pin {
  readonly at: PagePoint;
  readonly diameterMm: number;
}

/** What a template is laid to its panel by. */
export interface Locators {
  readonly marks: readonly Mark[];
  /** Where their words stand. */
  readonly boxes: readonly TurnedBox[];
  readonly hasPins: boolean;
}

/** Two holes as far apart as there are, which a template that lies the wrong way up misses. */
function pinsOf(line: LineResult, view: PanelView): readonly Pin[] {
  const holes = seenCutouts(line, view).flatMap((row): Pin[] =>
    row.shape === "circle" &&
    row.depth_mm === null &&
    row.width_mm !== null &&
    row.width_mm >= PIN_MM.least &&
    row.width_mm <= PIN_MM.most
      ? [{ at: view.toPage({ xMm: row.x_mm, yMm: row.y_mm }), diameterMm: row.width_mm }]
      : [],
  );
  let best: readonly Pin[] = [];
  let bestMm = 0;
  for (const [i, a] of holes.entries()) {
    for (const b of holes.slice(i + 1)) {
      const mm = Math.hypot(a.at.xMm - b.at.xMm, a.at.yMm - b.at.yMm);
      if (mm <= bestMm || fitsTurnedOver(a, b, holes, view.widthMm)) continue;
      best = [a, b];
      bestMm = mm;
    }
  }
  return best;
}

/** Whether both pins find holes when the template is turned over about the panel's y. */
function fitsTurnedOver(a: Pin, b: Pin, holes: readonly Pin[], widthMm: number): boolean {
  const finds = (pin: Pin): boolean =>
    holes.some(
      (h) =>
        h.diameterMm >= pin.diameterMm &&
        Math.hypot(h.at.xMm - (widthMm - pin.at.xMm), h.at.yMm - pin.at.yMm) <
          MISS_MM + (h.diameterMm - pin.diameterMm) / 2,
    );
  return finds(a) && finds(b);
}

/** Three stops, two on the longer side and one across it, and two pins where the panel has holes for them. */
export function locators(line: LineResult, view: PanelView, options: SheetOptions): Locators {
  const { widthMm, heightMm } = view;
  const { length, out } = STOP_MM;
  const upright = (yMm: number): Box => box(-out, yMm - length / 2, out, length);
  const level = (xMm: number): Box => box(xMm - length / 2, heightMm, length, out);
  const stops =
    heightMm >= widthMm
      ? [upright(heightMm * 0.15), upright(heightMm * 0.85), level(widthMm * 0.2)]
      : [level(widthMm * 0.15), level(widthMm * 0.85), upright(heightMm * 0.2)];
  const word = say(options.language, (w) => w.steps.pilot.stop, " · ");
  const wordMm = textWidthMm(word, TEXT.normal);
  const marks: Mark[] = [];
  const boxes: TurnedBox[] = [];
  for (const stop of stops) {
    const middle = at(stop.xMm + stop.widthMm / 2, stop.yMm + stop.heightMm / 2);
    const turnDeg = stop.heightMm > stop.widthMm ? 90 : 0;
    marks.push(
      rect(stop, stroke("ink", LINE.strong), null, "LOCATE"),
      write(
        word,
        at(
          middle.xMm + (turnDeg === 90 ? TEXT.normal / 2 : 0),
          middle.yMm + (turnDeg === 90 ? 0 : TEXT.normal / 2),
        ),
        {
          anchor: "middle",
          turnDeg,
          layer: "ENGRAVE",
        },
      ),
    );
    boxes.push({ middle, widthMm: stop.widthMm, heightMm: stop.heightMm, turnDeg: 0 });
  }
  const pins = pinsOf(line, view);
  for (const pin of pins) {
    const text = say(options.language, (w) => w.steps.pilot.pin(shortNumber(pin.diameterMm, 2)), " · ");
    const baseline = pin.at.yMm + pin.diameterMm / 2 + TEXT.normal + 1;
    marks.push(
      {
        kind: "circle",
        at: pin.at,
        radiusMm: pin.diameterMm / 2,
        stroke: stroke("ink", LINE.strong),
        fill: null,
        layer: "LOCATE",
      },
      write(text, at(pin.at.xMm, baseline), { anchor: "middle", layer: "ENGRAVE" }),
    );
    boxes.push(
      { middle: pin.at, widthMm: pin.diameterMm, heightMm: pin.diameterMm, turnDeg: 0 },
      {
        middle: at(pin.at.xMm, baseline - TEXT.normal / 2),
        widthMm: Math.max(wordMm, textWidthMm(text, TEXT.normal)),
        heightMm: TEXT.normal * 1.4,
        turnDeg: 0,
      },
    );
  }
  return { marks, boxes, hasPins: pins.length > 0 };
}
