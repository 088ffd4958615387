import { plainDecimal } from "../read/plain-decimal.ts";
import { type Rule, rowRule } from "./rule.ts";

export const panelSizesThickness: Rule = rowRule(
  {
    table: "panel_sizes",
    about: "A size that grows with a thickness says whose: another panel's.",
    reads: ["panel", "thickness_of", "times"],
  },
  () => (row) => {
    if (row.times !== 0 && row.thickness_of === null)
      return { column: "thickness_of", expected: "the panel whose thickness this size follows" };
    return row.thickness_of === row.panel
      ? { column: "thickness_of", expected: "another panel: no panel stands beside itself" }
      : null;
  },
);

export const fitsMinMax: Rule = rowRule(
  {
    table: "fits",
    about: "A fit has a least or a most, the least not above the most.",
    reads: ["min_mm", "max_mm"],
  },
  () => (row) => {
    if (row.min_mm === null && row.max_mm === null)
      return { column: "min_mm", expected: "the least that is good, the most, or both" };
    return row.min_mm !== null && row.max_mm !== null && row.min_mm > row.max_mm
      ? { column: "max_mm", expected: `${plainDecimal(row.min_mm)} or more, the least that is good` }
      : null;
  },
);

export const fitTermsPanel: Rule = rowRule(
  {
    table: "fit_terms",
    about: "A term of a fit is a size of a panel, or `other` with a nominal value.",
    reads: ["panel", "dimension", "nominal_mm"],
  },
  () => (row) => {
    if (row.dimension === "other")
      return row.nominal_mm === null
        ? { column: "nominal_mm", expected: "the value of what is no size of a panel" }
        : null;
    return row.panel === null
      ? { column: "panel", expected: "the panel of this size, or `other` as dimension" }
      : null;
  },
);
