import { isDrawingName } from "../drawing/drawing-file.ts";
import { type Rule, rowRule } from "./rule.ts";

const HASH = /^[0-9a-f]{64}$/;

export const drawingsFile: Rule = rowRule(
  {
    table: "drawings",
    about: "A drawing's file is named in letters, digits, dots and hyphens and ends in what it is.",
    reads: ["file"],
  },
  () => (row) =>
    isDrawingName(row.file)
      ? null
      : {
          column: "file",
          expected:
            "letters, digits, dots and hyphens, at most 100, ending in .pdf, .dxf, .svg, .step or .stp",
        },
);

export const drawingsHash: Rule = rowRule(
  { table: "drawings", about: "A hash is 64 hexadecimal digits in small letters.", reads: ["sha256"] },
  () => (row) =>
    row.sha256 === "" || HASH.test(row.sha256)
      ? null
      : { column: "sha256", expected: "64 digits 0 to 9 and a to f, or blank" },
);
