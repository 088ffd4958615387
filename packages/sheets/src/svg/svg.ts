import { codeBoxes, codeSquares } from "../compose/code.ts";
import { INK_COLOURS } from "../compose/colours.ts";
import { LINE } from "../compose/draw.ts";
import { hatchLines } from "../compose/hatch.ts";
import type { PlacedLeaf } from "../compose/leaves.ts";
import type { Ink, Leaf, Mark, Page, PagePoint, Stroke, TextMark } from "../compose/mark.ts";
import { emMm, type FontName, runsOf, textWidthMm } from "../compose/text.ts";

const FAMILIES: Readonly<Record<FontName, string>> = {
  latin: `font-family="IBM Plex Sans" font-weight="400"`,
  latinBold: `font-family="IBM Plex Sans" font-weight="600"`,
  cjk: `font-family="Noto Sans SC" font-weight="400"`,
};

const escapes: Readonly<Record<string, string>> = { "&": "&amp;", "<": "&lt;", ">": "&gt;", '"': "&quot;" };
const escaped = (text: string): string => text.replace(/[&<>"]/g, (c) => escapes[c] ?? c);

/** Millimetres to a micrometre, without trailing noughts. */
const n = (mm: number): string => String(Math.round(mm * 1000) / 1000 + 0);

const points = (list: readonly PagePoint[]): string => list.map((p) => `${n(p.xMm)},${n(p.yMm)}`).join(" ");

function strokeOf(stroke: Stroke | null): string {
  if (stroke === null) return ` stroke="none"`;
  const dash = stroke.dashMm === undefined ? "" : ` stroke-dasharray="${stroke.dashMm.map(n).join(" ")}"`;
  return ` stroke="${INK_COLOURS[stroke.ink]}" stroke-width="${n(stroke.widthMm)}"${dash}`;
}

const fillOf = (fill: Ink | null): string => ` fill="${fill === null ? "none" : INK_COLOURS[fill]}"`;

/** Start of a text's baseline relative to its anchor. */
function startMm(mark: TextMark): number {
  if (mark.anchor === "start") return 0;
  const width = textWidthMm(mark.text, mark.heightMm, mark.weight);
  return mark.anchor === "middle" ? -width / 2 : -width;
}

/** `textLength` holds a text to the width that it was set with, whatever font the reader has. */
function textSvg(mark: TextMark): string {
  const turn =
    mark.turnDeg === 0 ? "" : ` transform="rotate(${n(-mark.turnDeg)} ${n(mark.at.xMm)} ${n(mark.at.yMm)})"`;
  let x = mark.at.xMm + startMm(mark);
  let out = "";
  for (const run of runsOf(mark.text, mark.heightMm, mark.weight)) {
    if (run.text.trim() !== "") {
      out += `<text x="${n(x)}" y="${n(mark.at.yMm)}" font-size="${n(emMm(mark.heightMm))}" ${FAMILIES[run.font]}${fillOf(mark.ink)} textLength="${n(run.widthMm)}" lengthAdjust="spacingAndGlyphs"${turn}>${escaped(run.text)}</text>\n`;
    }
    x += run.widthMm;
  }
  return out;
}

function leafSvg(leaf: Leaf): string {
  switch (leaf.kind) {
    case "line":
      return `<line x1="${n(leaf.from.xMm)}" y1="${n(leaf.from.yMm)}" x2="${n(leaf.to.xMm)}" y2="${n(leaf.to.yMm)}"${strokeOf(leaf.stroke)}/>\n`;
    case "polyline":
      return `<polyline points="${points(leaf.points)}" fill="none"${strokeOf(leaf.stroke)}/>\n`;
    case "polygon": {
      const outline = `<polygon points="${points(leaf.points)}"${fillOf(leaf.fill)}${strokeOf(leaf.stroke)}/>\n`;
      if (leaf.hatchMm === undefined) return outline;
      const pen = strokeOf({ ink: leaf.stroke?.ink ?? "ink", widthMm: LINE.hair });
      const lines = hatchLines(leaf.points, leaf.hatchMm);
      return `${outline}<path d="${lines.map(([a, b]) => `M${points([a])}L${points([b])}`).join("")}"${pen}/>\n`;
    }
    case "area":
      return `<path d="${leaf.rings.map((ring) => `M${points(ring)}z`).join("")}"${fillOf(leaf.fill)}/>\n`;
    case "circle":
      return `<circle cx="${n(leaf.at.xMm)}" cy="${n(leaf.at.yMm)}" r="${n(leaf.radiusMm)}"${fillOf(leaf.fill)}${strokeOf(leaf.stroke)}/>\n`;
    case "arc":
      return `<path d="${arcPath(leaf.at, leaf.radiusMm, leaf.fromDeg, leaf.toDeg)}" fill="none"${strokeOf(leaf.stroke)}/>\n`;
    case "rect":
      return `<rect x="${n(leaf.box.xMm)}" y="${n(leaf.box.yMm)}" width="${n(leaf.box.widthMm)}" height="${n(leaf.box.heightMm)}"${fillOf(leaf.fill)}${strokeOf(leaf.stroke)}/>\n`;
    case "text":
      return textSvg(leaf);
    case "code": {
      const path = codeBoxes(codeSquares(leaf.text), leaf.at, leaf.sizeMm).map(
        (b) => `M${n(b.xMm)} ${n(b.yMm)}h${n(b.widthMm)}v${n(b.heightMm)}h${n(-b.widthMm)}z`,
      );
      return `<path d="${path.join("")}" fill="${INK_COLOURS.ink}" shape-rendering="crispEdges"/>\n`;
    }
  }
}

/** Path of an arc, anticlockwise as the reader sees it, in the page's coordinates with y down. */
function arcPath(at: PagePoint, radiusMm: number, fromDeg: number, toDeg: number): string {
  const end = (deg: number): string => {
    const angle = (deg * Math.PI) / 180;
    return `${n(at.xMm + radiusMm * Math.cos(angle))} ${n(at.yMm - radiusMm * Math.sin(angle))}`;
  };
  const large = Math.abs(toDeg - fromDeg) > 180 ? 1 : 0;
  return `M${end(fromDeg)}A${n(radiusMm)} ${n(radiusMm)} 0 ${large} 0 ${end(toDeg)}`;
}

/** One page as a stand-alone SVG in true size. Pure: the same page gives the same bytes. */
export function pageSvg(page: Page, title: string): string {
  let clips = 0;
  const out: string[] = [];
  const walk = (marks: readonly Mark[]): void => {
    for (const mark of marks) {
      if (mark.kind !== "group") {
        out.push(leafSvg(mark));
        continue;
      }
      if (mark.clip !== null) {
        const id = `c${++clips}`;
        const c = mark.clip;
        out.push(
          `<clipPath id="${id}"><rect x="${n(c.xMm)}" y="${n(c.yMm)}" width="${n(c.widthMm)}" height="${n(c.heightMm)}"/></clipPath>\n<g clip-path="url(#${id})">\n`,
        );
      }
      const still = mark.dxMm === 0 && mark.dyMm === 0;
      if (!still) out.push(`<g transform="translate(${n(mark.dxMm)} ${n(mark.dyMm)})">\n`);
      walk(mark.marks);
      if (!still) out.push("</g>\n");
      if (mark.clip !== null) out.push("</g>\n");
    }
  };
  walk(page.marks);
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${n(page.widthMm)}mm" height="${n(page.heightMm)}mm" viewBox="0 0 ${n(page.widthMm)} ${n(page.heightMm)}" style="font-kerning:none;font-variant-ligatures:none">\n`,
    `<title>${escaped(title)}</title>\n`,
    `<rect width="100%" height="100%" fill="${INK_COLOURS.paper}"/>\n`,
    ...out,
    "</svg>\n",
  ].join("");
}

/** How marks of one side of a comparison are drawn: in one colour, lines dashed or full, areas only tinted. */
export interface OverlayPen {
  readonly colour: string;
  readonly dashMm: readonly number[] | null;
  /** Width that lines have at least: what differs must be seen on a large drawing. */
  readonly leastMm: number;
}

/** Pulls what a mark is drawn with to a pen's one colour. Paper covers nothing. */
function penned(svg: string, pen: OverlayPen): string {
  const dash = pen.dashMm === null ? "" : ` stroke-dasharray="${pen.dashMm.map(n).join(" ")}"`;
  return svg
    .replace(/ stroke-dasharray="[^"]*"/gu, "")
    .replace(/ stroke="#[^"]*" stroke-width="([^"]*)"/gu, (_, width: string) => {
      const mm = Math.max(pen.leastMm, Number(width));
      return ` stroke="${pen.colour}" stroke-width="${n(mm)}"${dash}`;
    })
    .replaceAll(` fill="${INK_COLOURS.paper}"`, ` fill="none"`)
    .replace(/^<text(.*?) fill="#[^"]*"/gmu, (_, head: string) => `<text${head} fill="${pen.colour}"`)
    .replace(
      /^<(?!text)(.*?) fill="#[^"]*"/gmu,
      (_, head: string) => `<${head} fill="${pen.colour}" fill-opacity="0.2"`,
    );
}

/**
 * Placed marks as the inside of an SVG in millimetres, in one pen. What their windows cut off is not drawn.
 * @param prefix begins the ids of windows, so that several such pieces can stand in one document
 */
export function overlaySvg(placed: readonly PlacedLeaf[], pen: OverlayPen, prefix: string): string {
  const out: string[] = [];
  const windows = new Map<string, string>();
  for (const { leaf, clip } of placed) {
    const svg = penned(leafSvg(leaf), pen);
    if (clip === null) {
      out.push(svg);
      continue;
    }
    const rect = `<rect x="${n(clip.xMm)}" y="${n(clip.yMm)}" width="${n(clip.widthMm)}" height="${n(clip.heightMm)}"/>`;
    const id = windows.get(rect) ?? `${prefix}${windows.size + 1}`;
    if (!windows.has(rect)) out.push(`<clipPath id="${id}">${rect}</clipPath>\n`);
    windows.set(rect, id);
    out.push(`<g clip-path="url(#${id})">${svg}</g>\n`);
  }
  return out.join("");
}
