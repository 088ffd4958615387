/** Where a byte stream stops being UTF-8. */
export interface BadUtf8 {
  /** Bytes from the start of the file. */
  readonly offset: number;
  /** Line of the file, counted from 1. */
  readonly line: number;
  readonly byte: number;
}

/** Index of the first byte that is not part of well-formed UTF-8 (Unicode 15, table 3-7), or -1. */
function firstBadByte(bytes: Uint8Array): number {
  let i = 0;
  while (i < bytes.length) {
    const b = bytes[i] ?? 0;
    const more =
      b < 0x80 ? 0 : b >= 0xc2 && b < 0xe0 ? 1 : b >= 0xe0 && b < 0xf0 ? 2 : b >= 0xf0 && b < 0xf5 ? 3 : -1;
    if (more < 0) return i;
    for (let k = 1; k <= more; k++) {
      const next = bytes[i + k];
      const low = k > 1 ? 0x80 : b === 0xe0 ? 0xa0 : b === 0xf0 ? 0x90 : 0x80;
      const high = k > 1 ? 0xbf : b === 0xed ? 0x9f : b === 0xf4 ? 0x8f : 0xbf;
      if (next === undefined || next < low || next > high) return i;
    }
    i += more + 1;
  }
  return -1;
}

/** Bytes at the end that begin a character whose rest has not come yet. */
function unfinished(bytes: Uint8Array): number {
  for (let back = 1; back <= Math.min(3, bytes.length); back++) {
    const b = bytes[bytes.length - back] ?? 0;
    if (b >= 0xc0) return (b >= 0xf0 ? 4 : b >= 0xe0 ? 3 : 2) > back ? back : 0;
    if (b < 0x80) return 0;
  }
  return 0;
}

/** Strict UTF-8 decoding piece by piece that can say where the first bad byte is. */
export class Utf8Reader {
  readonly #decoder = new TextDecoder("utf-8", { fatal: true, ignoreBOM: true });
  #carry = new Uint8Array(0);
  #offset = 0;
  #line = 1;

  /** The text of the next piece, or where the stream stops being UTF-8. */
  push(piece: Uint8Array, last: boolean): string | BadUtf8 {
    const bytes = this.#carry.length === 0 ? piece : Buffer.concat([this.#carry, piece]);
    const keep = last ? 0 : unfinished(bytes);
    const whole = bytes.subarray(0, bytes.length - keep);
    try {
      const text = this.#decoder.decode(whole);
      for (let at = text.indexOf("\n"); at >= 0; at = text.indexOf("\n", at + 1)) this.#line++;
      this.#carry = Uint8Array.from(bytes.subarray(bytes.length - keep));
      this.#offset += whole.length;
      return text;
    } catch {
      const bad = Math.max(0, firstBadByte(whole));
      const lines = whole.subarray(0, bad).filter((b) => b === 10).length;
      return { offset: this.#offset + bad, line: this.#line + lines, byte: whole[bad] ?? 0 };
    }
  }
}
