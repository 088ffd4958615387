/**
 * All harness sheets of Tidewatch, and those of the whole machine, in every format, in one process: seconds, files, bytes and the most memory.
 * `npx tsx bench/sheets.ts`
 */
import { join } from "node:path";
import { emptyShop } from "@pinwright/book";
import { readBook } from "@pinwright/book/io";
import { Line } from "@pinwright/engine";
import { composeHarnessSheets, composeMachineSheets, USUAL_OPTIONS } from "@pinwright/sheets";
import { formatsOf, renderDocument } from "@pinwright/sheets/print";
import { timed, writeResults } from "./measure.ts";

const { book, shop } = await readBook(join(import.meta.dirname, "../examples/tidewatch"));
const result = new Line().run(book, shop ?? emptyShop());
const rows: Record<string, string | number>[] = [];
const KINDS = { harness: composeHarnessSheets, machine: composeMachineSheets } as const;
for (const language of ["en", "both"] as const)
  for (const kind of ["harness", "machine"] as const) {
    const options = { ...USUAL_OPTIONS, language, date: book.machine.date };
    let files = 0;
    let bytes = 0;
    let pages = 0;
    let mostRss = 0;
    let composeMs = 0;
    let before = performance.now();
    const { ms } = await timed(async () => {
      for (const document of KINDS[kind](result, options)) {
        composeMs += performance.now() - before;
        pages += document.pages.length;
        for (const format of formatsOf(document)) {
          bytes += (await renderDocument(document, format)).length;
          files++;
        }
        mostRss = Math.max(mostRss, process.memoryUsage().rss);
        before = performance.now();
      }
    });
    rows.push({
      what: `all ${kind} sheets, ${language}`,
      seconds: Math.round(ms / 100) / 10,
      of_it_composing_s: Math.round(composeMs / 100) / 10,
      harnesses: result.harnesses.size,
      files,
      pages,
      mib: Math.round((bytes / 2 ** 20) * 10) / 10,
      most_rss_mib: Math.round(mostRss / 2 ** 20),
    });
  }
writeResults("sheets", rows);
