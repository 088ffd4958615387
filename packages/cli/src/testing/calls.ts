import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { COMMANDS } from "../index.ts";
import { run } from "../run.ts";

/** Folder of the small example. */
export const example = join(import.meta.dirname, "../../../../examples/first-light");

/** Runs a command as from a shell; gives its status and what it wrote. */
export async function call(...args: string[]): Promise<{ status: number; out: string; err: string }> {
  let out = "";
  let err = "";
  const status = await run(COMMANDS, args, {
    out: (text) => {
      out += text;
    },
    err: (text) => {
      err += text;
    },
    screen: false,
  });
  return { status, out, err };
}

/** A folder for a test file's books; `clear` takes it away. */
export class Place {
  readonly path = mkdtempSync(join(tmpdir(), "pinwright-cli-"));

  /** A copy of the small example with some files changed; gives its folder. */
  copyWith(name: string, changes: Readonly<Record<string, (text: string) => string>>): string {
    const folder = join(this.path, name);
    cpSync(example, folder, { recursive: true });
    for (const [file, change] of Object.entries(changes))
      writeFileSync(join(folder, file), change(readFileSync(join(folder, file), "utf8")));
    return folder;
  }

  clear(): void {
    rmSync(this.path, { recursive: true, force: true });
  }
}
