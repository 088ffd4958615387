/**
 * How soon a page is of use when it is opened cold: a new browser, an empty cache, on loopback. And how much script it
 * loads for that, compressed; the engine's worker counts apart. Needs the app built (`./start` does it).
 * `npx tsx bench/first-paint.ts`
 */
import { spawn } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { cpus, loadavg, tmpdir, totalmem } from "node:os";
import { join } from "node:path";
import { chromium } from "playwright-core";
import { waitForServer } from "./wait-for-server.ts";

const root = join(import.meta.dirname, "..");
const PORT = 4195;
const ORIGIN = `http://127.0.0.1:${PORT}`;
const RUNS = 5;

/** Pages, with what has to be seen before one can begin, and before all is there. */
const PAGES = [
  { name: "start page", path: "/", useful: "main a[href^='/b/']", all: "main a[href^='/b/']" },
  {
    name: "Layout of Tidewatch",
    path: "/b/tidewatch/layout",
    useful: ".drawing .item",
    all: ".drawing .tail",
  },
] as const;

/** What runs in the page is text: this program is compiled without the types of a browser. */
const watchFor = (useful: string, all: string): string => `
  window.seenAt = {};
  const look = (now) => {
    for (const [name, selector] of [["useful", ${JSON.stringify(useful)}], ["all", ${JSON.stringify(all)}]])
      if (window.seenAt[name] === undefined && document.querySelector(selector) !== null)
        // What is in the document now is on the screen with the frame after this one.
        requestAnimationFrame(() => (window.seenAt[name] ??= performance.now()));
    requestAnimationFrame(look);
  };
  requestAnimationFrame(look);
`;

const SCRIPT_BYTES = `
  performance.getEntriesByType("resource")
    .filter((entry) => new URL(entry.name).pathname.endsWith(".js"))
    .map((entry) => [new URL(entry.name).pathname, entry.encodedBodySize])
`;

const median = (values: readonly number[]): number =>
  Math.round(values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)] ?? Number.NaN);

async function measure(page: (typeof PAGES)[number]) {
  const browser = await chromium.launch({
    executablePath: process.env.PINWRIGHT_CHROMIUM ?? "/usr/bin/chromium",
    args: ["--no-sandbox"],
  });
  const tab = await browser.newPage({ viewport: { width: 1440, height: 900 } });
  await tab.addInitScript(watchFor(page.useful, page.all));
  await tab.goto(`${ORIGIN}${page.path}`, { waitUntil: "commit" });
  // The page's own policy forbids code from text, which `waitForFunction` would be.
  await tab.waitForSelector(page.all, { state: "attached", timeout: 60_000 });
  await tab.waitForTimeout(500);
  const seen: unknown = await tab.evaluate("window.seenAt");
  const scripts: unknown = await tab.evaluate(SCRIPT_BYTES);
  const version = browser.version();
  await browser.close();
  const entries = (Array.isArray(scripts) ? scripts : []).map(([path, size]) => ({
    path: String(path),
    bytes: Number(size),
  }));
  const kB = (isWorker: boolean): number =>
    Math.round(
      entries
        .filter(({ path }) => path.includes("worker") === isWorker)
        .reduce((sum, { bytes }) => sum + bytes, 0) / 1000,
    );
  return { seen: seen as { useful: number; all: number }, scriptKb: kB(false), workerKb: kB(true), version };
}

const data = mkdtempSync(join(tmpdir(), "pinwright-bench-"));
const args = [
  "dist/server/main.mjs",
  "--data",
  data,
  "--port",
  String(PORT),
  "--network-port",
  String(PORT + 1),
];
const server = spawn(process.execPath, args, { cwd: root, stdio: "inherit" });
try {
  await waitForServer(ORIGIN);
  const results = [];
  let version = "";
  const load = Math.round((loadavg()[0] ?? 0) * 10) / 10;
  for (const page of PAGES) {
    const runs = [];
    for (let i = 0; i < RUNS; i++) runs.push(await measure(page));
    version = runs[0]?.version ?? version;
    results.push({
      page: page.name,
      usefulMs: {
        median: median(runs.map((r) => r.seen.useful)),
        most: Math.round(Math.max(...runs.map((r) => r.seen.useful))),
      },
      allMs: {
        median: median(runs.map((r) => r.seen.all)),
        most: Math.round(Math.max(...runs.map((r) => r.seen.all))),
      },
      scriptKb: runs[0]?.scriptKb,
      workerKb: runs[0]?.workerKb,
    });
  }
  const machine = `${cpus().length} cores, ${Math.round(totalmem() / 2 ** 30)} GiB, Node ${process.versions.node}, Chromium ${version}`;
  const text = `${JSON.stringify({ machine, loadAtStart: load, runs: RUNS, pages: results }, null, 2)}\n`;
  writeFileSync(join(import.meta.dirname, "results", "first-paint.json"), text);
  process.stdout.write(text);
} finally {
  server.kill("SIGTERM");
  await new Promise((done) => server.once("exit", done));
  rmSync(data, { recursive: true, force: true });
}
