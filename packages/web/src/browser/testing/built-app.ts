import { execFile } from "node:child_process";
import { createHash, randomUUID } from "node:crypto";
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { mkdir, readdir, rename, rm } from "node:fs/promises";
import { join } from "node:path";
import { promisify } from "node:util";

/** The program's folder. */
export const ROOT = join(import.meta.dirname, "../../../../..");
const CACHE = join(ROOT, ".cache", "web");
/** Packages that end up in the app, with what else its build reads. */
const SOURCES = ["book", "contract", "engine", "kernel", "sheets", "web", "words"].map(
  (name) => `packages/${name}/src`,
);
const FILES = [
  "package-lock.json",
  ...["index.html", "floor.html", "vite.config.ts", "floor-files.ts", "service-page-file.ts"].map(
    (name) => `packages/web/${name}`,
  ),
];

/** Fingerprint of everything that the app is built from. */
function fingerprint(): string {
  const hash = createHash("sha256");
  const inFolder = (folder: string): readonly string[] =>
    readdirSync(join(ROOT, folder), { recursive: true, withFileTypes: true }).flatMap((entry) => {
      const path = join(entry.parentPath, entry.name);
      return entry.isFile() && !path.includes("/browser/") && !path.includes(".test.") ? [path] : [];
    });
  const paths = [...FILES.map((file) => join(ROOT, file)), ...SOURCES.flatMap(inFolder)].sort();
  for (const path of paths) hash.update(path.slice(ROOT.length)).update(readFileSync(path));
  return hash.digest("hex").slice(0, 16);
}

/**
 * The built app, in a folder that is named after what it was built from: several test files that run side by side
 * share it, and a second run builds nothing.
 */
export async function builtApp(): Promise<string> {
  const folder = join(CACHE, fingerprint());
  if (existsSync(folder)) return folder;
  await mkdir(CACHE, { recursive: true });
  const old = (await readdir(CACHE)).filter((name) => !name.startsWith("making-"));
  const making = join(CACHE, `making-${randomUUID()}`);
  const vite = join(ROOT, "node_modules", ".bin", "vite");
  await promisify(execFile)(vite, ["build", "packages/web", "--outDir", making, "--logLevel", "error"], {
    cwd: ROOT,
  });
  // Whoever is first gives the name; another, whose rename fails, has the same to offer.
  await rename(making, folder).catch(() => rm(making, { recursive: true, force: true }));
  await Promise.all(old.map((name) => rm(join(CACHE, name), { recursive: true, force: true })));
  return folder;
}
