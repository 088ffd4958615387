import type { CellKind } from "@pinwright/book";

const YES = /^(?:y|yes|true|1|x|✓|是)$/i;
const NO = /^(?:n|no|false|0|否)$/i;

/** A number as the book writes it: without needless zeros. */
function tidyNumber(text: string): string {
  const match = /^([+-]?)0*(\d+)(?:\.(\d*))?$/.exec(text.startsWith(".") ? `0${text}` : text);
  if (match === null) return text;
  const [, sign = "", whole = "", fraction = ""] = match;
  const rest = fraction.replace(/0+$/, "");
  const number = rest === "" ? whole : `${whole}.${rest}`;
  return sign === "-" && Number(number) !== 0 ? `-${number}` : number;
}

/**
 * What a person entered as the cell keeps it. Texts stay as they are; anything else loses spaces around it, and
 * the wide digits and letters that a Chinese keyboard may give become plain ones.
 */
export function tidy(kind: CellKind, text: string): string {
  if (kind === "text" || kind === "label") return text.replace(/\r\n?/g, "\n");
  const plain = text.normalize("NFKC").trim().replace(/\s+/g, " ");
  if (kind === "number" || kind === "integer") return tidyNumber(plain);
  if (kind === "flag") return YES.test(plain) ? "yes" : NO.test(plain) ? "" : plain;
  return plain;
}
