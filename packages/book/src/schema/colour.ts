/** Colour letters of IEC 60757, with their names. */
export const COLOUR_NAMES = {
  BK: "black",
  BN: "brown",
  RD: "red",
  OG: "orange",
  YE: "yellow",
  GN: "green",
  BU: "blue",
  VT: "violet",
  GY: "grey",
  WH: "white",
  PK: "pink",
  GD: "gold",
  TQ: "turquoise",
  SR: "silver",
} as const;

export type ColourCode = keyof typeof COLOUR_NAMES;

/** The fourteen codes of IEC 60757 in the order of the standard. `GNYE` is two of them, green with yellow. */
export const COLOUR_CODES = Object.keys(COLOUR_NAMES);
