import { rowRule } from "./rule.ts";

const HOLES = /^-?\d+(?:\.\d+)?,-?\d+(?:\.\d+)?(?: -?\d+(?:\.\d+)?,-?\d+(?:\.\d+)?)*$/;

export const boardHoles = rowRule(
  {
    table: "board_types",
    about: "Fixing holes are `x,y` pairs in mm separated by one space.",
    reads: ["holes"],
  },
  () => (row) => {
    const holes = row.holes.trim();
    if (holes === "" || HOLES.test(holes)) return null;
    const mended = holes.replace(/\s*,\s*/g, ",").replace(/[;\s]+/g, " ");
    return {
      column: "holes",
      expected: "pairs in mm such as `4,4 96,4`",
      nearest: HOLES.test(mended) ? mended : null,
    };
  },
);
