import { dirname, posix } from "node:path";
import {
  CHAPTER_MAY_IMPORT,
  NODE_ENTRIES,
  NODE_FOLDERS,
  NODE_PACKAGES,
  PACKAGE_MAY_IMPORT,
} from "./rules.ts";

/** A source file by its path from the repository's root, with forward slashes. */
export interface SourceFile {
  readonly path: string;
  readonly text: string;
}

/** An import that breaks a layer. */
export interface Breach {
  readonly path: string;
  readonly specifier: string;
  readonly why: string;
}

const IMPORT =
  /(?:^|[;}\s])(?:import|export)\s[^"'`;]*?from\s*["']([^"']+)["']|(?:^|[^\w.])import\s*\(?\s*["']([^"']+)["']/gm;

/** Specifiers of all imports and re-exports of a text, type-only and dynamic ones included. */
export function importsOf(text: string): readonly string[] {
  return [...text.matchAll(IMPORT)].flatMap((match) => match[1] ?? match[2] ?? []);
}

const isTest = (path: string): boolean => path.endsWith(".test.ts") || path.includes("/testing/");

/** `packages/engine/src/wire/x.ts` → engine and wire; undefined outside of `packages`. */
function locate(
  path: string,
): { readonly pkg: string; readonly root: string; readonly chapter: string | null } | undefined {
  const [top, pkg, src, chapter, ...rest] = path.split("/");
  if (top !== "packages" || pkg === undefined || src !== "src") return undefined;
  return {
    pkg,
    root: `packages/${pkg}/src`,
    chapter: rest.length > 0 && chapter !== undefined ? chapter : null,
  };
}

function relativeBreach(path: string, specifier: string): string | null {
  const here = locate(path);
  if (here === undefined) return null;
  const target = posix.normalize(posix.join(dirname(path), specifier));
  if (target === `packages/${here.pkg}/package.json`) return null;
  if (!target.startsWith(`${here.root}/`)) return "a relative import leaves its package";
  if (!NODE_FOLDERS.some((folder) => path.startsWith(folder)) && !isTest(path)) {
    const node = NODE_FOLDERS.find((folder) => target.startsWith(folder));
    if (node !== undefined) return `what works without Node imports ${node}`;
  }
  if (here.pkg !== "engine" || here.chapter === null) return null;
  const there = locate(target);
  if (there?.chapter === null || there === undefined || there.chapter === here.chapter) return null;
  if (there.chapter === "testing") return isTest(path) ? null : "only tests import what is for tests";
  if (here.chapter === "testing") return null;
  const allowed = CHAPTER_MAY_IMPORT[here.chapter];
  if (allowed === undefined) return `the chapter ${here.chapter} is not in the list of chapters`;
  if (!allowed.includes(there.chapter)) return `the chapter ${here.chapter} may not import ${there.chapter}`;
  if (target !== `packages/engine/src/${there.chapter}/index.ts` && !isTest(path))
    return `another chapter is imported by its index, not ${target}`;
  return null;
}

function packageBreach(path: string, specifier: string): string | null {
  const here = locate(path);
  if (here === undefined) return null;
  const inNode = NODE_FOLDERS.some((folder) => path.startsWith(folder)) || isTest(path);
  if (specifier.startsWith("node:")) return inNode ? null : "this folder works without Node";
  if (!specifier.startsWith("@pinwright/")) {
    const bare = specifier.split("/")[0] ?? specifier;
    return NODE_PACKAGES.includes(bare) && !inNode
      ? `${bare} needs Node; this folder works without it`
      : null;
  }
  const target = specifier.split("/")[1] ?? "";
  const allowed = PACKAGE_MAY_IMPORT[here.pkg];
  if (allowed === undefined) return `the package ${here.pkg} is not in the list of packages`;
  if (target !== here.pkg && !allowed.includes(target)) return `${here.pkg} may not import ${target}`;
  const users = NODE_ENTRIES[specifier];
  if (users !== undefined && !users.includes(here.pkg) && !isTest(path))
    return `${here.pkg} may not use ${specifier}`;
  return null;
}

/** Every import of these files that breaks a layer, in the order of the files. */
export function breaches(files: readonly SourceFile[]): readonly Breach[] {
  return files.flatMap((file) =>
    importsOf(file.text).flatMap((specifier) => {
      const why = specifier.startsWith(".")
        ? relativeBreach(file.path, specifier)
        : packageBreach(file.path, specifier);
      return why === null ? [] : [{ path: file.path, specifier, why }];
    }),
  );
}
