import type { StreamHead } from "@pinwright/contract";
import { WrongCall } from "../settings.ts";

/** First word of what a code on a certificate holds. */
const MARK = "pinwright-heads";
/** Fewest digits of a hash that tell one from another: the short form on a certificate has so many. */
const LEAST_DIGITS = 12;

/** A head as somebody gives it: the hash whole, or as many digits of its beginning as were copied. */
export type GivenHead = StreamHead;

/**
 * Heads out of a text: what the codes of certificates hold, one after the other, or lines copied by hand, `stream number
 * hash`, the hash with or without spaces, whole or at least its first 12 digits.
 * @throws WrongCall naming the first line that is none
 */
export function headsOfText(text: string): readonly GivenHead[] {
  return text.split(/\r?\n/).flatMap((line, i) => {
    // A scanner program puts the kind of code before what it holds.
    const words = line
      .replace(/^\s*QR-?Code:/i, "")
      .trim()
      .split(/\s+/);
    const [stream = "", number = "", ...digits] = words;
    if (stream === "" || stream === MARK) return [];
    const hash = digits.join("").toLowerCase();
    const isHead = /^[1-9]\d{0,9}$/.test(number) && /^[0-9a-f]+$/.test(hash) && hash.length <= 64;
    if (!isHead || hash.length < LEAST_DIGITS)
      throw new WrongCall(
        `line ${i + 1}, “${line.trim().slice(0, 80)}”: expected a stream, a number and a hash of at least ${LEAST_DIGITS} digits`,
      );
    return [{ stream, seq: Number(number), hash }];
  });
}
