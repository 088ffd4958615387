import { createHash } from "node:crypto";
import { type Machine, packFiles, type SendOutPack } from "@pinwright/engine";
import { sheetWords } from "@pinwright/words";
import type { SheetOptions } from "../options.ts";
import { composeCheckSheet } from "../outside/check-sheet.ts";
import { composeOrderSheet, filesGrid, type SendOutOrder } from "../outside/order-sheet.ts";
import { gridCsv } from "./csv.ts";
import { renderPdf } from "./pdf.ts";

/** List of what is in a pack, with the hash of each file's bytes; the list itself is not in it. */
export const CONTENTS_FILE = "contents.csv";
export const ORDER_FILE = "order-sheet.pdf";

const sha256 = (bytes: Uint8Array): string => createHash("sha256").update(bytes).digest("hex");

/**
 * The files of a pack that is sent out, by their path in it: the order sheet, a first-article check sheet for each part
 * with marked dimensions, every drawing of the present revisions, and last the list of contents with hashes. The same
 * pack gives the same bytes.
 * @param bytesOf bytes of a drawing by its name in the folder of the book
 * @throws Error when the pack has faults, or a drawing's bytes are not those that the pack speaks of: nothing wrong is
 * ever sent out
 */
export function sendOutFiles(
  machine: Machine,
  pack: SendOutPack,
  order: SendOutOrder,
  options: SheetOptions,
  bytesOf: (file: string) => Uint8Array | undefined,
): ReadonlyMap<string, Uint8Array> {
  const [fault] = pack.faults;
  if (fault !== undefined)
    throw new Error(`The pack has faults: ${fault.partId} ${fault.what} ${fault.file}`);
  const language = options.language === "zh" ? "zh" : "en";
  const files = new Map([[ORDER_FILE, renderPdf(composeOrderSheet(machine, pack, order, options))]]);
  for (const part of pack.parts) {
    if (part.dimensions.length === 0) continue;
    const sheet = composeCheckSheet(machine, part.partId, null, options);
    if (sheet !== null) files.set(`${part.folder}/first-article.pdf`, renderPdf(sheet));
  }
  const listed = filesGrid(pack, language);
  const kind = sheetWords(language).outside;
  const ours = [...files].map(([path, bytes]) => {
    const part = pack.parts.find(({ folder }) => path.startsWith(`${folder}/`));
    const title = path === ORDER_FILE ? kind.order.title : kind.check.title;
    return [path, part?.partId ?? "", part?.revision ?? "", title, bytes.length, sha256(bytes)];
  });
  for (const { path, file, sha256: meant } of packFiles(pack)) {
    const bytes = bytesOf(file);
    if (bytes === undefined || sha256(bytes) !== meant)
      throw new Error(`The bytes of ${file} are not those that the pack speaks of.`);
    files.set(path, bytes);
  }
  const contents = `\ufeff${gridCsv({ header: listed.header, rows: [...ours, ...listed.rows] })}`;
  return files.set(CONTENTS_FILE, new TextEncoder().encode(contents));
}
