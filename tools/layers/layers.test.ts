import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { breaches, importsOf } from "./check.ts";
import { CHAPTER_MAY_IMPORT, PACKAGE_MAY_IMPORT } from "./rules.ts";

const root = join(import.meta.dirname, "../..");

const sources = readdirSync(join(root, "packages"), { recursive: true, encoding: "utf8" })
  .filter((path) => /\.tsx?$/.test(path) && !path.includes("node_modules"))
  .map((path) => ({ path: `packages/${path}`, text: readFileSync(join(root, "packages", path), "utf8") }));

describe("layers", () => {
  it("hold in every source file", () => {
    expect(sources.length).toBeGreaterThan(50);
    expect(breaches(sources)).toEqual([]);
  });

  it("are declared for every package and chapter that exists", () => {
    expect(readdirSync(join(root, "packages")).sort()).toEqual(Object.keys(PACKAGE_MAY_IMPORT).sort());
    const chapters = readdirSync(join(root, "packages/engine/src"), { withFileTypes: true })
      .filter((entry) => entry.isDirectory() && entry.name !== "testing")
      .map((entry) => entry.name);
    expect(chapters.sort()).toEqual(Object.keys(CHAPTER_MAY_IMPORT).sort());
  });

  it.each([
    ["packages/kernel/src/a.ts", 'import { x } from "@pinwright/book";'],
    ["packages/book/src/a.ts", 'import type { x } from "@pinwright/engine";'],
    ["packages/book/src/a.ts", 'import { x } from "./io/index.ts";'],
    ["packages/engine/src/wire/a.ts", 'import { readFileSync } from "node:fs";'],
    ["packages/engine/src/wire/a.ts", 'import type { x } from "@pinwright/sheets";'],
    ["packages/engine/src/wire/a.ts", 'export { x } from "../route/index.ts";'],
    ["packages/engine/src/wire/a.ts", 'import type { x } from "../line/index.ts";'],
    ["packages/engine/src/route/a.ts", 'import { x } from "../wire/number.ts";'],
    ["packages/engine/src/unheard-of/a.ts", 'import { x } from "../wire/index.ts";'],
    ["packages/engine/src/wire/a.ts", 'import { x } from "../../../kernel/src/index.ts";'],
    ["packages/engine/src/wire/a.ts", 'import { x } from "@pinwright/book/io";'],
    ["packages/engine/src/wire/a.ts", 'import { x } from "../testing/create-machine.ts";'],
    ["packages/sheets/src/compose/a.ts", 'import { x } from "../print/index.ts";'],
    ["packages/sheets/src/compose/a.ts", 'import { create } from "fontkit";'],
    ["packages/sheets/src/compose/a.ts", 'const x = await import("node:fs");'],
    ["packages/sheets/src/compose/a.ts", 'import {\n  a,\n  type b,\n} from "@pinwright/cli";'],
    ["packages/unheard-of/src/a.ts", 'import { x } from "@pinwright/kernel";'],
  ])("finds the violation planted in %s: %s", (path, text) => {
    expect(breaches([{ path, text }])).toHaveLength(1);
  });

  it.each([
    ["packages/engine/src/route/a.ts", 'import type { x } from "../wire/index.ts";'],
    ["packages/engine/src/wire/a.test.ts", 'import { readBook } from "@pinwright/book/io";'],
    [
      "packages/cli/src/a.ts",
      'import { readBook } from "@pinwright/book/io";\nimport { join } from "node:path";',
    ],
    ["packages/book/src/io/a.ts", 'import exceljs from "exceljs";\nimport { x } from "../fault.ts";'],
  ])("lets %s be: %s", (path, text) => {
    expect(breaches([{ path, text }])).toEqual([]);
  });

  it("sees every form of import", () => {
    expect(
      importsOf(
        'import "a";\nimport b from "b";\nimport type { c } from "c";\nexport * from "d";\nconst e = import("e");\ntype F = import("f").F;',
      ),
    ).toEqual(["a", "b", "c", "d", "e", "f"]);
  });
});
