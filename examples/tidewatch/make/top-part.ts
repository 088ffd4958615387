import { boxOf } from "@pinwright/kernel";
import { onPlayfield, rows, type Topic } from "./author.ts";
import { outlineAbout, type Shape } from "./shape.ts";

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
  return {
    tables: {
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
    outlines: new Map(placed.map((part) => [part.file, outlineAbout([part.x, part.y], part.shape)])),
  };
}
