/**
 * The Layout section in headless Chromium, on the real app: a switch of Tidewatch is dragged, and panels are panned
 * with the middle button: on Tidewatch as a whole and from near, on a book of four times its size, and on one where
 * all four copies lie on the same panels. Needs the app built (`npm run build:web`, or PINWRIGHT_WEB).
 * `npx tsx bench/layout.ts`
 */
import { spawn } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { cpus, loadavg, tmpdir, totalmem } from "node:os";
import { join } from "node:path";
import { type Book, multiplyBook } from "@pinwright/book";
import { readBook, writeBook } from "@pinwright/book/io";
import { importResultSchema, statusSchema, TOKEN_HEADER } from "@pinwright/contract";
import { type Browser, chromium, type Page } from "playwright-core";
import { waitForServer } from "./wait-for-server.ts";

const root = join(import.meta.dirname, "..");
const PORT = 4197;
const ORIGIN = `http://127.0.0.1:${PORT}`;
const SWITCH = "sw.inlane-left";
/** Half a circle of the pointer about the switch takes so many moves, one a frame. */
const MOVES = 240;
const PANS = 240;
const TIMES = 4;

const at = (sorted: readonly number[], share: number): number =>
  Math.round((sorted[Math.min(sorted.length - 1, Math.floor(sorted.length * share))] ?? Number.NaN) * 10) /
  10;

interface Spread {
  readonly count: number;
  readonly p50Ms: number;
  readonly p95Ms: number;
  readonly mostMs: number;
}

function spread(values: readonly number[]): Spread {
  const sorted = values.toSorted((a, b) => a - b);
  return { count: sorted.length, p50Ms: at(sorted, 0.5), p95Ms: at(sorted, 0.95), mostMs: at(sorted, 1) };
}

const numbers = (value: unknown): readonly number[] => (Array.isArray(value) ? value.map(Number) : []);

// What runs in the page is text: this program is compiled without the types of a browser.
const COUNT_FRAMES = `
  window.frameTimes = [];
  window.counting = true;
  const tick = (now) => {
    window.frameTimes.push(now);
    if (window.counting) requestAnimationFrame(tick);
  };
  requestAnimationFrame(tick);
`;

/** Moves of the pointer, one with each frame, from the page itself: the way from here to the browser is not measured. */
const movePointer = (x: number, y: number, radius: number, count: number, button: 0 | 1 = 0): string => `
  new Promise((done) => {
    const drawing = document.querySelector(".drawing");
    const send = (type, clientX, clientY) =>
      drawing.dispatchEvent(
        new PointerEvent(type, {
          bubbles: true, pointerId: 1, pointerType: "mouse", isPrimary: true, clientX, clientY,
          button: ${button}, buttons: ${button === 0 ? 1 : 4},
        }),
      );
    // A pointer that no hand moves cannot be captured.
    drawing.setPointerCapture = () => undefined;
    let i = 0;
    const step = () => {
      i++;
      const angle = (i / 60) * Math.PI;
      send("pointermove", ${x} + ${radius} * Math.sin(angle), ${y} + ${radius} * (1 - Math.cos(angle)));
      if (i < ${count}) return requestAnimationFrame(step);
      send("pointerup", ${x}, ${y});
      done();
    };
    send("pointerdown", ${x}, ${y});
    requestAnimationFrame(step);
  })
`;

/** Frames while something goes on: how many a second, and how long they took. */
async function frames(page: Page, work: string): Promise<{ readonly fps: number; readonly frame: Spread }> {
  await page.evaluate(COUNT_FRAMES);
  await page.evaluate(work);
  const times = numbers(await page.evaluate("window.counting = false, window.frameTimes"));
  const gaps = times.slice(1).map((time, i) => time - (times[i] ?? time));
  const span = (times.at(-1) ?? 0) - (times[0] ?? 0);
  return { fps: Math.round((gaps.length / span) * 10_000) / 10, frame: spread(gaps) };
}

async function open(browser: Browser, path: string): Promise<Page> {
  const page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
  await page.goto(`${ORIGIN}${path}`);
  await page.waitForSelector(".drawing .item", { timeout: 120_000 });
  await page.waitForTimeout(2_000);
  return page;
}

async function drag(browser: Browser) {
  const page = await open(browser, `/b/tidewatch/layout?id=${SWITCH}`);
  const box = await page.locator(".drawing .chosen").boundingBox();
  if (box === null) throw new Error(`${SWITCH} is not on the drawing`);
  const [x, y] = [box.x + box.width / 2, box.y + box.height / 2];
  // The first drag warms up what a browser compiles while it runs.
  await page.evaluate(movePointer(x, y, 40, 60));
  await page.waitForTimeout(1_500);
  await page.evaluate("performance.clearMeasures()");
  const { fps, frame } = await frames(page, movePointer(x, y, 40, MOVES));
  await page.waitForTimeout(500);
  const waits = numbers(
    await page.evaluate(
      `performance.getEntriesByName("pinwright: move to figures").map((entry) => entry.duration)`,
    ),
  );
  await page.close();
  return { fps, frame, moveToFigures: spread(waits), moves: MOVES };
}

async function pan(browser: Browser, path: string, wheelFirst: boolean) {
  const page = await open(browser, path);
  const box = await page.locator(".drawing").boundingBox();
  if (box === null) throw new Error("there is no drawing");
  if (wheelFirst) {
    await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
    for (let i = 0; i < 6; i++) await page.mouse.wheel(0, -120);
    await page.waitForTimeout(500);
  }
  const elements = await page.locator(".drawing *").count();
  const measured = await frames(page, movePointer(box.x + 12, box.y + 12, 150, PANS, 1));
  await page.close();
  return { ...measured, elements };
}

/** The copies of a book that was multiplied, all on the panels of the first one. */
function onTheSamePanels(book: Book): Book {
  const tables = Object.entries(book.tables).map(([name, rows]) => [
    name,
    rows.map((row: object) =>
      "panel" in row && typeof row.panel === "string"
        ? { ...row, panel: row.panel.replace(/\.copy\d+$/, "") }
        : row,
    ),
  ]);
  // Only names of panels were changed to names of other panels.
  return { ...book, tables: Object.fromEntries(tables) as Book["tables"] };
}

/** Makes a book of a file; gives the name that it got. */
async function importBook(name: string, file: string): Promise<string> {
  const asked = await fetch(`${ORIGIN}/api/status`);
  const cookie = asked.headers.get("set-cookie")?.split(";")[0] ?? "";
  const { token } = statusSchema.parse(await asked.json());
  const response = await fetch(`${ORIGIN}/api/import?name=${name}`, {
    method: "POST",
    headers: {
      "content-type": "application/octet-stream",
      origin: ORIGIN,
      cookie,
      [TOKEN_HEADER]: token ?? "",
    },
    body: new Uint8Array(readFileSync(file)),
  });
  if (!response.ok) throw new Error(`import: ${response.status} ${await response.text()}`);
  const { book } = importResultSchema.parse(await response.json());
  if (book === null) throw new Error("the book was not taken in");
  return book;
}

const data = mkdtempSync(join(tmpdir(), "pinwright-bench-"));
const server = spawn(
  process.execPath,
  [
    "--import",
    "tsx",
    "packages/server/src/main.ts",
    "--data",
    data,
    "--port",
    String(PORT),
    "--network-port",
    String(PORT + 1),
  ],
  { cwd: root, stdio: "inherit" },
);
try {
  await waitForServer(ORIGIN);
  const { book, shop } = await readBook(join(root, "examples/tidewatch"));
  const bring = async (id: string, copies: Book): Promise<string> => {
    const file = join(data, `${id}.zip`);
    await writeBook(file, { ...copies, machine: { ...book.machine, id } }, shop);
    return importBook(`${id}.zip`, file);
  };
  const copies = multiplyBook(book, TIMES);
  const largeId = await bring("large", copies);
  const denseId = await bring("dense", onTheSamePanels(copies));
  const browser = await chromium.launch({
    executablePath: process.env.PINWRIGHT_CHROMIUM ?? "/usr/bin/chromium",
    args: ["--no-sandbox"],
  });
  const load = Math.round((loadavg()[0] ?? 0) * 10) / 10;
  const results = {
    machine: `${cpus().length} cores, ${Math.round(totalmem() / 2 ** 30)} GiB, Node ${process.versions.node}, Chromium ${browser.version()}`,
    loadAtStart: load,
    dragOnTidewatch: await drag(browser),
    panTidewatch: await pan(browser, "/b/tidewatch/layout/playfield/under", false),
    panTidewatchNear: await pan(browser, "/b/tidewatch/layout/playfield/under", true),
    panFourTimes: await pan(browser, `/b/${largeId}/layout/playfield/under`, false),
    panFourTimesNear: await pan(browser, `/b/${largeId}/layout/playfield/under`, true),
    panFourTimesAsDense: await pan(browser, `/b/${denseId}/layout/playfield/under`, false),
    panFourTimesAsDenseNear: await pan(browser, `/b/${denseId}/layout/playfield/under`, true),
  };
  await browser.close();
  const text = `${JSON.stringify(results, null, 2)}\n`;
  writeFileSync(join(import.meta.dirname, "results", "layout.json"), text);
  process.stdout.write(text);
} finally {
  server.kill("SIGTERM");
  await new Promise((done) => server.once("exit", done));
  rmSync(data, { recursive: true, force: true });
}
