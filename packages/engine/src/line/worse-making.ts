import type { Numbers } from "./worse.ts";

/** What makes findings of panels, boards and parts worse. */
export const WORSE_IN_MAKING: Readonly<Record<string, Numbers>> = {
  "panel-no-sheet": { thickness_mm: "other" },
  "panel-too-big": {
    along_mm: "more",
    across_mm: "more",
    sheet_along_mm: "less",
    sheet_across_mm: "less",
  },
  "panel-grain": { pieces_with_grain: "less", pieces_turned: "more" },
  "panel-setting": { setting: "name", least_mm: "less", most_mm: "more" },
  "thickness-far": { measured_mm: "other", least_mm: "more", most_mm: "less" },
  "thickness-mixed": { measured_mm: "other", cut_for_mm: "other", tolerance_mm: "less" },
  "slot-thickness": { drawn_mm: "other", nominal_mm: "other", slot_mm: "other", most_mm: "more" },
  "fit-worst": { from_mm: "less", to_mm: "more", asked_min_mm: "more", asked_max_mm: "less" },
  "fit-likely": { from_mm: "less", to_mm: "more", asked_min_mm: "more", asked_max_mm: "less" },

  "bath-blocked": {
    hand_min: "less",
    bath_min: "more",
    joints: "free",
    masks: "free",
    hidden: "free",
    after_wash: "free",
  },
  "board-no-parts": { boards: "more" },
  "board-no-test": { boards: "more" },
  "placement-hole": { gap_mm: "less", least_mm: "free" },
  "placement-off": { over_mm: "more" },
  "placement-overlap": { area_mm2: "more" },
  "placement-too-high": { height_mm: "more", board_mm: "less" },
  "test-no-limits": { scope: "other" },

  "bill-circle": { parts: "other" },
  "long-lead": { lead_days: "more", limit_days: "less" },
  "pack-bad": { from_quantity: "name", pack: "other", price: "other" },
  "part-no-price": { containers: "more" },
  "part-no-source": { containers: "more" },
  "part-unit": { unit: "other", wanted: "other" },
  "part-unnamed": { kind: "name" },
  "price-currency": { currency: "other", parts: "more" },
  "price-order": { from_quantity: "name", price: "more", before: "less" },

  "drawing-old": { revision: "other", revisions: "other" },
  "drawing-no-revision": { revisions: "other" },
  "drawing-none": { revision: "other" },
  "drawing-shared": { file: "name", revisions: "other" },
  "dimension-odd": {
    mark: "name",
    why: "other",
    nominal: "other",
    minus: "other",
    plus: "other",
    unit: "other",
  },
};
