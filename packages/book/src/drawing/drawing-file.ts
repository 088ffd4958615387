import { LIMITS } from "../limits.ts";

/** Forms of the files that parts are made from. */
export const DRAWING_FORMS = ["pdf", "dxf", "svg", "step"] as const;
export type DrawingForm = (typeof DRAWING_FORMS)[number];

const ENDINGS: Readonly<Record<string, DrawingForm>> = {
  pdf: "pdf",
  dxf: "dxf",
  svg: "svg",
  step: "step",
  stp: "step",
};

/** Words, each of letters and digits, joined by single dots or hyphens, and an ending. */
const NAME = /^[a-z0-9]+(?:[.-][a-z0-9]+)*$/i;

/** Names that Windows keeps for devices, whatever their ending. */
const DEVICE = /^(?:con|prn|aux|nul|com[0-9]|lpt[0-9])$/i;

const NAME_CHARS = 100;

/** The form that the ending of a file's name says; null when it is none of a drawing. */
export function drawingForm(name: string): DrawingForm | null {
  const ending = /\.([a-z]+)$/i.exec(name)?.[1]?.toLowerCase() ?? "";
  return Object.hasOwn(ENDINGS, ending) ? (ENDINGS[ending] ?? null) : null;
}

/**
 * Whether a text can be the name of a drawing: letters a to z, digits, dots and hyphens, no path, no device of any
 * system, ending in .pdf, .dxf, .svg, .step or .stp. Such a name is the same file on every system.
 */
export const isDrawingName = (name: string): boolean =>
  name.length <= NAME_CHARS &&
  NAME.test(name) &&
  !DEVICE.test(name.split(".")[0] ?? "") &&
  drawingForm(name) !== null;

/** The nearest name that a drawing can have: `Bracket (rev. B).PDF` is `Bracket-rev-B.pdf`; null when nothing is left. */
export function safeDrawingName(name: string): string | null {
  const form = drawingForm(name);
  if (form === null) return null;
  const at = name.lastIndexOf(".");
  const stem = name
    .slice(0, at)
    .normalize("NFKD")
    .replace(/\p{M}/gu, "")
    .replace(/[^a-z0-9.-]+/gi, "-")
    .replace(/[.-]*([.-])/g, "$1")
    .replace(/^[.-]+|[.-]+$/g, "")
    .slice(0, NAME_CHARS - 6)
    .replace(/[.-]+$/, "");
  const safe = `${stem}${name.slice(at).toLowerCase()}`;
  return isDrawingName(safe) ? safe : null;
}

/** What a file of each form begins with. */
const DRAWING_STARTS: Readonly<Record<DrawingForm, string>> = {
  pdf: "a PDF, which begins with `%PDF-` (ISO 32000-1, 7.5.2)",
  dxf: "a DXF as text, which begins with a section",
  svg: "an SVG, whose root is `svg`",
  step: "a STEP file, which begins with `ISO-10303-21;` (ISO 10303-21, 5.2)",
};

/** Where the root of an XML text begins, after what may stand before it; cut off: -1. */
function rootAt(text: string): number {
  for (let at = 0; ; ) {
    while (/\s/.test(text.charAt(at))) at++;
    const [open, close] = text.startsWith("<!--", at)
      ? ["<!--", "-->"]
      : text.startsWith("<?", at)
        ? ["<?", "?>"]
        : text.startsWith("<!DOCTYPE", at)
          ? ["<!DOCTYPE", ">"]
          : ["", ""];
    if (open === "") return at;
    const end = text.indexOf(close, at + open.length);
    if (end < 0) return -1;
    at = end + close.length;
  }
}

const STARTS: Readonly<Record<DrawingForm, (head: string) => boolean>> = {
  pdf: (head) => /^%PDF-\d/.test(head),
  // Comments of group 999 may stand before the first section.
  dxf: (head) => /^(?:\s*999[ \t]*\r?\n[^\n]*\n)*\s*0[ \t]*\r?\n\s*SECTION[ \t]*\r?\n/.test(head),
  svg: (head) => /^<(?:[A-Za-z][\w.-]*:)?svg[\s/>]/.test(head.slice(rootAt(head), rootAt(head) + 100)),
  step: (head) => /^\s*ISO-10303-21\s*;/.test(head),
};

/** Bytes at the head of a file that tell its form. */
const HEAD_BYTES = 16_384;

/**
 * What was expected of a file that cannot be kept as a drawing, in English; null when it can: its name is safe, it is
 * not empty nor beyond `LIMITS.drawingBytes`, and it begins as its ending says.
 */
export function drawingProblem(name: string, bytes: Uint8Array): string | null {
  const form = drawingForm(name);
  if (!isDrawingName(name) || form === null)
    return "a name of letters a to z, digits, dots and hyphens that ends in .pdf, .dxf, .svg, .step or .stp";
  if (bytes.length > LIMITS.drawingBytes) return `at most ${LIMITS.drawingBytes} bytes`;
  const head = String.fromCharCode(...bytes.subarray(0, HEAD_BYTES)).replace(/^\u00ef\u00bb\u00bf/, "");
  return STARTS[form](head) ? null : DRAWING_STARTS[form];
}
