/**
 * The service book of Tidewatch in each language, composed and written as PDF: seconds, pages, bytes.
 * `npx tsx bench/service-book.ts`
 */
import { join } from "node:path";
import { emptyShop } from "@pinwright/book";
import { readBook } from "@pinwright/book/io";
import { Line } from "@pinwright/engine";
import { composeServiceBook, USUAL_OPTIONS } from "@pinwright/sheets";
import { renderDocument } from "@pinwright/sheets/print";
import { once, tenth, timed, writeResults } from "./measure.ts";

const rows: Record<string, string | number>[] = [];
for (const example of ["first-light", "tidewatch"]) {
  const { book, shop } = await readBook(join(import.meta.dirname, "../examples", example));
  const line = new Line().run(book, shop ?? emptyShop());
  for (const language of ["en", "zh"] as const) {
    const options = { ...USUAL_OPTIONS, date: book.machine.date, language, unit: null };
    let document = composeServiceBook(line, options);
    const composing = once(() => {
      document = composeServiceBook(line, options);
    });
    const { ms: renderMs, result: pdf } = await timed(() => renderDocument(document, "pdf"));
    rows.push({
      what: `${example}, ${language}`,
      devices: line.machine.items.size,
      wires: [...line.harnesses.values()].reduce((sum, harness) => sum + harness.wires.length, 0),
      pages: document.pages.length,
      compose_s: tenth(composing.ms / 1000),
      compose_cpu_s: tenth(composing.cpuMs / 1000),
      pdf_s: tenth(renderMs / 1000),
      both_s: tenth((composing.ms + renderMs) / 1000),
      mib: tenth(pdf.length / 2 ** 20),
    });
  }
}
writeResults("service-book", rows);
