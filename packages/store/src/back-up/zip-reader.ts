import { createReadStream } from "node:fs";
import { open } from "node:fs/promises";
import { pipeline } from "node:stream";
import { createInflateRaw } from "node:zlib";
import { StoreError } from "../error.ts";
import {
  CENTRAL,
  CENTRAL_BYTES,
  END_64,
  END_64_BYTES,
  END_BYTES,
  LOCAL,
  LOCAL_BYTES,
  LOCATOR_64,
  LOCATOR_64_BYTES,
  type ZipEntry,
} from "./zip-format.ts";

/** A ZIP as `ZipWriter` writes it, to be read piece by piece. */
export interface ZipFile {
  readonly names: readonly string[];
  /** The bytes of a file. Throws a `StoreError` when there is none of that name. */
  read(name: string): AsyncIterable<Buffer>;
}

/** Reads the directory of a ZIP. Throws a `StoreError` when the file is no back-up or was cut off. */
export async function openZip(path: string): Promise<ZipFile> {
  const notABackUp = (cause?: unknown) =>
    new StoreError(
      "damaged",
      `${path} is not a whole back-up of this program; it must be a file that a back-up has written, unchanged.`,
      { cause },
    );
  const bytesOf = async (start: number, length: number): Promise<Buffer> => {
    const file = await open(path, "r");
    try {
      const buffer = Buffer.alloc(length);
      const { bytesRead } = await file.read(buffer, 0, length, start);
      if (bytesRead !== length) throw notABackUp();
      return buffer;
    } finally {
      await file.close();
    }
  };
  const size = await open(path, "r").then(
    async (file) => {
      const { size } = await file.stat();
      await file.close();
      return size;
    },
    (cause: unknown) => {
      throw new StoreError("unreachable", `${path} cannot be read; it must be a back-up file.`, { cause });
    },
  );

  const entries = await (async () => {
    const tail = END_64_BYTES + LOCATOR_64_BYTES + END_BYTES;
    if (size < tail) throw notABackUp();
    const end = await bytesOf(size - tail, tail);
    if (end.readUInt32LE(0) !== END_64 || end.readUInt32LE(END_64_BYTES) !== LOCATOR_64) throw notABackUp();
    const start = Number(end.readBigUInt64LE(48));
    const bytes = Number(end.readBigUInt64LE(40));
    if (start + bytes !== size - tail) throw notABackUp();
    return directory(await bytesOf(start, bytes), notABackUp);
  })();

  return {
    names: entries.map(({ name }) => name),
    async *read(name) {
      const entry = entries.find((one) => one.name === name);
      if (entry === undefined) throw notABackUp();
      const header = await bytesOf(entry.offset, LOCAL_BYTES);
      if (header.readUInt32LE(0) !== LOCAL) throw notABackUp();
      const start = entry.offset + LOCAL_BYTES + header.readUInt16LE(26) + header.readUInt16LE(28);
      if (entry.packedBytes === 0) return;
      const packed = createReadStream(path, { start, end: start + entry.packedBytes - 1 });
      try {
        // What goes wrong in either stream is thrown where the last one is read.
        yield* pipeline(packed, createInflateRaw(), () => {});
      } catch (error) {
        throw notABackUp(error);
      }
    },
  };
}

function directory(bytes: Buffer, notABackUp: () => Error): readonly ZipEntry[] {
  const entries: ZipEntry[] = [];
  for (let at = 0; at < bytes.length; ) {
    if (at + CENTRAL_BYTES > bytes.length || bytes.readUInt32LE(at) !== CENTRAL) throw notABackUp();
    const nameLength = bytes.readUInt16LE(at + 28);
    const extraLength = bytes.readUInt16LE(at + 30);
    const extra = at + CENTRAL_BYTES + nameLength;
    if (extraLength !== 28 || extra + extraLength > bytes.length) throw notABackUp();
    entries.push({
      name: bytes.toString("utf8", at + CENTRAL_BYTES, extra),
      crc: bytes.readUInt32LE(at + 16),
      bytes: Number(bytes.readBigUInt64LE(extra + 4)),
      packedBytes: Number(bytes.readBigUInt64LE(extra + 12)),
      offset: Number(bytes.readBigUInt64LE(extra + 20)),
    });
    at = extra + extraLength;
  }
  return entries;
}
