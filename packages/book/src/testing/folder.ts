import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import { afterEach, beforeEach } from "vitest";

/** A folder of the file system that each test has for itself. */
export interface TestFolder {
  readonly at: (...parts: readonly string[]) => string;
  /** Writes plain files below the folder; returns where. */
  readonly put: (files: Iterable<readonly [string, string | Uint8Array]>, inner?: string) => string;
}

/** Gives every test of a file a fresh folder, and removes it afterwards. */
export function testFolder(): TestFolder {
  let folder = "";
  beforeEach(() => {
    folder = mkdtempSync(join(tmpdir(), "book-io-"));
  });
  afterEach(() => {
    rmSync(folder, { recursive: true, force: true });
  });
  const at = (...parts: readonly string[]) => join(folder, ...parts);
  return {
    at,
    put: (files, inner = "book") => {
      for (const [path, content] of files) {
        mkdirSync(dirname(at(inner, path)), { recursive: true });
        writeFileSync(at(inner, path), content);
      }
      return at(inner);
    },
  };
}

/** Every file below a folder with its text. */
export function textsBelow(path: string, inner = ""): Map<string, string> {
  const found = new Map<string, string>();
  for (const entry of readdirSync(join(path, inner), { withFileTypes: true })) {
    const name = inner === "" ? entry.name : `${inner}/${entry.name}`;
    if (entry.isDirectory()) for (const [k, v] of textsBelow(path, name)) found.set(k, v);
    else found.set(name, readFileSync(join(path, name), "utf8"));
  }
  return found;
}
