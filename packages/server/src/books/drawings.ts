import { type Cells, type CellTables, LIMITS } from "@pinwright/book";
import type { NewFile, Store } from "@pinwright/store";
import { done, Refused } from "../http/problem.ts";

/** Rows of the table of drawings. */
const drawingRows = (tables: CellTables): readonly Cells[] => [...(tables.get("drawings")?.values() ?? [])];

/**
 * Files of a book for some of its states: all that it has now; where a row of that state speaks of other bytes that a
 * file had before, those. What is not there any more is left out.
 */
export async function bookDrawings(
  store: Store,
  book: string,
  tables: CellTables,
): Promise<readonly NewFile[]> {
  const present = done(await store.files.list(book), `book ${book}`);
  const hashes = new Map(present.map(({ name, sha256 }) => [name, sha256]));
  for (const cells of drawingRows(tables)) {
    const [name, sha256] = [cells.get("file") ?? "", cells.get("sha256") ?? ""];
    if (sha256 !== "" && "done" in (await store.files.get(book, name, sha256))) hashes.set(name, sha256);
  }
  const files: NewFile[] = [];
  for (const [name, sha256] of [...hashes].sort(([a], [b]) => (a < b ? -1 : 1))) {
    const { bytes } = done(await store.files.get(book, name, sha256), `file ${name}`);
    files.push({ name, bytes });
  }
  return files;
}

/** The files that the drawings of some parts name and that the book has now. */
export async function partDrawings(
  store: Store,
  book: string,
  tables: CellTables,
  parts: ReadonlySet<string>,
): Promise<readonly NewFile[]> {
  const present = done(await store.files.list(book), `book ${book}`);
  const wanted = new Set(
    drawingRows(tables)
      .filter((cells) => parts.has(cells.get("part") ?? ""))
      .map((cells) => cells.get("file") ?? ""),
  );
  const own = present.filter(({ name }) => wanted.has(name));
  if (own.reduce((sum, { bytes }) => sum + bytes, 0) > LIMITS.drawingsBytes)
    throw new Refused(
      "too-large",
      "These are too many drawings at once. Send the parts out in several packs.",
    );
  const files: NewFile[] = [];
  for (const { name } of own) {
    const { bytes } = done(await store.files.get(book, name), `file ${name}`);
    files.push({ name, bytes });
  }
  return files;
}
