import type { Ink } from "./mark.ts";

/** sRGB of each ink. In black and white `accent` prints as a dark grey: nothing is told by colour alone. */
export const INK_COLOURS: Readonly<Record<Ink, string>> = {
  ink: "#16191b",
  accent: "#0b5d6b",
  faint: "#8b9297",
  tint: "#eaf0f1",
  paper: "#ffffff",
};
