import { randomUUID } from "node:crypto";
import { chmod, mkdir, open, readFile, rename, rm } from "node:fs/promises";
import { dirname } from "node:path";

/** Writes a secret so that only the owner of the process can read it, and nobody ever sees half of it. */
export async function writeSecret(path: string, text: string): Promise<void> {
  await mkdir(dirname(path), { recursive: true, mode: 0o700 });
  const part = `${path}.${randomUUID()}.part`;
  try {
    const file = await open(part, "wx", 0o600);
    try {
      await file.writeFile(text);
      await file.sync();
    } finally {
      await file.close();
    }
    await rename(part, path);
    await chmod(path, 0o600);
  } catch (error) {
    await rm(part, { force: true });
    throw error;
  }
}

/** Text of a file; null when there is none. */
export async function textOf(path: string): Promise<string | null> {
  try {
    return await readFile(path, "utf8");
  } catch (error) {
    if (error instanceof Error && "code" in error && error.code === "ENOENT") return null;
    throw error;
  }
}
