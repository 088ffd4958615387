import { closeSync, openSync, writeSync } from "node:fs";
import { Zip, ZipDeflate, ZipPassThrough } from "fflate";

/** Earliest time that a ZIP can hold, so that the same files give the same bytes on every day. */
const FIXED_TIME = new Date(1980, 0, 1, 0, 0, 0);
/** Formats that are packed inside already. */
const PACKED = /\.(pdf|xlsx)$/;

/** Writes a ZIP to disk, file by file, holding one of them in memory. For threads that nobody waits for. */
export class ZipFile {
  readonly #file: number;
  readonly #zip: Zip;
  #failed: Error | null = null;

  constructor(path: string) {
    this.#file = openSync(path, "wx", 0o600);
    this.#zip = new Zip((error, bytes) => {
      if (error !== null) this.#failed = error;
      else writeSync(this.#file, bytes);
    });
  }

  add(name: string, bytes: Uint8Array): void {
    const entry = PACKED.test(name) ? new ZipPassThrough(name) : new ZipDeflate(name, { level: 6 });
    entry.mtime = FIXED_TIME;
    this.#zip.add(entry);
    // A copy: what is packed later must not change what is used before.
    entry.push(bytes.slice(), true);
    this.#check();
  }

  end(): void {
    this.#zip.end();
    closeSync(this.#file);
    this.#check();
  }

  #check(): void {
    if (this.#failed !== null) throw this.#failed;
  }
}
