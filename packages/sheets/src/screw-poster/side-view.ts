import type { BookRow } from "@pinwright/book";
import { at, box, LINE, line, rect, stroke } from "../compose/draw.ts";
import type { Mark, PagePoint } from "../compose/mark.ts";

type FastenerType = BookRow<"fastener_types">;

/** A fastener drawn from the side at real size, lying with its head at the left; 0, 0 is under its head. */
export interface SideView {
  readonly marks: readonly Mark[];
  /** How far it reaches to the left of 0, to its right, and to either side of its axis. */
  readonly leftMm: number;
  readonly rightMm: number;
  readonly halfMm: number;
}

const PEN = stroke("ink", LINE.medium);
const THREAD = stroke("ink", LINE.hair);

/** Drawn pitch of a thread, in diameters: it is to be seen, not measured. Common practice, no source. */
const PITCH = { wood: 0.42, machine: 0.2 } as const;
/** Length of a wood screw's point, in diameters. */
const POINT = 1.3;

const polygon = (points: readonly PagePoint[], fill: "paper" | "tint" = "paper"): Mark => ({
  kind: "polygon",
  points,
  stroke: PEN,
  fill,
  layer: "BORDER",
});

/** Whether its thread bites into wood. */
const bitesWood = (type: FastenerType): boolean =>
  type.bites === "wood" ||
  (type.bites === "usual" && ["wood-screw", "post", "standoff", "nail", "saddle"].includes(type.kind));

/** Shank from `fromMm` to `toMm` along the axis, with its thread. */
function shank(type: FastenerType, fromMm: number, toMm: number): Mark[] {
  const r = type.diameter_mm / 2;
  if (toMm <= fromMm) return [];
  const wood = bitesWood(type);
  const pointMm = wood ? Math.min(POINT * type.diameter_mm, (toMm - fromMm) * 0.6) : 0;
  const shoulder = toMm - pointMm;
  const outline = wood
    ? polygon([at(fromMm, -r), at(shoulder, -r), at(toMm, 0), at(shoulder, r), at(fromMm, r)])
    : polygon([at(fromMm, -r), at(toMm, -r), at(toMm, r), at(fromMm, r)]);
  if (type.kind === "nail") return [outline];
  const pitchMm = type.diameter_mm * (wood ? PITCH.wood : PITCH.machine);
  const lean = pitchMm / 2;
  const threads: Mark[] = [];
  for (let x = fromMm + pitchMm; x < shoulder - lean; x += pitchMm)
    threads.push(line(at(x - lean / 2, r), at(x + lean / 2, -r), THREAD));
  return [outline, ...threads];
}

/** Head at the left of 0; a countersunk one lies within the length. */
function head(type: FastenerType): { readonly marks: Mark[]; readonly leftMm: number } {
  const r = (type.head_diameter_mm ?? type.diameter_mm) / 2;
  const high = type.head_height_mm ?? 0;
  const text = type.head.toLowerCase();
  if (high === 0 && text.includes("countersunk")) {
    const cone = Math.max(0, r - type.diameter_mm / 2);
    return {
      marks: [
        polygon(
          [at(0, -r), at(cone, -type.diameter_mm / 2), at(cone, type.diameter_mm / 2), at(0, r)],
          "tint",
        ),
      ],
      leftMm: 0,
    };
  }
  if (high === 0) return { marks: [], leftMm: 0 };
  if (text.includes("hexagon")) {
    const flange = text.includes("washer") ? high * 0.25 : 0;
    const flats = text.includes("washer") ? r * 0.78 : r;
    return {
      marks: [
        ...(flange > 0 ? [rect(box(-flange, -r, flange, 2 * r), PEN, "tint")] : []),
        rect(box(-high, -flats, high - flange, 2 * flats), PEN, "tint"),
        line(at(-high, -flats / 2), at(-flange, -flats / 2), THREAD),
        line(at(-high, flats / 2), at(-flange, flats / 2), THREAD),
      ],
      leftMm: high,
    };
  }
  const round = high * 0.55;
  return {
    marks: [
      polygon(
        [
          at(0, -r),
          at(-high + round, -r),
          at(-high + round * 0.3, -r * 0.86),
          at(-high, -r * 0.55),
          at(-high, r * 0.55),
          at(-high + round * 0.3, r * 0.86),
          at(-high + round, r),
          at(0, r),
        ],
        "tint",
      ),
    ],
    leftMm: high,
  };
}

/**
 * A fastener from the side, drawn from its kind, head, diameter and length: to be known by, not to be made from.
 * @param bodyMm height of a post's body over the panel
 */
export function sideView(type: FastenerType, bodyMm: number): SideView {
  const headMm = type.head_diameter_mm ?? type.diameter_mm;
  const halfMm = Math.max(headMm, type.diameter_mm) / 2;
  switch (type.kind) {
    case "nut":
    case "t-nut":
    case "washer":
      return {
        marks: [rect(box(0, -halfMm, type.length_mm, 2 * halfMm), PEN, "tint")],
        leftMm: 0,
        rightMm: type.length_mm,
        halfMm,
      };
    case "post": {
      const body = Math.min(bodyMm, type.length_mm);
      return {
        marks: [
          rect(box(0, -halfMm, body, 2 * halfMm), PEN, "tint"),
          ...(type.head.includes("hexagon")
            ? [
                line(at(0, -halfMm / 2), at(body, -halfMm / 2), THREAD),
                line(at(0, halfMm / 2), at(body, halfMm / 2), THREAD),
              ]
            : []),
          ...shank(type, body, type.length_mm),
        ],
        leftMm: 0,
        rightMm: type.length_mm,
        halfMm,
      };
    }
    default: {
      const top = head(type);
      return {
        marks: [...shank(type, 0, type.length_mm), ...top.marks],
        leftMm: top.leftMm,
        rightMm: type.length_mm,
        halfMm,
      };
    }
  }
}

/** A regular hexagon across the flats, flats above and below. */
function hexagon(acrossMm: number): PagePoint[] {
  const r = acrossMm / Math.sqrt(3);
  return [0, 60, 120, 180, 240, 300].map((deg) =>
    at(r * Math.cos((deg * Math.PI) / 180), r * Math.sin((deg * Math.PI) / 180)),
  );
}

/** A fastener seen on its head at real size, with its drive where that is a cross or a hexagon; middle at 0, 0. */
export function headView(type: FastenerType): { readonly marks: readonly Mark[]; readonly halfMm: number } {
  const halfMm = Math.max(type.head_diameter_mm ?? type.diameter_mm, type.diameter_mm) / 2;
  const ring = (radiusMm: number, fill: "paper" | "tint" | null): Mark => ({
    kind: "circle",
    at: at(0, 0),
    radiusMm,
    stroke: PEN,
    fill,
    layer: "BORDER",
  });
  const across = /hexagon\D*([\d.]+)\s*mm/u.exec(type.drive)?.[1];
  const isHexagon = across !== undefined;
  const flats = Number(across ?? 0);
  const outer = isHexagon && flats / Math.sqrt(3) >= halfMm - 0.4 ? [] : [ring(halfMm, "paper")];
  const hole = ["nut", "t-nut", "washer"].includes(type.kind) ? [ring(type.diameter_mm / 2, "paper")] : [];
  const hex: Mark[] = isHexagon ? [polygon(hexagon(flats), "tint")] : [];
  const arm = Math.min(halfMm * 0.55, type.diameter_mm * 0.7);
  const bar = arm * 0.28;
  const cross: Mark[] = /cross|pz|ph/iu.test(type.drive)
    ? [
        rect(box(-arm, -bar, 2 * arm, 2 * bar), null, "ink"),
        rect(box(-bar, -arm, 2 * bar, 2 * arm), null, "ink"),
      ]
    : [];
  return {
    marks: [...outer, ...hex, ...hole, ...cross],
    halfMm: Math.max(halfMm, isHexagon ? flats / Math.sqrt(3) : 0),
  };
}
