import { readdir, readFile } from "node:fs/promises";
import { join, posix, relative, sep } from "node:path";

const TYPES: Readonly<Record<string, string>> = {
  html: "text/html; charset=utf-8",
  js: "text/javascript; charset=utf-8",
  css: "text/css; charset=utf-8",
  json: "application/json; charset=utf-8",
  webmanifest: "application/manifest+json; charset=utf-8",
  svg: "image/svg+xml; charset=utf-8",
  png: "image/png",
  ico: "image/x-icon",
  woff2: "font/woff2",
  ttf: "font/ttf",
  wasm: "application/wasm",
  txt: "text/plain; charset=utf-8",
  map: "application/json; charset=utf-8",
};

/** Places whose addresses may end in an id: within a book, and at a unit of the floor. */
const WITH_IDS = /^\/(b|floor\/u)\//;
/** The floor has a page of its own. */
const FLOOR = /^\/floor(\/|$)/;
/** Folder of files that have a hash of their content in their name. */
const HASHED = "/assets/";

const ENCODINGS = [
  { name: "br", ending: ".br" },
  { name: "gzip", ending: ".gz" },
] as const;

/** Forms of one file by encoding; the empty one is the file itself. */
type Forms = ReadonlyMap<string, Buffer>;

/**
 * The built app. Its files are read once, at the start: they are few, and a request only looks a name up, so that
 * no path leads anywhere else.
 */
export class StaticFiles {
  readonly #files: ReadonlyMap<string, Forms>;

  private constructor(files: ReadonlyMap<string, Forms>) {
    this.#files = files;
  }

  /** Reads the folder; null: there is none, or no page in it. */
  static async read(folder: string): Promise<StaticFiles | null> {
    const entries = await readdir(folder, { recursive: true, withFileTypes: true }).catch(() => []);
    const files = new Map<string, Map<string, Buffer>>();
    for (const entry of entries) {
      if (!entry.isFile()) continue;
      const file = join(entry.parentPath, entry.name);
      const path = posix.join("/", relative(folder, file).split(sep).join("/"));
      const packed = ENCODINGS.find(({ ending }) => path.endsWith(ending));
      const of = packed === undefined ? path : path.slice(0, -packed.ending.length);
      const forms = files.get(of) ?? new Map<string, Buffer>();
      forms.set(packed?.name ?? "", await readFile(file));
      files.set(of, forms);
    }
    return files.has("/index.html") ? new StaticFiles(files) : null;
  }

  /** The file of a path; the page for every path of the app; null for a file that is not there. */
  answer(request: Request): Response | null {
    const { pathname } = new URL(request.url);
    // A file of the app has an ending. Places may seem to have one: they end in ids, such as `hs.deck`.
    const isFile =
      (/\.[a-z0-9]+$/i.test(pathname) && !WITH_IDS.test(pathname)) || pathname.startsWith(HASHED);
    const page = FLOOR.test(pathname) && this.#files.has("/floor.html") ? "/floor.html" : "/index.html";
    const path = this.#files.has(pathname) ? pathname : isFile ? null : page;
    const forms = path === null ? undefined : this.#files.get(path);
    if (path === null || forms === undefined) return null;
    const accepted = request.headers.get("accept-encoding") ?? "";
    const encoding = ENCODINGS.find(
      ({ name }) => forms.has(name) && new RegExp(`\\b${name}\\b`).test(accepted),
    );
    const bytes = forms.get(encoding?.name ?? "");
    if (bytes === undefined) return null;
    const headers = new Headers({
      "content-type": TYPES[path.slice(path.lastIndexOf(".") + 1)] ?? "application/octet-stream",
      "content-length": String(bytes.byteLength),
      "cache-control": path.startsWith(HASHED) ? "public, max-age=31536000, immutable" : "no-cache",
      vary: "accept-encoding",
    });
    if (encoding !== undefined) headers.set("content-encoding", encoding.name);
    return new Response(new Uint8Array(bytes), { headers });
  }
}
