import { existsSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

/** The folder of the program, found upward from this file: from sources and from a bundle it lies differently deep. */
export function programRoot(): string {
  let folder = dirname(fileURLToPath(import.meta.url));
  while (!existsSync(join(folder, "examples", "first-light", "machine.json"))) {
    const above = dirname(folder);
    if (above === folder) throw new Error("The examples of Pinwright are not where its program is.");
    folder = above;
  }
  return folder;
}
