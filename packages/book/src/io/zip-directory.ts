import type { FileHandle } from "node:fs/promises";
import { LIMITS } from "../limits.ts";

/** One entry as the directory at the end of a ZIP describes it. */
export interface ZipEntry {
  readonly name: string;
  readonly method: number;
  readonly crc: number;
  readonly packedBytes: number;
  readonly offset: number;
  readonly isEncrypted: boolean;
  readonly isSymlink: boolean;
}

const END = 0x06054b50;
const ENTRY = 0x02014b50;
const END_BYTES = 22;
const MOST_COMMENT = 65_535;
const MOST_DIRECTORY = LIMITS.packedEntries * 1024;

async function readAt(file: FileHandle, offset: number, bytes: number): Promise<Buffer> {
  const buffer = Buffer.alloc(bytes);
  const { bytesRead } = await file.read(buffer, 0, bytes, offset);
  return buffer.subarray(0, bytesRead);
}

/**
 * Reads the central directory of a ZIP (PKWARE APPNOTE 6.3.10, sections 4.3.12 and 4.3.16). Returns what is
 * wrong with it as text. ZIP64 and archives in parts are not accepted: no book needs them.
 */
export async function readZipDirectory(
  file: FileHandle,
  size: number,
): Promise<readonly ZipEntry[] | string> {
  const tail = await readAt(
    file,
    Math.max(0, size - END_BYTES - MOST_COMMENT),
    Math.min(size, END_BYTES + MOST_COMMENT),
  );
  let at = tail.length - END_BYTES;
  while (
    at >= 0 &&
    !(tail.readUInt32LE(at) === END && at + END_BYTES + tail.readUInt16LE(at + 20) === tail.length)
  )
    at--;
  if (at < 0) return "it has no directory; it was cut off or is no ZIP";
  const count = tail.readUInt16LE(at + 10);
  const bytes = tail.readUInt32LE(at + 12);
  const offset = tail.readUInt32LE(at + 16);
  if (tail.readUInt16LE(at + 4) !== 0 || count === 0xffff || bytes === 0xffffffff || offset === 0xffffffff) {
    return "it is in parts or in ZIP64 form";
  }
  if (count > LIMITS.packedEntries || bytes > MOST_DIRECTORY)
    return `it has more than ${LIMITS.packedEntries} entries`;
  if (offset + bytes > size) return "its directory lies outside the file";
  return toEntries(await readAt(file, offset, bytes), count);
}

function toEntries(directory: Buffer, count: number): readonly ZipEntry[] | string {
  const entries: ZipEntry[] = [];
  const decoder = new TextDecoder("utf-8", { fatal: true });
  let at = 0;
  for (let i = 0; i < count; i++) {
    if (at + 46 > directory.length || directory.readUInt32LE(at) !== ENTRY) return "its directory is damaged";
    const nameBytes = directory.readUInt16LE(at + 28);
    const next = at + 46 + nameBytes + directory.readUInt16LE(at + 30) + directory.readUInt16LE(at + 32);
    if (next > directory.length) return "its directory is damaged";
    let name: string;
    try {
      name = decoder.decode(directory.subarray(at + 46, at + 46 + nameBytes));
    } catch {
      return "the name of an entry is not UTF-8";
    }
    // The upper half of the external attributes is the Unix mode, whatever system the entry claims to be from.
    const unixMode = directory.readUInt32LE(at + 38) >>> 16;
    entries.push({
      name,
      method: directory.readUInt16LE(at + 10),
      crc: directory.readUInt32LE(at + 16),
      packedBytes: directory.readUInt32LE(at + 20),
      offset: directory.readUInt32LE(at + 42),
      isEncrypted: (directory.readUInt16LE(at + 8) & 1) === 1,
      isSymlink: (unixMode & 0xf000) === 0xa000,
    });
    at = next;
  }
  return entries;
}

/** Where the packed bytes of an entry start, after its own header; null when that header is damaged. */
export async function entryStart(file: FileHandle, entry: ZipEntry): Promise<number | null> {
  const header = await readAt(file, entry.offset, 30);
  if (header.length < 30 || header.readUInt32LE(0) !== 0x04034b50) return null;
  return entry.offset + 30 + header.readUInt16LE(26) + header.readUInt16LE(28);
}
