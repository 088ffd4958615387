/** Colours of IEC 60757 by their letter codes. */
export const colours = {
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
};
