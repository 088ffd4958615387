import { plainDecimal } from "../read/plain-decimal.ts";
import { rowRule } from "./rule.ts";

export const bodiesOneType = rowRule(
  {
    table: "bodies",
    about: "A body belongs to either a `device_type` or a `mechanism_type`.",
    reads: ["device_type", "mechanism_type"],
  },
  () => (row) =>
    (row.device_type === null) !== (row.mechanism_type === null)
      ? null
      : {
          column: "device_type",
          expected: `either device_type or mechanism_type; found ${row.device_type === null ? "none" : "both"}`,
        },
);

export const bodiesShape = rowRule(
  {
    table: "bodies",
    about: "A body has a width or an outline, and ends above where it begins.",
    reads: ["width_mm", "outline", "from_mm", "to_mm"],
  },
  () => (row) => {
    if (row.width_mm === null && row.outline === null)
      return { column: "width_mm", expected: "a width, since no outline is given" };
    return row.to_mm > row.from_mm
      ? null
      : { column: "to_mm", expected: `more than ${plainDecimal(row.from_mm)}, where it begins` };
  },
);
