/** Writes the book of Tidewatch into the folder above this one: `npx tsx examples/tidewatch/make/index.ts`. */
import { mkdirSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { drawingFiles, writeBookFiles } from "@pinwright/book/csv";
import { assemble } from "./assemble.ts";
import { drawnTrunksCsv } from "./drawn-trunks.ts";
import { drawingBytes } from "./outside/index.ts";
import { settled } from "./settled.ts";

const folder = join(dirname(fileURLToPath(import.meta.url)), "..");
const { book, shop } = assemble();
const files = new Map<string, string | Uint8Array>([
  ...writeBookFiles(settled(book, shop), shop),
  ...drawingFiles(drawingBytes(book)),
]);

for (const inner of ["outlines", "drawings", "shop", "drawn"])
  mkdirSync(join(folder, inner), { recursive: true });
for (const [path, text] of files) writeFileSync(join(folder, path), text);
// Not a table of the book, and in a folder that a book's reader leaves alone.
writeFileSync(join(folder, "drawn", "trunks.csv"), drawnTrunksCsv(book, shop));

// What an earlier run wrote and this one does not is stale. Nothing else in these places is touched.
for (const inner of ["", "outlines/", "drawings/", "shop/"]) {
  for (const name of readdirSync(join(folder, inner))) {
    if (/\.(csv|svg|dxf|pdf|step)$/.test(name) && !files.has(`${inner}${name}`))
      rmSync(join(folder, inner, name));
  }
}
