import { boxOf } from "@pinwright/kernel";
import { plainDecimal } from "../read/plain-decimal.ts";
import type { Outline } from "./outline.ts";

/** Micrometres are finer than anything that is cut from such a drawing. */
const mm = (value: number): string => plainDecimal(Math.round(value * 1000) / 1000);

/** SVG points down, outlines point up: y changes its sign, and the view box follows. */
function writeSvg(outline: Outline): string {
  const box = boxOf(outline.rings.flat()) ?? { minXMm: 0, minYMm: 0, maxXMm: 0, maxYMm: 0 };
  // A view box that starts at (0, 0) would move the origin to the lower left corner of the page.
  const margin = box.minXMm === 0 && box.maxYMm === 0 ? 1 : 0;
  const [minX, minY] = [box.minXMm - margin, box.minYMm - margin];
  const [maxX, maxY] = [box.maxXMm + margin, box.maxYMm + margin];
  const [width, height] = [mm(maxX - minX), mm(maxY - minY)];
  const paths = outline.rings.map((ring) => {
    const corners = ring.map(({ xMm, yMm }) => `${mm(xMm)} ${mm(yMm === 0 ? 0 : -yMm)}`);
    return `M ${corners.join(" L ")} Z`;
  });
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${width}mm" height="${height}mm" viewBox="${mm(minX)} ${mm(maxY === 0 ? 0 : -maxY)} ${width} ${height}">`,
    `  <path fill-rule="evenodd" d="${paths.join(" ")}"/>`,
    "</svg>",
    "",
  ].join("\n");
}

/** DXF of release 12, which every program reads: closed polylines, millimetres. */
function writeDxf(outline: Outline): string {
  const lines: (string | number)[] = [
    ...[0, "SECTION", 2, "HEADER", 9, "$ACADVER", 1, "AC1009", 9, "$INSUNITS", 70, 4, 0, "ENDSEC"],
    ...[0, "SECTION", 2, "ENTITIES"],
  ];
  for (const ring of outline.rings) {
    lines.push(0, "POLYLINE", 8, "0", 66, 1, 70, 1, 10, "0", 20, "0", 30, "0");
    for (const { xMm, yMm } of ring) lines.push(0, "VERTEX", 8, "0", 10, mm(xMm), 20, mm(yMm), 30, "0");
    lines.push(0, "SEQEND", 8, "0");
  }
  lines.push(0, "ENDSEC", 0, "EOF");
  return `${lines.join("\n")}\n`;
}

/** The drawing of an outline: the file that it came from, or a new one in the format that the name ends with. */
export function writeOutline(name: string, outline: Outline): string {
  if (outline.source !== undefined) return outline.source;
  return name.toLowerCase().endsWith(".svg") ? writeSvg(outline) : writeDxf(outline);
}
