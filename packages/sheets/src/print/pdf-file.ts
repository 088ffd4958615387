import { createHash } from "node:crypto";
import { deflateSync } from "node:zlib";

/** A reference to an object of the file, as it is written. */
export type Reference = `${number} 0 R`;

/** A text for a reader of the file, in any script: UTF-16 with its mark, in hexadecimal (PDF 1.7, 7.9.2.2). */
export function textString(text: string): string {
  return `<feff${Buffer.from(text, "utf16le").swap16().toString("hex")}>`;
}

/** Objects without streams that share a stream. */
const SMALL_A_STREAM = 500;

/** The objects of a PDF file in the order in which they come, then its table of contents (PDF 1.7, 7.5). */
export class PdfFile {
  readonly #parts: Buffer[] = [];
  /** Where each object begins; or the object stream that holds it and its place there. */
  readonly #offsets: (number | { readonly stream: number; readonly index: number })[] = [];
  /** Objects that wait for an object stream. */
  #small: { readonly number: number; readonly body: string }[] = [];
  readonly #hash = createHash("sha256");
  #length = 0;

  constructor() {
    // Bytes above 127 in the second line tell programs that copy files that this one is not text.
    this.#push(Buffer.from("%PDF-1.7\n%\xe2\xe3\xcf\xd3\n", "latin1"));
  }

  #push(part: Buffer): void {
    this.#parts.push(part);
    this.#hash.update(part);
    this.#length += part.length;
  }

  #object(number: number, ...body: readonly Buffer[]): void {
    this.#offsets[number - 1] = this.#length;
    this.#push(Buffer.from(`${number} 0 obj\n`));
    for (const part of body) this.#push(part);
    this.#push(Buffer.from("\nendobj\n"));
  }

  /** A number for an object that is referred to before it is written. */
  reserve(): Reference {
    this.#offsets.push(-1);
    return `${this.#offsets.length} 0 R`;
  }

  /** Writes an object that has its number already. */
  write(reference: Reference, body: string): Reference {
    this.#object(Number.parseInt(reference, 10), Buffer.from(body, "latin1"));
    return reference;
  }

  add(body: string): Reference {
    return this.write(this.reserve(), body);
  }

  /**
   * Writes an object that is no stream and that need not be found by programs of before 2003: hundreds share a stream,
   * a tenth of their length by themselves (ISO 32000-1, 7.5.7).
   */
  writeSmall(reference: Reference, body: string): Reference {
    const number = Number.parseInt(reference, 10);
    this.#offsets[number - 1] = { stream: 0, index: 0 };
    this.#small.push({ number, body });
    if (this.#small.length >= SMALL_A_STREAM) this.#flush();
    return reference;
  }

  #flush(): void {
    const small = this.#small;
    if (small.length === 0) return;
    this.#small = [];
    let at = 0;
    const heads = small.map(({ number, body }) => {
      const head = `${number} ${at}`;
      at += body.length + 1;
      return head;
    });
    const first = `${heads.join(" ")}\n`;
    const bytes = Buffer.from(`${first}${small.map(({ body }) => body).join("\n")}\n`, "latin1");
    const stream = Number.parseInt(
      this.addStream(bytes, `/Type/ObjStm/N ${small.length}/First ${first.length}`),
      10,
    );
    small.forEach(({ number }, index) => {
      this.#offsets[number - 1] = { stream, index };
    });
  }

  /** Adds bytes as they are, so that programs that know nothing of PDF find them. */
  addPlain(bytes: Buffer, entries: string): Reference {
    const reference = this.reserve();
    this.#object(
      Number.parseInt(reference, 10),
      Buffer.from(`<</Length ${bytes.length}${entries}>>\nstream\n`, "latin1"),
      bytes,
      Buffer.from("\nendstream"),
    );
    return reference;
  }

  /** Adds bytes, packed. @param entries what its dictionary says besides length and filter */
  addStream(bytes: Buffer, entries = ""): Reference {
    return this.addPacked(pack(bytes), entries);
  }

  /** Adds bytes that `pack` has packed. */
  addPacked(packed: Buffer, entries = ""): Reference {
    const reference = this.reserve();
    this.#object(
      Number.parseInt(reference, 10),
      Buffer.from(`<</Length ${packed.length}/Filter/FlateDecode${entries}>>\nstream\n`, "latin1"),
      packed,
      Buffer.from("\nendstream"),
    );
    return reference;
  }

  /**
   * The whole file. Its identifier is the hash of its contents: the same contents give the same bytes.
   * @throws Error when a number was reserved and its object never written
   */
  finish(catalog: Reference, info: Reference): Uint8Array {
    this.#flush();
    const table = Number.parseInt(this.reserve(), 10);
    const start = this.#length;
    this.#offsets[table - 1] = start;
    const id = this.#hash.copy().digest("hex").slice(0, 32);
    const packed = pack(this.#crossReferences());
    this.#object(
      table,
      Buffer.from(
        `<</Type/XRef/Size ${table + 1}/W[1 4 2]/Root ${catalog}/Info ${info}/ID[<${id}><${id}>]/Length ${packed.length}/Filter/FlateDecode>>\nstream\n`,
        "latin1",
      ),
      packed,
      Buffer.from("\nendstream"),
    );
    this.#push(Buffer.from(`startxref\n${start}\n%%EOF\n`));
    return new Uint8Array(Buffer.concat(this.#parts));
  }

  /** Where each object is, in rows of seven bytes (ISO 32000-1, 7.5.8). */
  #crossReferences(): Buffer {
    const rows = Buffer.alloc(7 * (this.#offsets.length + 1));
    rows.writeUInt16BE(0xffff, 5);
    this.#offsets.forEach((offset, i) => {
      const at = 7 * (i + 1);
      if (typeof offset !== "number") {
        rows.writeUInt8(2, at);
        rows.writeUInt32BE(offset.stream, at + 1);
        rows.writeUInt16BE(offset.index, at + 5);
        return;
      }
      if (offset < 0) throw new Error(`Object ${i + 1} of a PDF file was referred to and not written.`);
      rows.writeUInt8(1, at);
      rows.writeUInt32BE(offset, at + 1);
    });
    return rows;
  }
}

/** Packs bytes for a stream. Level 4 takes half the time of level 6 and gives files 4 % longer. */
export function pack(bytes: Buffer): Buffer {
  return deflateSync(bytes, { level: 4 });
}
