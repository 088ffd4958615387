import { sha256 } from "@noble/hashes/sha2.js";
import { bytesToHex, utf8ToBytes } from "@noble/hashes/utils.js";
import { leavesOf } from "./leaves.ts";
import type { Mark } from "./mark.ts";

/**
 * JSON with keys in code-point order and numbers rounded to a micrometre, so that equal drawings give equal bytes
 * whatever made them.
 */
export function canonical(value: unknown): string {
  if (typeof value === "number") return String(Math.round(value * 1000) / 1000 + 0);
  if (Array.isArray(value)) return `[${value.map(canonical).join(",")}]`;
  if (typeof value === "object" && value !== null) {
    const entries = Object.entries(value).filter(([, v]) => v !== undefined);
    entries.sort(([a], [b]) => (a < b ? -1 : a > b ? 1 : 0));
    return `{${entries.map(([k, v]) => `${JSON.stringify(k)}:${canonical(v)}`).join(",")}}`;
  }
  return JSON.stringify(value) ?? "null";
}

/** SHA-256 (FIPS 180-4) of a text in UTF-8, in hexadecimal. */
export function textHash(text: string): string {
  return bytesToHex(sha256(utf8ToBytes(text)));
}

/** Hash of what pages say: everything but the groups that hold date, sheet count and code. */
export function bodyHash(pages: readonly { readonly marks: readonly Mark[] }[]): string {
  const said = pages.map((page) =>
    leavesOf(page.marks)
      .filter((placed) => !placed.frame)
      .map(({ leaf, clip }) => (clip === null ? leaf : [leaf, clip])),
  );
  return textHash(canonical(said));
}
