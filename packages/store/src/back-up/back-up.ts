import { createHash, randomUUID } from "node:crypto";
import { mkdir, open, rename, rm } from "node:fs/promises";
import { dirname } from "node:path";
import { setImmediate } from "node:timers/promises";
import type { Kysely } from "kysely";
import type { Database } from "../database/database.ts";
import { STORE_VERSION } from "../database/migrations/index.ts";
import type { Tables } from "../database/schema.ts";
import { keptRows, rowLine } from "./kept-rows.ts";
import { KEPT_TABLES, type KeptTable } from "./kept-tables.ts";
import { MANIFEST_FILE, type Manifest, tableFile } from "./manifest.ts";
import { ZipWriter } from "./zip-writer.ts";

const PIECE_CHARS = 64_000;

/**
 * Writes everything that a store holds at one moment to a ZIP file, while others write to the store. The file is
 * there whole or not at all.
 */
export async function backUp({ longRead }: Database, file: string, madeAt: string): Promise<void> {
  await mkdir(dirname(file), { recursive: true });
  const part = `${file}.${randomUUID()}.part`;
  try {
    const zip = await ZipWriter.create(part);
    try {
      await longRead((db) => writeTables(db, zip, madeAt));
      await zip.finish();
    } finally {
      await zip.close();
    }
    await rename(part, file);
    await syncFolder(dirname(file));
  } catch (error) {
    await rm(part, { force: true });
    throw error;
  }
}

async function writeTables(db: Kysely<Tables>, zip: ZipWriter, madeAt: string): Promise<void> {
  const tables: Record<string, Manifest["tables"][string]> = {};
  for (const table of KEPT_TABLES) {
    const hash = createHash("sha256");
    let rows = 0;
    const pieces = async function* () {
      for await (const { text, count } of linePieces(db, table)) {
        const bytes = Buffer.from(text);
        hash.update(bytes);
        rows += count;
        yield bytes;
        // Statements on SQLite never wait for anything, so others get their turn here.
        await setImmediate();
      }
    };
    await zip.add(tableFile(table.name), pieces());
    tables[table.name] = { rows, sha256: hash.digest("hex") };
  }
  const manifest: Manifest = { format: "pinwright-back-up", storeVersion: STORE_VERSION, madeAt, tables };
  await zip.add(MANIFEST_FILE, one(Buffer.from(`${JSON.stringify(manifest, null, 2)}\n`)));
}

async function* one<T>(value: T): AsyncGenerator<T> {
  yield value;
}

/** The lines of a table, joined to pieces worth writing. */
async function* linePieces(
  db: Kysely<Tables>,
  table: KeptTable,
): AsyncGenerator<{ readonly text: string; readonly count: number }> {
  let text = "";
  let count = 0;
  for await (const row of keptRows(db, table)) {
    text += `${rowLine(row)}\n`;
    count += 1;
    if (text.length < PIECE_CHARS) continue;
    yield { text, count };
    [text, count] = ["", 0];
  }
  if (count > 0) yield { text, count };
}

/** Makes a rename last: on Linux the folder is what was changed. */
async function syncFolder(folder: string): Promise<void> {
  const handle = await open(folder, "r");
  try {
    await handle.sync();
  } finally {
    await handle.close();
  }
}
