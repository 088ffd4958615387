import { execFileSync } from "node:child_process";

/** A word of a PDF with its box on the page, in points. */
interface PdfWord {
  readonly text: string;
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly foot: number;
}

const PAGE = /<page width="([\d.]+)" height="([\d.]+)">(.*?)<\/page>/gsu;
const WORD = /<word xMin="(-?[\d.]+)" yMin="(-?[\d.]+)" xMax="(-?[\d.]+)" yMax="(-?[\d.]+)">(.*?)<\/word>/gu;

/** More than this is no rounding of widths. */
const HAIR_PT = 0.4;
/** Boxes are as high as the font's highest and lowest letters: lines that are set close share this much of them. */
const LETTERS = 0.3;

interface PdfPage {
  readonly widthPt: number;
  readonly heightPt: number;
  readonly words: readonly PdfWord[];
}

/** Words of a PDF by page, as poppler finds them. */
function wordsOfPdf(file: string): readonly PdfPage[] {
  const html = execFileSync("pdftotext", ["-bbox", file, "-"], { encoding: "utf8", maxBuffer: 1 << 29 });
  return [...html.matchAll(PAGE)].map(([, width = "", height = "", inner = ""]) => ({
    widthPt: Number(width),
    heightPt: Number(height),
    words: [...inner.matchAll(WORD)].map(([, left = "", top = "", right = "", foot = "", text = ""]) => ({
      text,
      left: Number(left),
      right: Number(right),
      top: Number(top),
      foot: Number(foot),
    })),
  }));
}

/** The height in which the letters of a word stand. */
function body({ top, foot }: PdfWord): readonly [number, number] {
  const cut = (foot - top) * LETTERS;
  return [top + cut, foot - cut];
}

/** Words of a PDF that touch another, and words that leave their page, a line for each. */
export function faultsOfWords(file: string): readonly string[] {
  return wordsOfPdf(file).flatMap(({ widthPt, heightPt, words }, i) => {
    const sorted = [...words].sort((a, b) => a.left - b.left);
    const out = sorted
      .filter((w) => w.left < 0 || w.top < 0 || w.right > widthPt || w.foot > heightPt)
      .map((w) => `page ${i + 1}: “${w.text}” leaves the page`);
    const touching = sorted.flatMap((a, n) => {
      const found: string[] = [];
      const [topA, footA] = body(a);
      for (let m = n + 1; m < sorted.length; m++) {
        const b = sorted[m];
        if (b === undefined || b.left >= a.right - HAIR_PT) break;
        const [topB, footB] = body(b);
        if (topA < footB && topB < footA) found.push(`page ${i + 1}: “${a.text}” and “${b.text}”`);
      }
      return found;
    });
    return [...out, ...touching];
  });
}
