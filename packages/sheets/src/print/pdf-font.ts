import { createHash } from "node:crypto";
import type { FontName } from "../compose/text.ts";
import { fontFile, openFont } from "./fonts.ts";
import { type PdfFile, pack, type Reference } from "./pdf-file.ts";
import { TrueType } from "./truetype.ts";

/**
 * Characters that every Latin font program carries: a sheet that has no others, and that is nearly every one,
 * takes a program that was cut and packed once in the process.
 */
const USUAL = `${String.fromCharCode(...Array.from({ length: 95 }, (_, i) => 32 + i))}·×Ø²µ±°–—…№″′“”‘’≤≥→Ω`;

/** What does not change between the documents of a process. */
interface Shared {
  readonly name: FontName;
  readonly type: TrueType;
  readonly glyphOf: (codePoint: number) => number;
  readonly usual: string;
  readonly description: string;
  readonly postscriptName: string;
  readonly programs: Map<string, { readonly packed: Buffer; readonly length: number; readonly tag: string }>;
}

const shared = new Map<FontName, Shared>();

function sharedOf(name: FontName): Shared {
  const known = shared.get(name);
  if (known !== undefined) return known;
  const font = openFont(name);
  const glyphs = new Map<number, number>();
  const { minX, minY, maxX, maxY } = font.bbox;
  const own: Shared = {
    name,
    type: new TrueType(fontFile(name)),
    glyphOf: (codePoint) => {
      const before = glyphs.get(codePoint);
      if (before !== undefined) return before;
      const glyph = font.glyphForCodePoint(codePoint).id;
      glyphs.set(codePoint, glyph);
      return glyph;
    },
    usual: name === "cjk" ? "" : USUAL,
    // Flag 3: its characters are not those of the Latin character set of PDF alone (PDF 1.7, table 123).
    description: `/Flags 4/FontBBox[${minX} ${minY} ${maxX} ${maxY}]/ItalicAngle 0/Ascent ${font.ascent}/Descent ${font.descent}/CapHeight ${font.capHeight}/StemV ${name === "latinBold" ? 120 : 80}`,
    postscriptName: font.postscriptName ?? name,
    programs: new Map(),
  };
  shared.set(name, own);
  return own;
}

/** Six capital letters that name a subset (PDF 1.7, 9.6.4), drawn from its bytes. */
function subsetTag(program: Buffer): string {
  const hash = createHash("sha256").update(program).digest();
  return String.fromCharCode(...Array.from(hash.subarray(0, 6), (byte) => 65 + (byte % 26)));
}

const hex4 = (n: number): string => n.toString(16).padStart(4, "0");

/** A shipped font in one document: gives characters their codes and is written with the glyphs that were used. */
export class PdfFont {
  readonly #shared: Shared;
  readonly #glyphs: number[] = [0];
  readonly #codePoints: number[] = [0xfffd];
  readonly #codes = new Map<number, string>();

  constructor(name: FontName) {
    this.#shared = sharedOf(name);
    for (const char of this.#shared.usual) this.#codeOf(char.codePointAt(0) ?? 0);
  }

  #codeOf(codePoint: number): string {
    const known = this.#codes.get(codePoint);
    if (known !== undefined) return known;
    const code = hex4(this.#glyphs.length);
    this.#glyphs.push(this.#shared.glyphOf(codePoint));
    this.#codePoints.push(codePoint);
    this.#codes.set(codePoint, code);
    return code;
  }

  /** A text as the string that shows it, in hexadecimal: one glyph a character, no kerning, no ligatures. */
  encode(text: string): string {
    let codes = "";
    for (const char of text) codes += this.#codeOf(char.codePointAt(0) ?? 0);
    return codes;
  }

  /** The font program; the one that holds the usual characters alone is kept for other documents. */
  #program(): { readonly packed: Buffer; readonly length: number; readonly tag: string } {
    const { type, usual, programs } = this.#shared;
    const isUsual = usual !== "" && this.#glyphs.length === [...usual].length + 1;
    const known = isUsual ? programs.get(usual) : undefined;
    if (known !== undefined) return known;
    const bytes = type.subset(this.#glyphs);
    const program = { packed: pack(bytes), length: bytes.length, tag: subsetTag(bytes) };
    if (isUsual) programs.set(usual, program);
    return program;
  }

  /** What each code stands for, so that text can be searched and copied (PDF 1.7, 9.10.3). */
  #toUnicode(): Buffer {
    const rows = this.#codePoints.map((codePoint, i) => {
      const utf16 = Buffer.from(String.fromCodePoint(codePoint), "utf16le").swap16().toString("hex");
      return `<${hex4(i)}><${utf16}>`;
    });
    const blocks: string[] = [];
    for (let i = 0; i < rows.length; i += 100) {
      const block = rows.slice(i, i + 100);
      blocks.push(`${block.length} beginbfchar\n${block.join("\n")}\nendbfchar`);
    }
    return Buffer.from(
      `/CIDInit /ProcSet findresource begin\n12 dict begin\nbegincmap\n/CIDSystemInfo <</Registry (Adobe)/Ordering (UCS)/Supplement 0>> def\n/CMapName /Adobe-Identity-UCS def\n/CMapType 2 def\n1 begincodespacerange\n<0000><ffff>\nendcodespacerange\n${blocks.join("\n")}\nendcmap\nCMapName currentdict /CMap defineresource pop\nend\nend`,
    );
  }

  /** Writes the font into a file (PDF 1.7, 9.7): composite, codes of two bytes, codes are glyph numbers. */
  writeTo(file: PdfFile): Reference {
    const { type, description, postscriptName } = this.#shared;
    const { packed, length, tag } = this.#program();
    const name = `/${tag}+${postscriptName}`;
    const program = file.addPacked(packed, `/Length1 ${length}`);
    const descriptor = file.add(
      `<</Type/FontDescriptor/FontName${name}${description}/FontFile2 ${program}>>`,
    );
    const widths = this.#glyphs.map((g) => type.advanceOf(g)).join(" ");
    const descendant = file.add(
      `<</Type/Font/Subtype/CIDFontType2/BaseFont${name}/CIDSystemInfo<</Registry(Adobe)/Ordering(Identity)/Supplement 0>>/FontDescriptor ${descriptor}/W[0[${widths}]]/CIDToGIDMap/Identity>>`,
    );
    const unicode = file.addStream(this.#toUnicode());
    return file.add(
      `<</Type/Font/Subtype/Type0/BaseFont${name}/Encoding/Identity-H/DescendantFonts[${descendant}]/ToUnicode ${unicode}>>`,
    );
  }
}
