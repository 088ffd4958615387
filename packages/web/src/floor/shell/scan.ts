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
