import type { SymbolShade } from "../../model/index.ts";

/**
 * Colour of each shade where colour is at hand: it only repeats what the drawing tells already. From the palette of
 * M. Okabe and K. Ito, "Color Universal Design" (2008): blue, black, vermilion and bluish green, the last two made
 * darker until they stand 4.5 : 1 against white (the contrast that WCAG 2.1 asks of text, success criterion 1.4.3).
 */
export const SHADE_COLOURS: Readonly<Record<SymbolShade, string>> = {
  solid: "#000000",
  open: "#0072b2",
  striped: "#b34d00",
  dotted: "#007a59",
};

/** The same for a dark ground: white, sky blue, orange and a light bluish green. */
export const SHADE_COLOURS_ON_DARK: Readonly<Record<SymbolShade, string>> = {
  solid: "#ffffff",
  open: "#56b4e9",
  striped: "#e69f00",
  dotted: "#2fc79a",
};
