import { createHash } from "node:crypto";
import { type Kysely, sql } from "kysely";
import type { Database } from "../database/database.ts";
import { migrateWithin, presentVersion } from "../database/migrate.ts";
import { STORE_VERSION } from "../database/migrations/index.ts";
import type { Tables } from "../database/schema.ts";
import { StoreError } from "../error.ts";
import { lineRow } from "./kept-rows.ts";
import { KEPT_TABLES } from "./kept-tables.ts";
import { MANIFEST_FILE, type Manifest, manifestSchema, tableFile } from "./manifest.ts";
import { openZip, type ZipFile } from "./zip-reader.ts";

const ROWS_AT_ONCE = 200;
const CHARS_AT_ONCE = 1_000_000;

/**
 * Puts what a back-up holds into a database where no store is yet, all or nothing, and brings it forward if an
 * earlier program made it. Throws a `StoreError` when the back-up is not whole, or the database not new.
 */
export async function restore({ kind, write }: Database, file: string): Promise<void> {
  const zip = await openZip(file);
  const manifest = await readManifest(zip, file);
  for (const [table, said] of Object.entries(manifest.tables)) await mustBeWhole(zip, file, table, said);
  await write(async (db) => {
    if ((await presentVersion(db, kind)) > 0) {
      throw new StoreError(
        "not-empty",
        "A back-up is only restored where no store is yet; name a file that does not exist, or an empty database.",
      );
    }
    await migrateWithin(db, kind, manifest.storeVersion);
    for (const { name } of KEPT_TABLES) {
      if (name in manifest.tables) await insertLines(db, name, linesOf(zip.read(tableFile(name))));
    }
    await migrateWithin(db, kind, STORE_VERSION);
  });
}

async function readManifest(zip: ZipFile, file: string): Promise<Manifest> {
  const bytes: Buffer[] = [];
  for await (const piece of zip.read(MANIFEST_FILE)) bytes.push(piece);
  const manifest = manifestSchema.safeParse(parsed(Buffer.concat(bytes).toString()));
  if (!manifest.success) throw new StoreError("damaged", `${file} is not a back-up of this program.`);
  const { storeVersion, tables } = manifest.data;
  const unknown = Object.keys(tables).filter((table) => !KEPT_TABLES.some(({ name }) => name === table));
  if (storeVersion > STORE_VERSION || unknown.length > 0) {
    throw new StoreError(
      "newer",
      `${file} holds version ${storeVersion} of the store, and this program knows versions up to ${STORE_VERSION}; ` +
        "restore it with the program that made it, or a later one.",
    );
  }
  return manifest.data;
}

function parsed(json: string): unknown {
  try {
    return JSON.parse(json);
  } catch {
    return undefined;
  }
}

/** Nothing is put back before everything was found to be as it was written. */
async function mustBeWhole(
  zip: ZipFile,
  file: string,
  table: string,
  said: Manifest["tables"][string],
): Promise<void> {
  const hash = createHash("sha256");
  let rows = 0;
  for await (const piece of zip.read(tableFile(table))) {
    hash.update(piece);
    for (const byte of piece) if (byte === LINE_END) rows += 1;
  }
  if (rows === said.rows && hash.digest("hex") === said.sha256) return;
  throw new StoreError(
    "damaged",
    `${file} is damaged: ${tableFile(table)} is not what its manifest says. Take another back-up.`,
  );
}

const LINE_END = 0x0a;

/** The lines of a file that comes in pieces. */
async function* linesOf(pieces: AsyncIterable<Buffer>): AsyncGenerator<string> {
  let rest: Buffer[] = [];
  for await (const piece of pieces) {
    let start = 0;
    for (let end = piece.indexOf(LINE_END); end >= 0; end = piece.indexOf(LINE_END, start)) {
      yield Buffer.concat([...rest, piece.subarray(start, end)]).toString();
      rest = [];
      start = end + 1;
    }
    rest.push(piece.subarray(start));
  }
}

async function insertLines(
  db: Kysely<Tables>,
  table: keyof Tables,
  lines: AsyncIterable<string>,
): Promise<void> {
  let rows: ReturnType<typeof lineRow>[] = [];
  let chars = 0;
  const flush = async () => {
    const [first] = rows;
    if (first === undefined) return;
    const columns = Object.keys(first);
    const values = rows.map((row) => sql`(${sql.join(columns.map((column) => row[column] ?? null))})`);
    await sql`
      insert into ${sql.table(table)} (${sql.join(columns.map((column) => sql.ref(column)))})
      values ${sql.join(values)}`.execute(db);
    rows = [];
    chars = 0;
  };
  for await (const line of lines) {
    rows.push(lineRow(line));
    chars += line.length;
    if (rows.length >= ROWS_AT_ONCE || chars >= CHARS_AT_ONCE) await flush();
  }
  await flush();
}
