/** A colour letter code of IEC 60757, with its place in the standard's table. */
export interface ColourCode {
  readonly order: number;
  readonly code: string;
  /** English name. Wording for people is in `words`. */
  readonly name: string;
}

/**
 * Letter codes of colours in the order of the standard's table. Source: IEC 757:1983 (GOST 28763-90, identical).
 * Green-and-yellow is one colour of its own: only the protective conductor wears it (IEC 60757:2021, 5.1).
 */
export const COLOUR_CODES: readonly ColourCode[] = (
  [
    ["BK", "black"],
    ["BN", "brown"],
    ["RD", "red"],
    ["OG", "orange"],
    ["YE", "yellow"],
    ["GN", "green"],
    ["BU", "blue"],
    ["VT", "violet"],
    ["GY", "grey"],
    ["WH", "white"],
    ["PK", "pink"],
    ["GD", "gold"],
    ["TQ", "turquoise"],
    ["SR", "silver"],
    ["GNYE", "green-and-yellow"],
  ] as const
).map(([code, name], i) => ({ order: i + 1, code, name }));

/** The code of the protective conductor. */
export const GREEN_AND_YELLOW = "GNYE";

const BY_CODE: ReadonlyMap<string, ColourCode> = new Map(COLOUR_CODES.map((c) => [c.code, c]));

/** The colour of a letter code, or null when the standard has no such code. */
export const colourOf = (code: string): ColourCode | null => BY_CODE.get(code) ?? null;

/**
 * Colours written together, as written: `WHRD` gives white, red (base, then stripe); `GNYE` is the one colour
 * green-and-yellow. Null when the text is not one or two codes of the standard, or names the same colour twice.
 */
export const splitColours = (text: string): readonly ColourCode[] | null => {
  const whole = colourOf(text);
  if (whole !== null) return [whole];
  if (text.length !== 4) return null;
  const base = colourOf(text.slice(0, 2));
  const stripe = colourOf(text.slice(2));
  return base === null || stripe === null || base === stripe ? null : [base, stripe];
};

/**
 * A striped wire as it is written: base, then stripe, as on the reel. Not the standard's order of the table: on
 * a wire the base is what is seen first, and WHRD is another wire than RDWH (common practice, no source).
 * @throws RangeError for a code that is not in the standard, for twice the same, and for green with yellow.
 */
export const joinBaseStripe = (base: string, stripe: string): string => joined(base, stripe);

/**
 * Two colours on one item in the order of the standard's table: red and blue is RDBU (IEC 60757:2021, 5.1).
 * @throws RangeError for a code that is not in the standard, for twice the same, and for green with yellow.
 */
export const joinInTableOrder = (a: string, b: string): string =>
  (colourOf(a)?.order ?? 0) <= (colourOf(b)?.order ?? 0) ? joined(a, b) : joined(b, a);

const joined = (a: string, b: string): string => {
  for (const code of [a, b]) {
    if (colourOf(code) === null || code.length !== 2) {
      throw new RangeError(`colour is "${code}", expected a two-letter code of IEC 60757`);
    }
  }
  if (a === b) throw new RangeError(`colour "${a}" is given twice, expected two different ones`);
  if ((a === "GN" && b === "YE") || (a === "YE" && b === "GN")) {
    throw new RangeError(
      'green with yellow is kept for the protective conductor, expected "GNYE" for that only',
    );
  }
  return a + b;
};
