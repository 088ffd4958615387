import { type FileHandle, open } from "node:fs/promises";
import { crc32 } from "node:zlib";
import { Inflate } from "fflate";
import type { FaultLog, FaultNote } from "../fault-log.ts";
import { LIMITS } from "../limits.ts";
import { entryStart, readZipDirectory, type ZipEntry } from "./zip-directory.ts";
import { zipPathProblem } from "./zip-path.ts";

/**
 * Packed bytes that are unpacked at a time. Deflate packs at most 1032 to 1, so that one piece never gives
 * more than about 4 MiB, however the archive was made.
 */
const PIECE_BYTES = 4 * 1024;

/** Takes the bytes of one entry; a fault stops the reading of that entry. */
export type EntrySink = (piece: Uint8Array, last: boolean) => FaultNote | null;

const STORED = 0;
const DEFLATED = 8;

/** An open ZIP whose directory has been checked. */
export class ZipReader {
  readonly #file: FileHandle;
  readonly entries: readonly ZipEntry[];

  private constructor(file: FileHandle, entries: readonly ZipEntry[]) {
    this.#file = file;
    this.entries = entries;
  }

  /**
   * Opens a ZIP and checks its directory. Entries that climb out, are links, are encrypted or come twice are
   * faults and are left out. Null when the file cannot be used at all, with a fault that says why.
   */
  static async open(path: string, name: string, log: FaultLog): Promise<ZipReader | null> {
    const file = await open(path, "r");
    const { size } = await file.stat();
    const directory = size > LIMITS.packedBytes ? null : await readZipDirectory(file, size);
    if (directory === null) {
      log.add({
        code: "zip-too-large",
        file: name,
        expected: `at most ${LIMITS.packedBytes} bytes; the file has ${size}`,
      });
    } else if (typeof directory === "string") {
      log.add({ code: "file-unreadable", file: name, expected: `a readable ZIP; ${directory}` });
    } else return new ZipReader(file, checkEntries(directory, log));
    await file.close();
    return null;
  }

  close(): Promise<void> {
    return this.#file.close();
  }

  /**
   * Unpacks one entry in pieces. Returns the fault that stopped it: the sink's own, or that the entry is
   * damaged.
   */
  async read(entry: ZipEntry, sink: EntrySink): Promise<FaultNote | null> {
    const damaged = (why: string): FaultNote => ({
      code: "file-unreadable",
      file: entry.name,
      expected: `an entry that unpacks; ${why}`,
    });
    const start = await entryStart(this.#file, entry);
    if (start === null) return damaged("its header is damaged");
    if (entry.method !== STORED && entry.method !== DEFLATED)
      return damaged(`its method ${entry.method} is not deflate`);
    let crc = 0;
    let fault: FaultNote | null = null;
    const take = (piece: Uint8Array): void => {
      if (fault !== null || piece.length === 0) return;
      crc = crc32(piece, crc);
      fault = sink(piece, false);
    };
    const inflate = entry.method === DEFLATED ? new Inflate(take) : null;
    try {
      for (let done = 0; done < entry.packedBytes && fault === null; ) {
        const piece = Buffer.alloc(Math.min(PIECE_BYTES, entry.packedBytes - done));
        const { bytesRead } = await this.#file.read(piece, 0, piece.length, start + done);
        if (bytesRead === 0) return damaged("it was cut off");
        done += bytesRead;
        if (inflate === null) take(piece.subarray(0, bytesRead));
        else inflate.push(piece.subarray(0, bytesRead), done >= entry.packedBytes);
      }
    } catch (error) {
      return fault ?? damaged(error instanceof Error ? error.message : "its data is damaged");
    }
    if (fault === null && crc !== entry.crc) return damaged("its check sum is wrong");
    return fault ?? sink(new Uint8Array(0), true);
  }
}

function checkEntries(entries: readonly ZipEntry[], log: FaultLog): readonly ZipEntry[] {
  const seen = new Set<string>();
  return entries.filter((entry) => {
    const { name } = entry;
    const problem = zipPathProblem(name);
    const refuse = (code: "zip-path" | "zip-entry", expected: string): false => {
      log.add({ code, file: name, value: name, expected: `${expected}; this entry is not read` });
      return false;
    };
    if (problem !== null) return refuse("zip-path", `a path within the folder of the book, found ${problem}`);
    if (entry.isSymlink) return refuse("zip-entry", "plain files, found a link");
    if (entry.isEncrypted) return refuse("zip-entry", "entries without a password");
    if (seen.has(name)) return refuse("zip-entry", "each entry once");
    seen.add(name);
    return !name.endsWith("/");
  });
}
