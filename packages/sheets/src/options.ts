import type { SheetLanguage } from "@pinwright/words";

/** What whoever prints sheets decides. */
export interface SheetOptions {
  readonly language: SheetLanguage;
  /** Date of issue as year-month-day: pure code has no clock. */
  readonly date: string;
  readonly state: "draft" | "released";
  readonly creator: string;
  /** Machines that are made together: panels are cut, boards are kitted for so many. */
  readonly machines: number;
  /** Hole of a pinboard's pegs. */
  readonly pegHoleMm: number;
  /** Wire label: its width along the wire, and the clear tail that is wrapped over the print. */
  readonly label: { readonly widthMm: number; readonly tailMm: number };
}

/** Usual choices; the date has none. Sizes: common practice, no source. */
export const USUAL_OPTIONS: Omit<SheetOptions, "date"> = {
  language: "en",
  state: "draft",
  creator: "Pinwright",
  machines: 1,
  pegHoleMm: 4,
  label: { widthMm: 25, tailMm: 20 },
};
