import { readdir, readFile, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { promisify } from "node:util";
import { brotliCompress, constants, gzip } from "node:zlib";

/** Endings of files that get smaller. */
const TEXT = /\.(html|js|css|svg|json|webmanifest|wasm|map|ttf|txt)$/;
/** Smaller files cost more to ask for than to send. */
const LEAST_BYTES = 1024;

const brotli = promisify(brotliCompress);
const zip = promisify(gzip);

/** Puts `.br` and `.gz` beside every file of a folder that gets smaller by it. A folder that is not there has none. */
export async function precompress(folder: string): Promise<void> {
  const entries = await readdir(folder, { recursive: true, withFileTypes: true }).catch(() => []);
  for (const entry of entries) {
    if (!entry.isFile() || !TEXT.test(entry.name)) continue;
    const path = join(entry.parentPath, entry.name);
    const bytes = await readFile(path);
    if (bytes.byteLength < LEAST_BYTES) continue;
    const params = {
      [constants.BROTLI_PARAM_SIZE_HINT]: bytes.byteLength,
      [constants.BROTLI_PARAM_QUALITY]: 10,
    };
    const packed = { br: await brotli(bytes, { params }), gz: await zip(bytes, { level: 9 }) };
    for (const [ending, made] of Object.entries(packed))
      if (made.byteLength < bytes.byteLength) await writeFile(`${path}.${ending}`, made);
  }
}
