import { strToU8, type Zippable, zipSync } from "fflate";

/** Earliest time that a ZIP can hold, so that the same files give the same bytes on every day. */
const FIXED_TIME = new Date(1980, 0, 1, 0, 0, 0);

/** Packs files into a ZIP. The bytes depend on nothing but the files and their order. */
export function packZip(files: Iterable<readonly [path: string, content: string | Uint8Array]>): Uint8Array {
  const entries: Zippable = {};
  for (const [path, content] of files) {
    entries[path] = [
      typeof content === "string" ? strToU8(content) : content,
      { mtime: FIXED_TIME, level: 6 },
    ];
  }
  return zipSync(entries);
}
