/** What the code in the corner of a sheet says. */
export interface SheetCode {
  readonly machine: string;
  readonly revision: string;
  readonly sheet: string;
  /** First digits of the hash of the sheet's body. */
  readonly hash: string;
}

const HASH = /^[0-9a-f]{12}$/u;

/**
 * Reads the code of a sheet: `pinwright:machine:revision:sheet:hash`, or an address that ends in
 * `/print#machine/revision/sheet/hash`. Null: it is none.
 */
export function readSheetCode(text: string): SheetCode | null {
  const page = /\/print#(.+)$/u.exec(text.trim());
  const plain = /^pinwright:([^:]*):(.*):([^:]+):([^:]+)$/u.exec(text.trim());
  const parts = page === null ? plain?.slice(1) : page[1]?.split("/").map(decoded);
  if (parts?.length !== 4) return null;
  const [machine = "", revision = "", sheet = "", hash = ""] = parts;
  return machine === "" || sheet === "" || !HASH.test(hash) ? null : { machine, revision, sheet, hash };
}

/** A part of an address as it was before it became one; blank: nobody wrote it so. */
function decoded(part: string): string {
  try {
    return decodeURIComponent(part);
  } catch {
    return "";
  }
}
