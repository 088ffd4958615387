import { type FileHandle, open } from "node:fs/promises";
import { pipeline } from "node:stream/promises";
import { crc32, createDeflateRaw } from "node:zlib";
import {
  CENTRAL,
  CENTRAL_BYTES,
  END,
  END_64,
  END_64_BYTES,
  END_BYTES,
  EXTRA_64,
  LOCAL,
  LOCAL_BYTES,
  LOCATOR_64,
  LOCATOR_64_BYTES,
  SEE_64,
  SEE_64_SHORT,
  type ZipEntry,
} from "./zip-format.ts";

/** Version 4.5 of the format: the first with 64-bit sizes. */
const VERSION = 45;
const UTF_8 = 0x0800;
const DEFLATE = 8;
/** 1 January 1980, the first day that a ZIP can name; the manifest says when it was made. */
const NO_DATE = 0x0021;

/** Writes a ZIP of any size piece by piece; only a piece is ever in memory. */
export class ZipWriter {
  readonly #file: FileHandle;
  readonly #entries: ZipEntry[] = [];
  #end = 0;

  private constructor(file: FileHandle) {
    this.#file = file;
  }

  /** Starts a new file that only its owner can read. Throws when there is one of that name. */
  static async create(path: string): Promise<ZipWriter> {
    return new ZipWriter(await open(path, "wx", 0o600));
  }

  /** Adds a file. */
  async add(name: string, pieces: AsyncIterable<Buffer>): Promise<void> {
    const offset = this.#end;
    await this.#append(localHeader({ name, crc: 0, packedBytes: 0, bytes: 0, offset }));
    const start = this.#end;
    let crc = 0;
    let bytes = 0;
    const counted = async function* () {
      for await (const piece of pieces) {
        crc = crc32(piece, crc);
        bytes += piece.length;
        yield piece;
      }
    };
    await pipeline(counted, createDeflateRaw(), async (packed: AsyncIterable<Buffer>) => {
      for await (const piece of packed) await this.#append(piece);
    });
    const entry: ZipEntry = { name, crc, packedBytes: this.#end - start, bytes, offset };
    const header = localHeader(entry);
    await this.#file.write(header, 0, header.length, offset);
    this.#entries.push(entry);
  }

  /** Writes the directory, and waits until all is on the disk. */
  async finish(): Promise<void> {
    const start = this.#end;
    for (const entry of this.#entries) await this.#append(centralHeader(entry));
    await this.#append(endOf(this.#entries.length, start, this.#end - start));
    await this.#file.sync();
  }

  close(): Promise<void> {
    return this.#file.close();
  }

  async #append(piece: Buffer): Promise<void> {
    await this.#file.write(piece, 0, piece.length, this.#end);
    this.#end += piece.length;
  }
}

function localHeader({ name, crc, packedBytes, bytes }: ZipEntry): Buffer {
  const nameBytes = Buffer.from(name);
  const fixed = Buffer.alloc(LOCAL_BYTES);
  fixed.writeUInt32LE(LOCAL, 0);
  writeCommon(fixed, 4, crc, nameBytes.length);
  const extra = sizes64(bytes, packedBytes);
  fixed.writeUInt16LE(extra.length, 28);
  return Buffer.concat([fixed, nameBytes, extra]);
}

function centralHeader({ name, crc, packedBytes, bytes, offset }: ZipEntry): Buffer {
  const nameBytes = Buffer.from(name);
  const fixed = Buffer.alloc(CENTRAL_BYTES);
  fixed.writeUInt32LE(CENTRAL, 0);
  fixed.writeUInt16LE(VERSION, 4);
  writeCommon(fixed, 6, crc, nameBytes.length);
  const extra = sizes64(bytes, packedBytes, offset);
  fixed.writeUInt16LE(extra.length, 30);
  fixed.writeUInt32LE(SEE_64, 42);
  return Buffer.concat([fixed, nameBytes, extra]);
}

/** The fields that both headers share, from the version needed to the length of the name. */
function writeCommon(header: Buffer, at: number, crc: number, nameLength: number): void {
  header.writeUInt16LE(VERSION, at);
  header.writeUInt16LE(UTF_8, at + 2);
  header.writeUInt16LE(DEFLATE, at + 4);
  header.writeUInt16LE(0, at + 6);
  header.writeUInt16LE(NO_DATE, at + 8);
  header.writeUInt32LE(crc, at + 10);
  header.writeUInt32LE(SEE_64, at + 14);
  header.writeUInt32LE(SEE_64, at + 18);
  header.writeUInt16LE(nameLength, at + 22);
}

function sizes64(...values: readonly number[]): Buffer {
  const extra = Buffer.alloc(4 + 8 * values.length);
  extra.writeUInt16LE(EXTRA_64, 0);
  extra.writeUInt16LE(8 * values.length, 2);
  for (const [index, value] of values.entries()) extra.writeBigUInt64LE(BigInt(value), 4 + 8 * index);
  return extra;
}

function endOf(count: number, start: number, bytes: number): Buffer {
  const end = Buffer.alloc(END_64_BYTES + LOCATOR_64_BYTES + END_BYTES);
  end.writeUInt32LE(END_64, 0);
  end.writeBigUInt64LE(BigInt(END_64_BYTES - 12), 4);
  end.writeUInt16LE(VERSION, 12);
  end.writeUInt16LE(VERSION, 14);
  end.writeBigUInt64LE(BigInt(count), 24);
  end.writeBigUInt64LE(BigInt(count), 32);
  end.writeBigUInt64LE(BigInt(bytes), 40);
  end.writeBigUInt64LE(BigInt(start), 48);
  const locator = END_64_BYTES;
  end.writeUInt32LE(LOCATOR_64, locator);
  end.writeBigUInt64LE(BigInt(start + bytes), locator + 8);
  end.writeUInt32LE(1, locator + 16);
  const last = locator + LOCATOR_64_BYTES;
  end.writeUInt32LE(END, last);
  end.writeUInt16LE(SEE_64_SHORT, last + 8);
  end.writeUInt16LE(SEE_64_SHORT, last + 10);
  end.writeUInt32LE(SEE_64, last + 12);
  end.writeUInt32LE(SEE_64, last + 16);
  return end;
}
