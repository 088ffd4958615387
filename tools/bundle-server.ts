import { existsSync, readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { build, type Plugin } from "esbuild";

const root = join(import.meta.dirname, "..");
const packages = join(root, "packages");

/** Entries of our packages: `@pinwright/book/io` leads to its source. */
function aliases(): Record<string, string> {
  const found: [string, string][] = [];
  for (const name of readdirSync(packages)) {
    const manifest: unknown = JSON.parse(readFileSync(join(packages, name, "package.json"), "utf8"));
    if (typeof manifest !== "object" || manifest === null || !("exports" in manifest)) continue;
    for (const [entry, file] of Object.entries(manifest.exports ?? {}))
      if (typeof file === "string")
        found.push([`@pinwright/${name}${entry.slice(1)}`, join(packages, name, file)]);
  }
  // The longest first: an alias also takes what begins with it.
  return Object.fromEntries(found.sort(([a], [b]) => b.length - a.length));
}

/**
 * Packages from npm stay outside, except those that npm put below one of ours, because another version stands above:
 * from the bundle they would not be found.
 */
const outside: Plugin = {
  name: "outside",
  setup: (build) => {
    build.onResolve({ filter: /^[^./]/ }, ({ path, importer, kind }) => {
      // What is bundled and still asks by `require` is old and plain: that goes in too.
      if (path.startsWith("@pinwright/") || path.startsWith("node:") || kind === "require-call")
        return undefined;
      const [scope = "", name = ""] = path.split("/");
      const own = importer.split(/[\\/]packages[\\/]/)[1]?.split(/[\\/]/)[0] ?? "";
      const folder = join(packages, own, "node_modules", scope.startsWith("@") ? `${scope}/${name}` : scope);
      return existsSync(folder) ? undefined : { path, external: true };
    });
  },
};

/**
 * Bundles the server for running: `main.mjs` and the thread beside it. Our packages go in, so that nothing is compiled at
 * the start. The folder must lie where Node finds the packages that stay outside.
 */
export async function bundleServer(folder: string): Promise<void> {
  await build({
    entryPoints: {
      main: join(packages, "server/src/main.ts"),
      worker: join(packages, "server/src/threads/worker.ts"),
    },
    outdir: folder,
    outExtension: { ".js": ".mjs" },
    bundle: true,
    splitting: true,
    format: "esm",
    platform: "node",
    target: "node20",
    plugins: [outside],
    alias: aliases(),
    sourcemap: true,
    logLevel: "warning",
  });
}
