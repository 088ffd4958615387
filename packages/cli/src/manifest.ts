import { createHash, randomUUID } from "node:crypto";
import { access, mkdir, readFile, rename, rm, writeFile } from "node:fs/promises";
import { dirname, join } from "node:path";
import { z } from "zod";

const entrySchema = z.object({
  file: z.string(),
  sheet: z.string(),
  title: z.string(),
  /** Hash of what the sheet says: unchanged means unchanged, whatever its date. */
  body: z.string(),
  /** Hash of the file's bytes. */
  bytes: z.string(),
});
const manifestSchema = z.object({
  machine: z.string(),
  revision: z.string(),
  entries: z.array(entrySchema),
});

export type ManifestEntry = z.infer<typeof entrySchema>;
export type Manifest = z.infer<typeof manifestSchema>;

export const MANIFEST = "manifest.json";

/** SHA-256 of bytes, in hexadecimal. */
export const sha256 = (bytes: Uint8Array | string): string =>
  createHash("sha256").update(bytes).digest("hex");

/** The manifest of an output folder, or null when there is none that can be read: then everything is written. */
export async function readManifest(folder: string): Promise<Manifest | null> {
  try {
    return manifestSchema.parse(JSON.parse(await readFile(join(folder, MANIFEST), "utf8")));
  } catch {
    return null;
  }
}

/** Writes a file so that nobody ever sees half of it. */
export async function writeWhole(path: string, bytes: Uint8Array | string): Promise<void> {
  await mkdir(dirname(path), { recursive: true });
  const part = `${path}.${randomUUID()}.part`;
  try {
    await writeFile(part, bytes);
    await rename(part, path);
  } catch (error) {
    await rm(part, { force: true });
    throw error;
  }
}

/** Whether a file is there. */
export const isThere = (path: string): Promise<boolean> =>
  access(path).then(
    () => true,
    () => false,
  );
