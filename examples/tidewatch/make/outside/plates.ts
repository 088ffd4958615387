import type { BookRow, Outline } from "@pinwright/book";
import { type FlatShape, flatDxf } from "./dxf.ts";
import { framedPage, placedAt } from "./frame.ts";
import type { XY } from "./page.ts";
import { plateStep } from "./step.ts";

type Part = BookRow<"parts">;
const utf8 = new TextEncoder();

const rectangle = (width: number, height: number): readonly XY[] => [
  [0, 0],
  [width, 0],
  [width, height],
  [0, height],
];

/** Flat length of a 90° flange: 60 + 20 less 3.6 at 2 mm, inside radius 2 mm, neutral axis at 0.4 of the thickness. */
const FLAT_MM = 76.4;
/** Middle of the bend on the flat blank. */
const BEND_MM = 58.2;

/** The plate of a flipper as it is cut: holes of its screws and the bore of the bush, as the mechanism has them. */
function flipperShape(revision: string): FlatShape {
  // Revision A had holes in which the screws bound after plating.
  const diameter = revision === "A" ? 4.2 : 4.5;
  const screws: readonly XY[] = [
    [6, 6],
    [114, 6],
    [6, 54],
    [114, 54],
  ];
  return {
    rings: [rectangle(120, FLAT_MM)],
    circles: [...screws.map((at) => ({ at, diameter })), { at: [92, 30], diameter: 13 }],
    bends: [
      [
        [0, BEND_MM],
        [120, BEND_MM],
      ],
    ],
  };
}

/** Drawing of the flipper plate: its face, and the flange from the side. */
export function flipperPlatePdf(part: Part, revision: string, file: string): Uint8Array {
  const note = `Flange 20 outside, bent 90\u00b0 up, inside radius 2. Flat blank: 120 \u00d7 ${FLAT_MM}.`;
  const page = framedPage({ part, revision, file, scale: "1:1", note });
  const at = placedAt([50, 90], 1);
  const shape = flipperShape(revision);
  page.pen(0.5);
  page.ring([at([0, 0]), at([120, 0]), at([120, 60]), at([0, 60])]);
  for (const { at: middle, diameter } of shape.circles) page.circle(at(middle), diameter / 2);
  page.pen(0.18, [4, 1, 1, 1]);
  for (const { at: middle, diameter } of shape.circles) {
    const [x, y] = middle;
    page.line(at([x - diameter, y]), at([x + diameter, y]));
    page.line(at([x, y - diameter]), at([x, y + diameter]));
  }
  page.dimension("108 \u00b1 0.15", at([6, 6]), at([114, 6]), -16);
  page.dimension("48 \u00b1 0.15", at([6, 6]), at([6, 54]), -16);
  page.dimension("86", at([6, 30]), at([92, 30]), -10);
  page.text(`4\u00d7 \u00d8 ${revision === "A" ? "4.2" : "4.5"} +0.1 0`, at([66, 62.5]));
  page.text("\u00d8 13 +0.05 0", at([96, 38]));
  page.balloon("1", at([60, -24]), at([60, -11]));
  page.balloon("2", at([-22, 48]), at([-10, 42]));
  page.balloon("3", at([132, 66]), at([115.6, 55.6]));
  page.balloon("4", at([132, 30]), at([98.5, 30]));
  const side = placedAt([200, 90], 1);
  page.pen(0.5);
  page.ring([side([0, 0]), side([2, 0]), side([2, 58]), side([20, 58]), side([20, 60]), side([0, 60])]);
  page.dimension("20", side([0, 60]), side([20, 60]), 6);
  page.dimension("2", side([0, 0]), side([2, 0]), -8);
  page.balloon("5", side([-14, 20]), side([0, 20]));
  page.balloon("6", side([34, 72]), side([20, 59]));
  return page.pdf(`${part.id} ${revision}`);
}

/** Flat blank of the flipper plate. */
export const flipperPlateDxf = (revision: string): Uint8Array => utf8.encode(flatDxf(flipperShape(revision)));

/** The plate that joins the two rods of a pop bumper's ring: flat, three holes. */
const ARMATURE: FlatShape = {
  rings: [rectangle(60, 20)],
  circles: [
    { at: [6, 10], diameter: 5.1 },
    { at: [54, 10], diameter: 5.1 },
    { at: [30, 10], diameter: 4.2 },
  ],
};

export function armaturePdf(part: Part, revision: string, file: string): Uint8Array {
  const page = framedPage({
    part,
    revision,
    file,
    scale: "2:1",
    note: "Flat; no bends. Rods press in: see 2.",
  });
  const at = placedAt([85, 100], 2);
  page.pen(0.5);
  for (const ring of ARMATURE.rings) page.ring(ring.map(at));
  for (const { at: middle, diameter } of ARMATURE.circles) page.circle(at(middle), diameter);
  page.dimension("48 \u00b1 0.05", at([6, 10]), at([54, 10]), -32);
  page.dimension("60", at([0, 20]), at([60, 20]), 22);
  page.dimension("20", at([60, 0]), at([60, 20]), 10);
  page.text("2\u00d7 \u00d8 5.1 +0.05 0", at([1, 22]));
  page.text("\u00d8 4.2 +0.1 0", at([24, 22]));
  page.balloon("1", at([30, -13]), at([30, -6]));
  page.balloon("2", at([-14, 22]), at([3.8, 11.4]));
  page.balloon("3", at([44, 26]), at([31, 12]));
  page.balloon("4", at([70, 24]), at([58, 16]));
  return page.pdf(`${part.id} ${revision}`);
}

export const armatureDxf = (): Uint8Array => utf8.encode(flatDxf(ARMATURE));

export const armatureStep = (part: Part, day: string): Uint8Array =>
  utf8.encode(
    plateStep({
      id: part.id,
      label: part.label,
      outline: ARMATURE.rings[0] ?? [],
      holes: ARMATURE.circles,
      thickness: part.thickness_mm ?? 2,
      day,
    }),
  );

/** Rings of an outline of the book, moved so that its lower left corner is the origin. */
function ringsOf(outline: Outline): readonly (readonly XY[])[] {
  const points = outline.rings.flat();
  const left = Math.min(...points.map(({ xMm }) => xMm));
  const low = Math.min(...points.map(({ yMm }) => yMm));
  const round = (value: number): number => Math.round(value * 1000) / 1000;
  return outline.rings.map((ring) => ring.map(({ xMm, yMm }): XY => [round(xMm - left), round(yMm - low)]));
}

/** Drawing of a plastic, from the outline that it has in the book. */
export function plasticPdf(part: Part, revision: string, file: string, outline: Outline): Uint8Array {
  const page = framedPage({
    part,
    revision,
    file,
    scale: "1:1",
    note: "Printed on the rear: see the artwork.",
  });
  const rings = ringsOf(outline);
  const points = rings.flat();
  const [width, height] = [Math.max(...points.map(([x]) => x)), Math.max(...points.map(([, y]) => y))];
  const at = placedAt([70, 48], 1);
  page.pen(0.5);
  for (const ring of rings) page.ring(ring.map(at));
  page.dimension(`${width.toFixed(1)} \u00b1 0.2`, at([0, 0]), at([width, 0]), -8);
  page.dimension(`${height.toFixed(1)} \u00b1 0.2`, at([0, 0]), at([0, height]), -22);
  page.balloon("1", at([width / 2, -14]), at([width / 2, -8]));
  page.balloon("2", at([-32, height / 2 + 14]), at([-22, height / 2 + 6]));
  page.balloon("3", at([width + 30, height - 10]), at([width * 0.7, height * 0.5]));
  return page.pdf(`${part.id} ${revision}`);
}

export const plasticDxf = (outline: Outline): Uint8Array =>
  utf8.encode(flatDxf({ rings: ringsOf(outline), circles: [] }));
