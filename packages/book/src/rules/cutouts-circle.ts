import { rowRule } from "./rule.ts";

export const cutoutsCircle = rowRule(
  {
    table: "cutouts",
    about: "A circle has no height, or the same as its width; a slot is at least as wide as it is high.",
    reads: ["shape", "width_mm", "height_mm"],
  },
  () => (row) => {
    const { shape, width_mm: width, height_mm: height } = row;
    if (width === null || height === null) return null;
    if (shape === "circle" && width !== height) {
      return {
        column: "height_mm",
        expected: "blank, because a circle has one diameter: width_mm",
        nearest: "",
      };
    }
    if (shape === "slot" && height > width) {
      return {
        column: "height_mm",
        expected: `at most the width, ${width}; a slot is longest in its own x, turn it by 90°`,
      };
    }
    return null;
  },
);
