/** Serial numbers: `m-0001`, `b-000001`, `h-000001`, `a-000001`. */
const UNIT = /(?:^|[/=\s])([mbha]-\d{4,9})\b/iu;

/** The unit that a label names: its serial number, alone or within an address; null when it names none. */
export function unitInCode(text: string): string | null {
  return UNIT.exec(text.trim())?.[1]?.toLowerCase() ?? null;
}

/** A scanner that acts as a keyboard types faster than a hand: at most so long between two characters. */
const FAST_MS = 100;
const LEAST = 4;

/** Hears what a scanner types, wherever on the screen that goes; a hand is too slow to be taken for one. */
export class WedgeReader {
  #text = "";
  #last = Number.NEGATIVE_INFINITY;

  /** Takes a key; what was scanned when it ends a scan, else null. */
  press(key: string, atMs: number): string | null {
    const isFast = atMs - this.#last <= FAST_MS;
    this.#last = atMs;
    if (key === "Enter" || key === "Tab") {
      const text = isFast ? this.#text : "";
      this.#text = "";
      return text.length >= LEAST ? text : null;
    }
    // Shift and the like come between the characters of some scanners.
    if (key.length !== 1) return null;
    this.#text = isFast ? this.#text + key : key;
    return null;
  }
}

/** What a label of a bag or reel says: its lot, and the part where it names one. */
export interface LotLabel {
  readonly lot: string;
  readonly part: string | null;
}

/** Signs between the fields of a label with data identifiers; a scanner that acts as a keyboard may leave them out. */
const FIELD_ENDS = /\p{Cc}/u;
/** Data identifiers of ANSI MH10.8.2, from memory: 1T lot of the maker, T lot of the supplier; P, 1P part. */
const LOT_FIELD = /^(?:1T|T)(?=.)/u;
const PART_FIELD = /^(?:1P|P)(?=.)/u;
/** The same in brackets with the numbers of the GS1 General Specifications, from memory: (10) lot, (240) or (241) part. */
const GS1_LOT = /\(10\)([^()\p{Cc}]+)/u;
const GS1_PART = /\((?:240|241)\)([^()\p{Cc}]+)/u;

/** Reads the label of a bag or reel. What has no field that is known is a lot as a whole. */
export function lotInCode(code: string): LotLabel {
  const text = code.trim();
  const gs1 = GS1_LOT.exec(text)?.[1];
  if (gs1 !== undefined) return { lot: gs1.trim(), part: GS1_PART.exec(text)?.[1]?.trim() ?? null };
  const fields = text.split(FIELD_ENDS).map((field) => field.replace(/^\[\)>/u, "").trim());
  if (fields.length > 1) {
    const of = (mark: RegExp): string | null =>
      fields.find((field) => mark.test(field))?.replace(mark, "") ?? null;
    const lot = of(LOT_FIELD);
    if (lot !== null) return { lot, part: of(PART_FIELD) };
  }
  const query = /[?&]lot=([^&\s]+)/u.exec(text)?.[1];
  if (query !== undefined) {
    const part = /[?&]part=([^&\s]+)/u.exec(text)?.[1];
    return { lot: plain(query), part: part === undefined ? null : plain(part) };
  }
  return { lot: text, part: null };
}

/** A part of an address as it was meant; one that is broken stays as it is. */
function plain(part: string): string {
  try {
    return decodeURIComponent(part);
  } catch {
    return part;
  }
}
