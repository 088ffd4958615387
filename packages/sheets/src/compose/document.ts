import type { SheetLanguage } from "@pinwright/words";
import { bodyHashes } from "./body-hash.ts";
import type { Grid } from "./grid.ts";
import type { Mark, Page, PagePoint } from "./mark.ts";
import { frameOf, type Paper } from "./paper.ts";
import { frameMarks, type Identity } from "./title-block.ts";

/** One sheet, composed: what SVG, PDF, DXF, XLSX and CSV are written from. */
export interface SheetDocument {
  /** `<harness>.<kind>`, with the format of a drawing where there are several. */
  readonly id: string;
  /** Name of its files without the extension. */
  readonly fileName: string;
  /** Title in the languages of the sheet, in one line. */
  readonly title: string;
  readonly language: SheetLanguage;
  readonly pages: readonly Page[];
  /**
   * SHA-256 of what it says, without what differs between prints that say the same: revision, state, date, who made and
   * approved it, sheet count and code.
   */
  readonly bodyHash: string;
  /** The same of each page. */
  readonly pageHashes: readonly string[];
  /** Text of the code in its corner. */
  readonly code: string;
  /** The same content as rows, for spreadsheets; empty for a drawing. */
  readonly grids: readonly Grid[];
  readonly identity: Identity;
  /** Set when the first page is a true-scale drawing that DXF is written of: the place that is 0, 0 there. */
  readonly drawing: { readonly origin: PagePoint } | null;
}

/** A page without its frame. */
export interface PageBody {
  readonly paper: Paper;
  readonly marks: readonly Mark[];
}

/** First digits of a body hash that the code of a sheet holds. */
const CODE_DIGITS = 12;

/**
 * The text that the code in the corner of a sheet holds: machine, revision, sheet, first digits of its hash. Where a
 * server answers on the network it is the address of the page that tells whether the print still holds.
 */
function codeText(identity: Identity, hash: string): string {
  const parts = [identity.machineId, identity.revision, identity.sheetId, hash.slice(0, CODE_DIGITS)];
  return identity.address === ""
    ? `pinwright:${parts.join(":")}`
    : `${identity.address}/print#${parts.map(encodeURIComponent).join("/")}`;
}

/**
 * Puts frames with title blocks round the bodies of a sheet. The body hash also covers what the title block says of
 * what is shown (machine, title, number, scale), so that a sheet of a later revision that says the same has the same.
 */
export function assemble(
  identity: Identity,
  language: SheetLanguage,
  bodies: readonly PageBody[],
  grids: readonly Grid[],
): SheetDocument {
  const frame = (body: PageBody, sheet: number, code: string): Mark[] =>
    frameMarks(identity, language, frameOf(body.paper), { sheet, of: bodies.length, code });
  // Frames of the sheets after the first differ in what the hash leaves out.
  const hashed = new Map<string, Mark[]>();
  const hashes = bodyHashes(
    bodies.map((body, i) => {
      const key = `${body.paper.widthMm} ${body.paper.heightMm} ${i === 0}`;
      const own = hashed.get(key) ?? frame(body, Math.min(i, 1) + 1, "");
      hashed.set(key, own);
      return { ...body.paper, marks: [...body.marks, ...own] };
    }),
  );
  const code = codeText(identity, hashes.all);
  return {
    id: identity.sheetId,
    fileName: identity.fileName,
    title: identity.documentTitle,
    language,
    pages: bodies.map(
      (body, i): Page => ({
        ...body.paper,
        marks: [...body.marks, ...frame(body, i + 1, code)],
        bodyMarks: body.marks.length,
      }),
    ),
    bodyHash: hashes.all,
    pageHashes: hashes.pages,
    code,
    grids,
    identity,
    drawing: null,
  };
}
