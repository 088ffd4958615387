import PDFDocument from "pdfkit";
import { type CodeSquares, codeBoxes, codeSquares } from "../compose/code.ts";
import { INK_COLOURS } from "../compose/colours.ts";
import type { SheetDocument } from "../compose/document.ts";
import { LINE } from "../compose/draw.ts";
import { hatchLines } from "../compose/hatch.ts";
import type {
  ArcMark,
  CodeMark,
  Ink,
  Leaf,
  Mark,
  PolygonMark,
  PolylineMark,
  Stroke,
  TextMark,
} from "../compose/mark.ts";
import { emMm, type FontName, runsOf, textWidthMm } from "../compose/text.ts";
import { plainFont } from "./plain-font.ts";

const POINTS_A_MM = 72 / 25.4;

/** Longest side of a page without user units: 14 400 points (PDF 1.7, annex C). */
export const LONGEST_PDF_MM = 5080;

type Pdf = PDFKit.PDFDocument;

/** What pen and brush are set to on the page. */
interface Setting {
  readonly widthMm: number | undefined;
  readonly ink: Ink | undefined;
  readonly dashMm: readonly number[] | undefined;
  readonly fill: Ink | undefined;
}

const UNSET: Setting = { widthMm: undefined, ink: undefined, dashMm: undefined, fill: undefined };

interface Target {
  readonly pdf: Pdf;
  /** Fonts that the document knows by now. */
  readonly fonts: Set<FontName>;
  /** Codes worked out for pages before: all pages of a sheet carry the same one. */
  readonly codes: Map<string, CodeSquares>;
  set: Setting;
}

/** Sets the pen, leaving out what it is set to already: half of a page would be repeated settings else. */
function pen(target: Target, stroke: Stroke): void {
  const { pdf, set } = target;
  if (set.widthMm !== stroke.widthMm) pdf.lineWidth(stroke.widthMm);
  if (set.ink !== stroke.ink) pdf.strokeColor(INK_COLOURS[stroke.ink]);
  if (set.dashMm !== stroke.dashMm) {
    const [dash, space] = stroke.dashMm ?? [];
    if (dash === undefined) pdf.undash();
    else pdf.dash(dash, { space: space ?? dash });
  }
  target.set = { ...set, widthMm: stroke.widthMm, ink: stroke.ink, dashMm: stroke.dashMm };
}

function brush(target: Target, fill: Ink): void {
  if (target.set.fill !== fill) target.pdf.fillColor(INK_COLOURS[fill]);
  target.set = { ...target.set, fill };
}

/** Paints the path that was just drawn. */
function paint(target: Target, stroke: Stroke | null, fill: Ink | null): void {
  const { pdf } = target;
  if (stroke !== null) pen(target, stroke);
  if (fill !== null) brush(target, fill);
  if (stroke !== null && fill !== null) pdf.fillAndStroke();
  else if (fill !== null) pdf.fill();
  else pdf.stroke();
}

/** Fonts are handed over when the first text needs them: a sheet without Chinese carries no Chinese font. */
function choose(target: Target, name: FontName): void {
  if (!target.fonts.has(name)) {
    target.fonts.add(name);
    // The library takes a font that is already open (anything with `layout`), which its types leave out.
    target.pdf.registerFont(name, plainFont(name) as unknown as Uint8Array);
  }
  target.pdf.font(name);
}

function text(target: Target, mark: TextMark): void {
  const { pdf } = target;
  const width = textWidthMm(mark.text, mark.heightMm, mark.weight);
  let x = mark.at.xMm - (mark.anchor === "start" ? 0 : mark.anchor === "middle" ? width / 2 : width);
  brush(target, mark.ink);
  pdf.fontSize(emMm(mark.heightMm));
  if (mark.turnDeg !== 0) pdf.save().rotate(-mark.turnDeg, { origin: [mark.at.xMm, mark.at.yMm] });
  for (const run of runsOf(mark.text, mark.heightMm, mark.weight)) {
    if (run.text.trim() !== "") {
      choose(target, run.font);
      pdf.text(run.text, x, mark.at.yMm, { lineBreak: false, baseline: "alphabetic" });
    }
    x += run.widthMm;
  }
  if (mark.turnDeg !== 0) pdf.restore();
}

/** Arc as cubic Bézier curves of at most 45°, within 1e-5 of the radius of a true arc. */
function arc(target: Target, mark: ArcMark): void {
  const { pdf } = target;
  const { radiusMm, fromDeg, toDeg } = mark;
  const { xMm, yMm } = mark.at;
  const parts = Math.max(1, Math.ceil(Math.abs(toDeg - fromDeg) / 45));
  const step = (((toDeg - fromDeg) / parts) * Math.PI) / 180;
  const k = (4 / 3) * Math.tan(step / 4);
  const on = (a: number): [number, number] => [xMm + radiusMm * Math.cos(a), yMm - radiusMm * Math.sin(a)];
  const tangent = (a: number): [number, number] => [-radiusMm * Math.sin(a) * k, -radiusMm * Math.cos(a) * k];
  let angle = (fromDeg * Math.PI) / 180;
  pdf.moveTo(...on(angle));
  for (let i = 0; i < parts; i++) {
    const [x0, y0] = on(angle);
    const [dx0, dy0] = tangent(angle);
    angle += step;
    const [x1, y1] = on(angle);
    const [dx1, dy1] = tangent(angle);
    pdf.bezierCurveTo(x0 + dx0, y0 + dy0, x1 - dx1, y1 - dy1, x1, y1);
  }
  paint(target, mark.stroke, null);
}

function outline(pdf: Pdf, mark: PolylineMark | PolygonMark): void {
  mark.points.forEach((p, i) => {
    if (i === 0) pdf.moveTo(p.xMm, p.yMm);
    else pdf.lineTo(p.xMm, p.yMm);
  });
}

function polygon(target: Target, mark: PolygonMark): void {
  const { pdf } = target;
  outline(pdf, mark);
  pdf.closePath();
  paint(target, mark.stroke, mark.fill);
  if (mark.hatchMm === undefined) return;
  for (const [a, b] of hatchLines(mark.points, mark.hatchMm)) pdf.moveTo(a.xMm, a.yMm).lineTo(b.xMm, b.yMm);
  paint(target, { ink: mark.stroke?.ink ?? "ink", widthMm: LINE.hair }, null);
}

function code(target: Target, mark: CodeMark): void {
  const { pdf, codes } = target;
  const squares = codes.get(mark.text) ?? codeSquares(mark.text);
  codes.set(mark.text, squares);
  for (const b of codeBoxes(squares, mark.at, mark.sizeMm)) pdf.rect(b.xMm, b.yMm, b.widthMm, b.heightMm);
  paint(target, null, "ink");
}

function leaf(target: Target, mark: Leaf): void {
  const { pdf } = target;
  switch (mark.kind) {
    case "line":
      pdf.moveTo(mark.from.xMm, mark.from.yMm).lineTo(mark.to.xMm, mark.to.yMm);
      paint(target, mark.stroke, null);
      break;
    case "polyline":
      outline(pdf, mark);
      paint(target, mark.stroke, null);
      break;
    case "polygon":
      polygon(target, mark);
      break;
    case "circle":
      pdf.circle(mark.at.xMm, mark.at.yMm, mark.radiusMm);
      paint(target, mark.stroke, mark.fill);
      break;
    case "arc":
      arc(target, mark);
      break;
    case "rect":
      pdf.rect(mark.box.xMm, mark.box.yMm, mark.box.widthMm, mark.box.heightMm);
      paint(target, mark.stroke, mark.fill);
      break;
    case "text":
      text(target, mark);
      break;
    case "code":
      code(target, mark);
      break;
  }
}

function draw(target: Target, marks: readonly Mark[]): void {
  for (const mark of marks) {
    if (mark.kind !== "group") {
      leaf(target, mark);
      continue;
    }
    const { pdf, set } = target;
    pdf.save();
    if (mark.clip !== null) {
      pdf.rect(mark.clip.xMm, mark.clip.yMm, mark.clip.widthMm, mark.clip.heightMm).clip();
    }
    if (mark.dxMm !== 0 || mark.dyMm !== 0) pdf.translate(mark.dxMm, mark.dyMm);
    draw(target, mark.marks);
    pdf.restore();
    target.set = set;
  }
}

/**
 * A sheet as PDF in true size. The date of issue is the only time in it, so the same sheet gives the same bytes.
 * @throws Error when a page is longer than PDF allows
 */
export function renderPdf(document: SheetDocument): Promise<Uint8Array> {
  for (const { widthMm, heightMm } of document.pages) {
    if (Math.max(widthMm, heightMm) > LONGEST_PDF_MM)
      throw new Error(
        `Sheet ${document.id}: a page of ${widthMm} × ${heightMm} mm does not fit PDF, whose longest side is ${LONGEST_PDF_MM} mm. Print its tiles, or take the SVG or DXF.`,
      );
  }
  const issued = new Date(`${document.identity.date}T00:00:00Z`);
  const pdf = new PDFDocument({
    autoFirstPage: false,
    margin: 0,
    // No standard font: reading its metrics takes longer than writing a list.
    font: "",
    info: {
      Title: document.title,
      Author: document.identity.owner,
      Subject: document.identity.number,
      Keywords: document.code,
      Creator: "Pinwright",
      Producer: "Pinwright",
      CreationDate: issued,
      ModDate: issued,
    },
  });
  const chunks: Uint8Array[] = [];
  const done = new Promise<Uint8Array>((resolve, reject) => {
    pdf.on("data", (chunk: Uint8Array) => chunks.push(chunk));
    pdf.on("end", () => resolve(new Uint8Array(Buffer.concat(chunks))));
    pdf.on("error", reject);
  });
  const target: Target = { pdf, fonts: new Set(), codes: new Map(), set: UNSET };
  for (const page of document.pages) {
    pdf.addPage({ size: [page.widthMm * POINTS_A_MM, page.heightMm * POINTS_A_MM], margin: 0 });
    pdf.save().transform(POINTS_A_MM, 0, 0, POINTS_A_MM, 0, 0);
    target.set = UNSET;
    pdf.lineCap("round").lineJoin("round");
    draw(target, page.marks);
    pdf.restore();
  }
  pdf.end();
  return done;
}
