import { createHash } from "node:crypto";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { type Plugin, type Rolldown, transformWithOxc } from "vite";

const SERVICE = join(import.meta.dirname, "src/floor/service/service-worker.ts");
/** Files of `public` that the floor's page needs. */
const PUBLIC = ["/icon.svg", "/floor.webmanifest", "/floor-icon-192.png"];
/** Letters that are on every page; the others come when they are needed. */
const FONTS = /ibm-plex-sans-latin-(400|600).*\.woff2$/;

/** Everything that the page of an entry loads, by itself or later. */
function reached(bundle: Rolldown.OutputBundle, entry: string): ReadonlySet<string> {
  const names = new Set<string>();
  const todo = Object.values(bundle).flatMap((file) =>
    file.type === "chunk" && file.facadeModuleId?.endsWith(entry) === true ? [file.fileName] : [],
  );
  for (let name = todo.pop(); name !== undefined; name = todo.pop()) {
    if (names.has(name)) continue;
    names.add(name);
    const file = bundle[name];
    if (file?.type !== "chunk") continue;
    todo.push(...file.imports, ...file.dynamicImports, ...(file.viteMetadata?.importedCss ?? []));
  }
  return names;
}

/**
 * Writes `floor-sw.js`: the script that keeps the floor's page on a device, with the list of its files. A file that only
 * the other page loads is left out; whatever no page names, such as the worker's own, is in.
 */
export function floorFiles(): Plugin {
  return {
    name: "floor-files",
    apply: "build",
    enforce: "post",
    async generateBundle(_, bundle) {
      const [own, others] = [reached(bundle, "floor.html"), reached(bundle, "index.html")];
      if (own.size === 0) return;
      // Whoever finds faults beside the office's page is of no page's chunks, and yet nothing of the floor.
      const isOwn = (name: string): boolean =>
        FONTS.test(name) ||
        (/\.(js|css)$/.test(name) && !name.includes("finder.worker") && (own.has(name) || !others.has(name)));
      const paths = [
        "/floor.html",
        ...PUBLIC,
        ...Object.keys(bundle)
          .filter(isOwn)
          .map((name) => `/${name}`),
      ].sort();
      const page = Object.values(bundle).find(({ fileName }) => fileName === "floor.html");
      const hash = createHash("sha256").update(paths.join("\n"));
      if (page?.type === "asset") hash.update(page.source);
      const { code } = await transformWithOxc(readFileSync(SERVICE, "utf8"), SERVICE);
      const plain = code.replace(/^export \{\s*\};?$/m, "");
      const list = JSON.stringify({ version: hash.digest("hex").slice(0, 12), paths });
      this.emitFile({
        type: "asset",
        fileName: "floor-sw.js",
        source: `const FLOOR_FILES = ${list};\n${plain}`,
      });
    },
  };
}
