import type { SheetFact } from "@pinwright/engine";
import type { SheetDocument } from "./compose/document.ts";

/**
 * What tells whether a sheet is another than before, in the language that it was composed in; its id has no language.
 * @param of harness, or `machine`
 */
export const sheetFactOf = (
  of: string,
  kind: string,
  { id, title, language, identity, bodyHash, pageHashes }: SheetDocument,
): SheetFact => ({
  id: id.endsWith(`.${language}`) ? id.slice(0, -language.length - 1) : id,
  ...{ kind, of, title, number: identity.number, bodyHash, pageHashes },
});
