/**
 * How soon fault finding answers in a browser: the finder of the page that is shipped with a machine, in Chromium, asked
 * what random faults, one and two at a time, some with wrong ticks, would make a person say, and after every look that
 * it proposes then. `npx tsx bench/faults.ts`
 */
import { join } from "node:path";
import { emptyShop } from "@pinwright/book";
import { readBook } from "@pinwright/book/io";
import {
  type FaultFile,
  FaultFinder,
  type FaultSession,
  faultFileOf,
  Line,
  openFaultFile,
  Says,
  type Seen,
} from "@pinwright/engine";
import { seededRandom } from "@pinwright/kernel";
import { build } from "esbuild";
import { chromium } from "playwright-core";
import { median, tenth, writeResults } from "./measure.ts";

const root = join(import.meta.dirname, "..");
const FAULTS = 120;
const MOST_LOOKS = 12;
/** Ticks in a hundred that are wrong, in every third session. */
const WRONG_PERCENT = 2;

/** What people who look for faults say one after the other. */
function sessionsOf(file: FaultFile): readonly FaultSession[] {
  const opened = openFaultFile(file);
  const { model, table } = opened;
  const finder = new FaultFinder(opened);
  const says = new Says(model, table);
  const random = seededRandom(8);
  const any = (): number => Math.floor(random() * table.classes.length);
  const all: FaultSession[] = [];
  for (let n = 0; n < FAULTS; n++) {
    const classes = n % 2 === 0 ? [any()] : [any(), any()];
    const truth = classes.flatMap((c) => table.classes[c]?.suspects[0] ?? []);
    const seen = Object.fromEntries(
      model.functions.map(({ id }, f): readonly [string, Seen] => {
        const does = classes.flatMap((c) => table.classes[c]?.symptoms.get(f) ?? [])[0] ?? "works";
        const isWrong = n % 3 === 0 && random() * 100 < WRONG_PERCENT;
        return [id, isWrong ? (does === "works" ? "dead" : "works") : does];
      }),
    );
    let session: FaultSession = { seen, done: [] };
    for (let looked = 0; looked < MOST_LOOKS; looked++) {
      all.push(session);
      const { state, looks } = finder.answer(session);
      const look = state === "looking" ? looks[0]?.look : undefined;
      if (look === undefined) break;
      const isYes = (says.chance(look, truth) ?? 0) > 0.5;
      const done = { what: "looked", look, answer: isYes ? "yes" : "no" } as const;
      session = { seen, done: [...session.done, done] };
    }
  }
  return all;
}

/** What runs in the page is text: this program is compiled without the types of a browser. */
const ASK = `async ({ worker, file, sessions }) => {
  const finder = new Worker(URL.createObjectURL(new Blob([worker], { type: "text/javascript" })));
  const told = (wanted) => new Promise((done, failed) => {
    finder.onmessage = ({ data }) => {
      if (data.type === "failed") failed(new Error(data.message));
      if (data.type === wanted) done(data);
    };
  });
  const began = performance.now();
  const opened = told("opened");
  finder.postMessage({ type: "open", file });
  await opened;
  const openMs = performance.now() - began;
  const answersMs = [];
  for (const [id, session] of sessions.entries()) {
    const asked = performance.now();
    const answered = told("answer");
    finder.postMessage({ type: "ask", id, session });
    await answered;
    answersMs.push(performance.now() - asked);
  }
  return { openMs, answersMs };
}`;

const { outputFiles } = await build({
  entryPoints: [join(root, "packages/web/src/service-page/page/finder.worker.ts")],
  bundle: true,
  minify: true,
  write: false,
  format: "iife",
});
const worker = outputFiles[0]?.text ?? "";

const browser = await chromium.launch({
  executablePath: process.env.PINWRIGHT_CHROMIUM ?? "/usr/bin/chromium",
  args: ["--no-sandbox"],
});
const rows: Record<string, string | number>[] = [];
for (const example of ["first-light", "tidewatch"]) {
  const { book, shop } = await readBook(join(root, "examples", example));
  const file = faultFileOf(new Line().run(book, shop ?? emptyShop()));
  const sessions = sessionsOf(file);
  const page = await browser.newPage();
  const { openMs, answersMs }: { readonly openMs: number; readonly answersMs: readonly number[] } =
    await page.evaluate(`(${ASK})(${JSON.stringify({ worker, file, sessions })})`);
  await page.close();
  const sorted = answersMs.toSorted((p, q) => p - q);
  rows.push({
    what: example,
    functions: file.functions.length,
    suspects: file.suspects.length,
    open_ms: Math.round(openMs),
    answers: sorted.length,
    median_ms: tenth(median(sorted)),
    p99_ms: tenth(sorted[Math.floor(0.99 * (sorted.length - 1))] ?? 0),
    most_ms: tenth(sorted.at(-1) ?? 0),
  });
}
await browser.close();
writeResults("faults", rows);
