import { existsSync, readdirSync, readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { build, type Plugin as EsbuildPlugin } from "esbuild";
import type { Plugin } from "vite";

const SOURCE = join(import.meta.dirname, "src/service-page/page");
const PACKAGES = join(import.meta.dirname, "..");
/** Name of the empty page in the built app. */
const FILE = "service-page.html";

/** Entries of our packages by their names: `@pinwright/words/service` leads to its source. */
function entries(): ReadonlyMap<string, string> {
  const found = new Map<string, string>();
  for (const name of readdirSync(PACKAGES)) {
    const path = join(PACKAGES, name, "package.json");
    if (!existsSync(path)) continue;
    const manifest: unknown = JSON.parse(readFileSync(path, "utf8"));
    if (typeof manifest !== "object" || manifest === null || !("exports" in manifest)) continue;
    for (const [entry, file] of Object.entries(manifest.exports ?? {}))
      if (typeof file === "string")
        found.set(`@pinwright/${name}${entry.slice(1)}`, join(PACKAGES, name, file));
  }
  return found;
}

/** Our modules do nothing by being loaded: what nobody uses of them stays out of the page. */
const onlyUsed: EsbuildPlugin = {
  name: "only-used",
  setup: (building) => {
    const known = entries();
    building.onResolve({ filter: /^@pinwright\// }, ({ path }) => {
      const file = known.get(path);
      return file === undefined ? undefined : { path: file, sideEffects: false };
    });
    building.onResolve({ filter: /^\.{1,2}\/.*\.tsx?$/ }, ({ path, importer }) => ({
      path: join(dirname(importer), path),
      sideEffects: false,
    }));
  },
};

/** What an entry becomes: one script, and the styles that it asks for. */
async function bundled(entry: string): Promise<{ readonly js: string; readonly css: string }> {
  const { outputFiles } = await build({
    entryPoints: [join(SOURCE, entry)],
    bundle: true,
    write: false,
    outdir: "out",
    format: "iife",
    platform: "browser",
    target: "es2022",
    minify: true,
    legalComments: "none",
    jsx: "automatic",
    define: { "process.env.NODE_ENV": '"production"' },
    plugins: [onlyUsed],
    logLevel: "warning",
  });
  const ending = (name: string): string => outputFiles.find(({ path }) => path.endsWith(name))?.text ?? "";
  return { js: ending(".js"), css: ending(".css") };
}

/** A script inside a page ends at the first thing that looks like its end. */
const inPage = (script: string): string =>
  script.replaceAll("</script", "<\\/script").replaceAll("<!--", "<\\!--");

async function emptyPage(): Promise<string> {
  const [page, finder] = await Promise.all([bundled("main.tsx"), bundled("finder.worker.ts")]);
  // Nothing is loaded from anywhere: the browser itself sees to it.
  const policy =
    "default-src 'none'; script-src 'unsafe-inline' blob:; worker-src blob:; style-src 'unsafe-inline'; img-src data:";
  return [
    "<!doctype html>",
    '<html lang="en" data-language="@@language@@">',
    "<head>",
    '<meta charset="utf-8">',
    '<meta name="viewport" content="width=device-width, initial-scale=1">',
    `<meta http-equiv="Content-Security-Policy" content="${policy}">`,
    "<title>Fault finding · 查找故障</title>",
    `<style>${page.css}</style>`,
    "</head>",
    "<body>",
    '<div id="app"></div>',
    "<noscript>This page needs JavaScript. 本页需要启用 JavaScript。</noscript>",
    '<script type="application/json" id="fault-file">@@fault-file@@</script>',
    `<script type="text/plain" id="finder-code">${inPage(finder.js)}</script>`,
    `<script>${inPage(page.js)}</script>`,
    "</body>",
    "</html>",
    "",
  ].join("\n");
}

/** Writes `service-page.html`: the empty page of fault finding, in one file that works without a network. */
export function servicePageFile(): Plugin {
  return {
    name: "service-page-file",
    apply: "build",
    async generateBundle() {
      this.emitFile({ type: "asset", fileName: FILE, source: await emptyPage() });
    },
  };
}
