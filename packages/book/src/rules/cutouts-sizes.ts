import { rowRule } from "./rule.ts";

export const cutoutsSizes = rowRule(
  {
    table: "cutouts",
    about:
      "A circle gives its `width_mm`; a rectangle and a slot give `width_mm` and `height_mm`; the shape `outline` gives `outline`.",
    reads: ["shape", "width_mm", "height_mm", "outline"],
  },
  () => (row) => {
    if (row.shape === "outline") {
      return row.outline === null
        ? { column: "outline", expected: "a drawing, because the shape is `outline`" }
        : null;
    }
    if (row.width_mm === null) {
      return { column: "width_mm", expected: `a width, because the shape is \`${row.shape}\`` };
    }
    if (row.shape !== "circle" && row.height_mm === null) {
      return { column: "height_mm", expected: `a height, because the shape is \`${row.shape}\`` };
    }
    return null;
  },
);
