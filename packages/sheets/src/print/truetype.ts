/** Tables that a font inside a PDF needs besides those written anew here (PDF 1.7, 9.9). */
const COPIED = ["cvt ", "fpgm", "prep"] as const;

/** Flags of a component of a composite glyph (OpenType, `glyf`). */
const COMPONENT = { wordArguments: 0x1, scale: 0x8, more: 0x20, scaleXY: 0x40, matrix: 0x80 } as const;

/** A TrueType font file with its tables found, from which subsets are cut. */
export class TrueType {
  readonly #file: Buffer;
  readonly #tables = new Map<string, Buffer>();
  readonly #longOffsets: boolean;
  readonly #metrics: number;

  /** @throws Error when a table that every TrueType font has is missing */
  constructor(file: Buffer) {
    this.#file = file;
    const count = file.readUInt16BE(4);
    for (let i = 0; i < count; i++) {
      const entry = 12 + 16 * i;
      const offset = file.readUInt32BE(entry + 8);
      const tag = file.toString("latin1", entry, entry + 4);
      this.#tables.set(tag, file.subarray(offset, offset + file.readUInt32BE(entry + 12)));
    }
    this.#longOffsets = this.#table("head").readInt16BE(50) === 1;
    this.#metrics = this.#table("hhea").readUInt16BE(34);
  }

  #table(tag: string): Buffer {
    const table = this.#tables.get(tag);
    if (table === undefined) throw new Error(`The font has no table ${tag}: a TrueType font was expected.`);
    return table;
  }

  /** Advance of a glyph in units of the em. */
  advanceOf(glyph: number): number {
    return this.#table("hmtx").readUInt16BE(4 * Math.min(glyph, this.#metrics - 1));
  }

  #bearingOf(glyph: number): number {
    const at = glyph < this.#metrics ? 4 * glyph + 2 : 4 * this.#metrics + 2 * (glyph - this.#metrics);
    return this.#table("hmtx").readInt16BE(at);
  }

  #outlineOf(glyph: number): Buffer {
    const loca = this.#table("loca");
    const offset = (n: number): number =>
      this.#longOffsets ? loca.readUInt32BE(4 * n) : 2 * loca.readUInt16BE(2 * n);
    return this.#table("glyf").subarray(offset(glyph), offset(glyph + 1));
  }

  /**
   * A font with some glyphs only, numbered as they are listed; parts of composite glyphs are added behind them.
   * For a PDF: it has outlines and metrics and no names or characters. Layout: OpenType 1.9.
   * @param glyphs the first is glyph 0, which stands for what is missing
   */
  subset(glyphs: readonly number[]): Buffer {
    const list = [...glyphs];
    const numbers = new Map(list.map((g, i) => [g, i]));
    const numberOf = (glyph: number): number => {
      const known = numbers.get(glyph);
      if (known !== undefined) return known;
      numbers.set(glyph, list.length);
      list.push(glyph);
      return list.length - 1;
    };
    const outlines: Buffer[] = [];
    const offsets = [0];
    let length = 0;
    // The list grows while it is walked: by the parts of composite glyphs.
    for (let i = 0; i < list.length; i++) {
      const outline = renumbered(this.#outlineOf(list[i] ?? 0), numberOf);
      const padded = Buffer.alloc((outline.length + 3) & ~3);
      outline.copy(padded);
      outlines.push(padded);
      length += padded.length;
      offsets.push(length);
    }
    const loca = Buffer.alloc(4 * offsets.length);
    offsets.forEach((offset, i) => {
      loca.writeUInt32BE(offset, 4 * i);
    });
    const hmtx = Buffer.alloc(4 * list.length);
    list.forEach((glyph, i) => {
      hmtx.writeUInt16BE(this.advanceOf(glyph), 4 * i);
      hmtx.writeInt16BE(this.#bearingOf(glyph), 4 * i + 2);
    });
    const head = Buffer.from(this.#table("head"));
    head.writeInt16BE(1, 50);
    const hhea = Buffer.from(this.#table("hhea"));
    hhea.writeUInt16BE(list.length, 34);
    const maxp = Buffer.from(this.#table("maxp"));
    maxp.writeUInt16BE(list.length, 4);
    const tables: [string, Buffer][] = [
      ["glyf", Buffer.concat(outlines)],
      ["head", head],
      ["hhea", hhea],
      ["hmtx", hmtx],
      ["loca", loca],
      ["maxp", maxp],
    ];
    for (const tag of COPIED) {
      const table = this.#tables.get(tag);
      if (table !== undefined) tables.push([tag, table]);
    }
    return fontFile(this.#file.readUInt32BE(0), tables);
  }
}

/** A glyph's outline with the numbers that its parts have in the subset. */
function renumbered(outline: Buffer, numberOf: (glyph: number) => number): Buffer {
  if (outline.length === 0 || outline.readInt16BE(0) >= 0) return outline;
  const own = Buffer.from(outline);
  let at = 10;
  for (;;) {
    const flags = own.readUInt16BE(at);
    own.writeUInt16BE(numberOf(own.readUInt16BE(at + 2)), at + 2);
    if ((flags & COMPONENT.more) === 0) return own;
    at += 4 + ((flags & COMPONENT.wordArguments) === 0 ? 2 : 4);
    if ((flags & COMPONENT.scale) !== 0) at += 2;
    else if ((flags & COMPONENT.scaleXY) !== 0) at += 4;
    else if ((flags & COMPONENT.matrix) !== 0) at += 8;
  }
}

/** Sum of a table's 32-bit words, without carry. */
function checksum(table: Buffer): number {
  let sum = 0;
  for (let i = 0; i < table.length; i += 4) {
    for (let k = 0; k < 4; k++) sum += (table[i + k] ?? 0) * 2 ** (24 - 8 * k);
    sum %= 2 ** 32;
  }
  return sum;
}

/** Tables put together to a font file, in the order of their tags. */
function fontFile(version: number, unsorted: readonly (readonly [string, Buffer])[]): Buffer {
  const tables = [...unsorted].sort(([a], [b]) => (a < b ? -1 : 1));
  const power = Math.floor(Math.log2(tables.length));
  const directory = Buffer.alloc(12 + 16 * tables.length);
  directory.writeUInt32BE(version, 0);
  directory.writeUInt16BE(tables.length, 4);
  directory.writeUInt16BE(16 * 2 ** power, 6);
  directory.writeUInt16BE(power, 8);
  directory.writeUInt16BE(16 * tables.length - 16 * 2 ** power, 10);
  const parts: Buffer[] = [directory];
  let offset = directory.length;
  tables.forEach(([tag, table], i) => {
    const entry = 12 + 16 * i;
    directory.write(tag, entry, "latin1");
    directory.writeUInt32BE(checksum(table), entry + 4);
    directory.writeUInt32BE(offset, entry + 8);
    directory.writeUInt32BE(table.length, entry + 12);
    const padding = (4 - (table.length % 4)) % 4;
    parts.push(table, Buffer.alloc(padding));
    offset += table.length + padding;
  });
  return Buffer.concat(parts);
}
