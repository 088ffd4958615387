import { writeFileSync } from "node:fs";
import { join } from "node:path";
import { rawBookOf, rawShopOf, readRawBook, readRawShop } from "@pinwright/book";
import { SERVICE_BOOK_STAGES, type ServiceBookGuide, type ServiceBookTexts } from "@pinwright/contract";
import { Line, type LineResult } from "@pinwright/engine";
import {
  composeServiceBook,
  guideOf,
  keepSheet,
  keptSheet,
  pageSvg,
  pageTexts,
  type SheetDocument,
  USUAL_OPTIONS,
} from "@pinwright/sheets";
import { renderDocument } from "@pinwright/sheets/print";
import { SERVICE_BOOK_FILES, servicePageFile } from "../service-book/files.ts";
import { cellsOfJson } from "./cells-json.ts";
import type { Progress, ResultOf, Task } from "./messages.ts";

type ServiceBookTask = Extract<Task, { kind: "service-book" }>;
type Given = NonNullable<ServiceBookTask["given"]>;

/** Writes all that is shown of a service book into a folder: its pages, what stands on them, and the PDF. */
export async function makeServiceBook(
  { folder, kept, given }: ServiceBookTask,
  tell: (progress: Progress) => void,
): Promise<ResultOf<"service-book">> {
  const at = (stage: (typeof SERVICE_BOOK_STAGES)[number]): void =>
    tell({
      type: "progress",
      done: SERVICE_BOOK_STAGES.indexOf(stage),
      total: SERVICE_BOOK_STAGES.length,
      now: stage,
    });
  const write = (name: string, text: string | Uint8Array): void =>
    writeFileSync(join(folder, name), text, { mode: 0o600 });
  at("book");
  const document = kept === null ? composed(given, at) : keptSheet(kept.body, kept.frame);
  at("files");
  if (kept === null) write(SERVICE_BOOK_FILES.kept, JSON.stringify(keepSheet(document)));
  const guide = guideOf(document.pages);
  const shown: ServiceBookGuide = {
    title: document.title,
    outline: [...guide.outline],
    pages: document.pages.map(({ widthMm, heightMm }, i) => ({
      widthMm,
      heightMm,
      links: (guide.links[i] ?? []).map(({ box, to, text }) => ({ ...box, to, text })),
    })),
  };
  write(SERVICE_BOOK_FILES.guide, JSON.stringify(shown));
  const texts: ServiceBookTexts = document.pages.map((page) =>
    pageTexts(page).map(({ text, box }) => ({ text, ...box })),
  );
  write(SERVICE_BOOK_FILES.texts, JSON.stringify(texts));
  document.pages.forEach((page, i) => {
    write(servicePageFile(i + 1), pageSvg(page, `${document.title}, ${i + 1}`));
  });
  const pdf = await renderDocument(document, "pdf");
  write(SERVICE_BOOK_FILES.pdf, pdf);
  return { title: document.title, pages: document.pages.length, bytes: pdf.byteLength };
}

/** The line that was derived last: the other language of a book is asked for next, more often than not. */
let last: { readonly key: string; readonly line: LineResult } | null = null;

function lineOf(given: Given, at: (stage: (typeof SERVICE_BOOK_STAGES)[number]) => void): LineResult {
  const { key, options } = given;
  if (last?.key === key) return last.line;
  const { book } = readRawBook(rawBookOf(cellsOfJson(given.tables)).raw);
  const { shop } = readRawShop(rawShopOf(cellsOfJson(given.shop)).raw, new Set());
  at("line");
  const line = new Line().run(book, shop, options.length === 0 ? undefined : new Set(options));
  last = { key, line };
  return line;
}

function composed(
  given: Given | null,
  at: (stage: (typeof SERVICE_BOOK_STAGES)[number]) => void,
): SheetDocument {
  if (given === null) throw new Error("A service book is made from a book, or was kept.");
  const line = lineOf(given, at);
  at("pages");
  const { language, revision, state, date, creator, address, unit } = given;
  return composeServiceBook(line, {
    ...USUAL_OPTIONS,
    ...{ language, revision, state, date, address, unit },
    creator: creator === "" ? USUAL_OPTIONS.creator : creator,
  });
}
