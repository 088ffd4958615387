import { rows, type Topic } from "./author.ts";

/** Findings that the designer looked at and takes as they are, up to the size that was looked at. */
const BENDS = [
  ["wp.pt-104-388", "hs.light-sling-left", "ln.pt-104-388.pt-106-345", "ln.hole-top-81-145.pt-104-388"],
  ["wp.pt-235-40", "hs.light-front", "ln.hole-top-81-145.pt-235-40", "ln.pt-235-40.pt-150-60"],
  ["wp.pt-84-1058", "hs.light-rear", "ln.pt-84-1058.pt-116-1058", "ln.hole-top-439-1042.pt-84-1058"],
] as const;

export const accepted: Topic = {
  tables: {
    choices: rows(
      "choices",
      BENDS.map((subjects) => ({
        kind: "accept",
        subject: ["bend-tight", ...subjects].join("|"),
        by: "designer",
        reason:
          "Two or three thin wires that turn round a lamp post and never move; they are not tied at the turn.",
        basis: "diameter_mm<=3.6",
      })),
    ),
  },
};
