import { mkdir, mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { brotliCompressSync, gzipSync } from "node:zlib";
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { StaticFiles } from "./static-files.ts";

describe("StaticFiles", () => {
  let folder = "";
  let files: StaticFiles | null = null;
  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), "pinwright-static-"));
    await mkdir(join(folder, "web", "assets"), { recursive: true });
    await writeFile(join(folder, "secret.txt"), "secret");
    await writeFile(join(folder, "web", "index.html"), "<!doctype html>page");
    await writeFile(join(folder, "web", "floor.html"), "<!doctype html>floor");
    await writeFile(join(folder, "web", "assets", "app-1a2b.js"), "script");
    await writeFile(join(folder, "web", "assets", "app-1a2b.js.br"), brotliCompressSync("script"));
    await writeFile(join(folder, "web", "assets", "app-1a2b.js.gz"), gzipSync("script"));
    files = await StaticFiles.read(join(folder, "web"));
  });
  afterAll(() => rm(folder, { recursive: true, force: true }));

  const ask = (path: string, accepts = ""): Response | null =>
    files?.answer(new Request(`http://127.0.0.1${path}`, { headers: { "accept-encoding": accepts } })) ??
    null;

  it("gives the page for every place in the app, and asks for it anew each time", async () => {
    for (const path of ["/", "/books/tidewatch/layout", "/books/tidewatch/tables/devices"]) {
      const response = ask(path);
      expect(await response?.text()).toBe("<!doctype html>page");
      expect(response?.headers.get("cache-control")).toBe("no-cache");
    }
  });

  it("gives files with a hash in their name for ever, packed as the browser takes them", async () => {
    const cases = [
      ["", null],
      ["gzip, deflate", "gzip"],
      ["gzip, deflate, br", "br"],
    ] as const;
    for (const [accepts, encoding] of cases) {
      const response = ask("/assets/app-1a2b.js", accepts);
      expect(response?.headers.get("content-encoding")).toBe(encoding);
      expect(response?.headers.get("content-type")).toContain("text/javascript");
      expect(response?.headers.get("cache-control")).toContain("immutable");
    }
  });

  it("gives the page for a place in a book, which may end in an id with dots", async () => {
    const page = await ask("/")?.text();
    expect(page).toBeTruthy();
    for (const path of ["/b/first-light/harnesses", "/b/first-light/harnesses/hs.deck"])
      expect(await ask(path)?.text()).toBe(page);
  });

  it("gives the floor its own page, and no other place", async () => {
    for (const path of [
      "/floor",
      "/floor/",
      "/floor/u/b-000001",
      "/floor/u/m-0001/k/test%20m-0001%20t.switches",
    ])
      expect(await ask(path)?.text()).toBe("<!doctype html>floor");
    expect(await ask("/floors")?.text()).toBe("<!doctype html>page");
    expect(ask("/floor/old.js")).toBeNull();
  });

  it("gives nothing for a file that is not there, and nothing from outside of its folder", () => {
    const paths = [
      "/assets/app-old.js",
      "/favicon.ico",
      "/../secret.txt",
      "/..%2fsecret.txt",
      "/assets/..%5c..%5csecret.txt",
      "/assets/",
    ];
    for (const path of paths) expect(ask(path)).toBeNull();
  });

  it("is not there without a page", async () => {
    expect(await StaticFiles.read(join(folder, "none"))).toBeNull();
    expect(await StaticFiles.read(folder)).toBeNull();
  });
});
