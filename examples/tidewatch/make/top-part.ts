import { boxOf, differenceRings, signedArea } from "@pinwright/kernel";
import { onPlayfield, rows, type Topic } from "./author.ts";
import { type Bodied, type Body, bodiesOf } from "./body-kind.ts";
import { outlineAbout, type Shape, strip, type Xy } from "./shape.ts";

/** A part on the upper side of the playfield that carries no wire: a rail, guide, rubber, plastic or ramp. */
export interface TopPart {
  /** What follows `tp.`. */
  readonly id: string;
  readonly label: string;
  readonly label_zh: string;
  readonly shape: Shape;
  /** Height of its lower edge above the playing surface, and of the part itself. */
  readonly z: number;
  readonly height: number;
  /** Wires pass under it along these lines, through notches of its lower edge. */
  readonly notches?: readonly (readonly Xy[])[];
  /** Room within it, up to a height. */
  readonly chamber?: { readonly shape: Shape; readonly height: number };
  /** Its fasteners bear on plastic. */
  readonly plastic?: true;
}

const NOTCH_MM = { width: 9, height: 6 } as const;

/** Pieces of less than this are shavings, mm². */
const SHAVING_MM2 = 4;

/** What a part with notches or a chamber is made of, in layers from below; nothing for a plain one. */
function layers({ shape, height, notches = [], chamber }: TopPart, [x, y]: Xy): readonly Body[] {
  if (notches.length === 0 && chamber === undefined) return [];
  const grooves = notches.map((line) => strip(NOTCH_MM.width, ...line));
  const chambers = chamber === undefined ? [] : [chamber.shape];
  const cutAt = [
    { from: 0, to: NOTCH_MM.height, cuts: [...grooves, ...chambers] },
    ...(chamber === undefined ? [] : [{ from: NOTCH_MM.height, to: chamber.height, cuts: chambers }]),
    { from: chamber?.height ?? NOTCH_MM.height, to: height, cuts: [] },
  ];
  return cutAt.flatMap(({ from, to, cuts }, layer) => {
    const rings = cuts.length === 0 ? [shape] : differenceRings([shape], cuts);
    const outer = rings.filter((ring) => signedArea(ring) > SHAVING_MM2);
    const holes = rings.filter((ring) => signedArea(ring) < 0);
    if (holes.length > 0)
      throw new Error("A chamber or notch has to reach the edge or the part's lower side.");
    return outer.map(
      (ring, i): Body => ({
        id: `layer-${layer + 1}-${i + 1}`,
        label: "layer",
        label_zh: "层",
        shape: ring.map((p) => ({ xMm: p.xMm - x, yMm: p.yMm - y })),
        heights: [from, to],
      }),
    );
  });
}

/** Each part is the only one of its type: its outline is its drawing. */
export function topParts(parts: readonly TopPart[]): Topic {
  const placed = parts.map((part) => {
    const extent = boxOf(part.shape);
    if (extent === null) throw new Error(`${part.id} has no shape.`);
    const x = Math.round((extent.minXMm + extent.maxXMm) / 2);
    const y = Math.round((extent.minYMm + extent.maxYMm) / 2);
    return {
      ...part,
      x,
      y,
      width: Math.round(extent.maxXMm - extent.minXMm) || 1,
      depth: Math.round(extent.maxYMm - extent.minYMm) || 1,
      file: `top-${part.id}.svg`,
    };
  });
  const solid = bodiesOf(
    placed.flatMap((part): Bodied[] => {
      const bodies = layers(part, [part.x, part.y]);
      return bodies.length === 0 ? [] : [{ type: `dt.top-${part.id}`, bodies }];
    }),
  );
  return {
    tables: {
      ...solid.tables,
      device_types: rows(
        "device_types",
        placed.map((part) => ({
          id: `dt.top-${part.id}`,
          label: part.label,
          label_zh: part.label_zh,
          class: "other",
          letter: "",
          outline: part.file,
          width_mm: part.width,
          depth_mm: part.depth,
          height_mm: part.height,
          plastic: part.plastic ?? false,
        })),
      ),
      devices: rows(
        "devices",
        placed.map((part) => ({
          id: `tp.${part.id}`,
          label: part.label,
          label_zh: part.label_zh,
          type: `dt.top-${part.id}`,
          ...onPlayfield("top", part.x, part.y),
          z_mm: part.z,
        })),
      ),
    },
    outlines: new Map([
      ...placed.map((part) => [part.file, outlineAbout([part.x, part.y], part.shape)] as const),
      ...(solid.outlines ?? []),
    ]),
  };
}
