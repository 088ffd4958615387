import type { CutArea, LineResult, PlacedPanel, SawCut, SheetCut } from "@pinwright/engine";
import type { SheetLanguage } from "@pinwright/words";
import { at, box, LINE, rect, line as stretch, stroke, TEXT, write } from "../compose/draw.ts";
import type { Block } from "../compose/flow.ts";
import type { Mark, PagePoint, PolygonMark } from "../compose/mark.ts";
import { shortNumber } from "../compose/number.ts";
import { say } from "../compose/say.ts";
import { leadingMm, textWidthMm } from "../compose/text.ts";
import { wrap } from "../compose/wrap.ts";
import { panelNames, sizeMm } from "./panel-facts.ts";

/** Room above a drawing for its heading, and at its left and below for the sheet's own sizes. */
const HEAD_MM = 9;
const EDGE_MM = 6;
const FOOT_MM = 2;
const RING_MM = 1.9;
/** Room at a cut that its ring takes. */
const CLEAR_MM = 4.6;

/** One way of cutting a sheet, to scale, as a block. */
export function patternBlock(
  line: LineResult,
  sheet: SheetCut,
  place: { readonly number: number; readonly of: number },
  language: SheetLanguage,
  room: { readonly widthMm: number; readonly heightMm: number },
): Block {
  const drawMm = { widthMm: room.widthMm - EDGE_MM, heightMm: room.heightMm - HEAD_MM - EDGE_MM - FOOT_MM };
  const per = Math.max(sheet.widthMm / drawMm.widthMm, sheet.heightMm / drawMm.heightMm);
  const scale = 1 / (Math.ceil(per * 10) / 10);
  const toPage = (xMm: number, yMm: number): PagePoint =>
    at(EDGE_MM + xMm * scale, HEAD_MM + (sheet.heightMm - yMm) * scale);
  const boxOf = (area: CutArea) => {
    const corner = toPage(area.xMm, area.yMm + area.heightMm);
    return box(corner.xMm, corner.yMm, area.widthMm * scale, area.heightMm * scale);
  };
  return {
    heightMm: HEAD_MM + sheet.heightMm * scale + EDGE_MM + FOOT_MM,
    marks: [
      ...headMarks(sheet, place, language, scale, room.widthMm),
      rect(
        boxOf({ xMm: 0, yMm: 0, widthMm: sheet.widthMm, heightMm: sheet.heightMm }),
        stroke("ink", LINE.strong),
        "tint",
      ),
      ...sheet.offcuts.flatMap((area) => offcutMarks(boxOf(area), area, language)),
      ...sheet.panels.flatMap((panel) => panelMarks(line, panel, boxOf(panel), language)),
      ...cutMarks(sheet.cuts, toPage),
      ...edgeTexts(sheet, toPage, language),
    ],
  };
}

function headMarks(
  sheet: SheetCut,
  { number, of }: { readonly number: number; readonly of: number },
  language: SheetLanguage,
  scale: number,
  widthMm: number,
): Mark[] {
  const words = (choose: Parameters<typeof say>[1]): string => say(language, choose, " · ");
  const left = words((w) => w.panels.plan.pattern(number, of));
  const middle = words((w) => w.panels.plan.copies(sheet.copies));
  const size = `${sizeMm(sheet.widthMm)} × ${sizeMm(sheet.heightMm)}`;
  const offcut = sheet.offcut ? `${words((w) => w.panels.plan.offcutStock)}: ` : "";
  const right = `${offcut}${words((w) => w.panels.plan.stock(sheet.stockId, size))} · ${words((w) => w.panels.plan.scale(`1:${shortNumber(1 / scale, 1)}`))}`;
  const from = textWidthMm(left, TEXT.large, "bold") + 8;
  return [
    write(left, at(0, 5), { heightMm: TEXT.large, weight: "bold" }),
    write(middle, at(from, 5), { heightMm: TEXT.large, weight: "bold", ink: "accent" }),
    write(right, at(widthMm, 5), { anchor: "end" }),
  ];
}

/** Texts in the middle of a room, at the largest height at which all of them fit; turned where it is higher than wide. */
function fittedTexts(
  texts: readonly { readonly text: string; readonly bold?: boolean }[],
  room: { readonly xMm: number; readonly yMm: number; readonly widthMm: number; readonly heightMm: number },
): Mark[] {
  const turned = room.heightMm > room.widthMm * 1.4;
  const [along, across] = turned ? [room.heightMm, room.widthMm] : [room.widthMm, room.heightMm];
  for (const heightMm of [TEXT.large, TEXT.normal, TEXT.small]) {
    const lines = texts.flatMap(({ text, bold }) =>
      wrap(text, along, heightMm, bold === true ? "bold" : "regular").map((t) => ({
        t,
        bold: bold === true,
      })),
    );
    const total = lines.length * leadingMm(heightMm);
    const widest = Math.max(
      0,
      ...lines.map(({ t, bold }) => textWidthMm(t, heightMm, bold ? "bold" : "regular")),
    );
    if ((total > across || widest > along) && heightMm > TEXT.small) continue;
    const kept = lines.slice(0, Math.max(1, Math.floor(across / leadingMm(heightMm))));
    const x = room.xMm + room.widthMm / 2;
    const y = room.yMm + room.heightMm / 2;
    return kept.map(({ t, bold }, i) => {
      const down = (i - (kept.length - 1) / 2) * leadingMm(heightMm) + heightMm / 2;
      return write(t, turned ? at(x + down, y) : at(x, y + down), {
        heightMm,
        weight: bold ? "bold" : "regular",
        anchor: "middle",
        turnDeg: turned ? 90 : 0,
      });
    });
  }
  return [];
}

type Room = ReturnType<typeof box>;

/** Room for a text inside a part: the rings of cuts stand at its left and lower edge. */
const inner = (b: Room): Room =>
  box(
    b.xMm + Math.min(CLEAR_MM, b.widthMm / 6),
    b.yMm + 1,
    b.widthMm - 2 * Math.min(CLEAR_MM, b.widthMm / 6),
    b.heightMm - 1 - Math.min(CLEAR_MM, b.heightMm / 4),
  );

function panelMarks(line: LineResult, panel: PlacedPanel, b: Room, language: SheetLanguage): Mark[] {
  const many = panel.panelIds.length > 1 ? panelNames(line, panel.panelIds, language) : "";
  const name = many === "" ? panelNames(line, [panel.panelId], language) : many;
  return [
    rect(b, stroke("ink", LINE.medium), "paper"),
    ...fittedTexts(
      [{ text: name, bold: true }, { text: `${sizeMm(panel.widthMm)} × ${sizeMm(panel.heightMm)}` }],
      inner(b),
    ),
  ];
}

function offcutMarks(b: Room, area: CutArea, language: SheetLanguage): Mark[] {
  const hatched: PolygonMark = {
    kind: "polygon",
    points: [
      at(b.xMm, b.yMm),
      at(b.xMm + b.widthMm, b.yMm),
      at(b.xMm + b.widthMm, b.yMm + b.heightMm),
      at(b.xMm, b.yMm + b.heightMm),
    ],
    stroke: stroke("ink", LINE.thin),
    fill: "paper",
    hatchMm: 4,
    layer: "BORDER",
  };
  const keep = say(language, (w) => w.panels.plan.keep, " · ");
  const text = `${keep} ${sizeMm(area.widthMm)} × ${sizeMm(area.heightMm)}`;
  const room = inner(b);
  const turned = b.heightMm > b.widthMm * 1.4;
  const wide = textWidthMm(text, TEXT.normal) + 3;
  const [w, h] = turned ? [5, Math.min(wide, room.heightMm)] : [Math.min(wide, room.widthMm), 5];
  const ground = box(b.xMm + b.widthMm / 2 - w / 2, b.yMm + b.heightMm / 2 - h / 2, w, h);
  const middle = at(b.xMm + b.widthMm / 2, b.yMm + b.heightMm / 2);
  const where = turned ? at(middle.xMm + 1.25, middle.yMm) : at(middle.xMm, middle.yMm + 1.25);
  return [
    hatched,
    rect(ground, null, "paper"),
    write(text, where, { anchor: "middle", turnDeg: turned ? 90 : 0 }),
  ];
}

/** A ring with its number on every cut, near where the cut begins. */
function cutMarks(cuts: readonly SawCut[], toPage: (xMm: number, yMm: number) => PagePoint): Mark[] {
  const taken: PagePoint[] = [];
  return cuts.flatMap((cut) => {
    const from = toPage(cut.line[0], cut.line[1]);
    const to = toPage(cut.line[2], cut.line[3]);
    const rip = Math.abs(from.yMm - to.yMm) < 1e-6;
    const free = (p: PagePoint): boolean =>
      taken.every((q) => Math.hypot(p.xMm - q.xMm, p.yMm - q.yMm) > 2 * RING_MM + 0.3);
    let place = from;
    for (let step = 0; step < 12; step++) {
      place = rip ? at(from.xMm + 2.4 + step * 4.2, from.yMm) : at(from.xMm, from.yMm - 2.4 - step * 4.2);
      if (free(place)) break;
    }
    taken.push(place);
    return [
      stretch(from, to, stroke("accent", LINE.thin)),
      {
        kind: "circle",
        at: place,
        radiusMm: RING_MM,
        stroke: stroke("accent", LINE.thin),
        fill: "paper",
        layer: "BORDER",
      },
      write(String(cut.number), at(place.xMm, place.yMm + TEXT.small / 2), {
        heightMm: TEXT.small,
        anchor: "middle",
      }),
    ] satisfies Mark[];
  });
}

/** Length and width of the sheet at its edges, and the way of its grain. */
function edgeTexts(
  sheet: SheetCut,
  toPage: (xMm: number, yMm: number) => PagePoint,
  language: SheetLanguage,
): Mark[] {
  const below = toPage(sheet.widthMm / 2, 0);
  const left = toPage(0, sheet.heightMm / 2);
  const corner = toPage(sheet.widthMm, 0);
  const grain = say(language, (w) => w.panels.plan.grain, " · ");
  return [
    write(sizeMm(sheet.widthMm), at(below.xMm, below.yMm + 4), { anchor: "middle" }),
    write(sizeMm(sheet.heightMm), at(left.xMm - 1.8, left.yMm), { anchor: "middle", turnDeg: 90 }),
    write(`↔ ${grain}`, at(corner.xMm, corner.yMm + 4), { anchor: "end" }),
  ];
}
