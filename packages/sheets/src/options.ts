import type { SheetLanguage } from "@pinwright/words";

/** What whoever prints sheets decides. */
export interface SheetOptions {
  readonly language: SheetLanguage;
  /** Date of issue as year-month-day: pure code has no clock. */
  readonly date: string;
  readonly state: "draft" | "released";
  /** Name of the revision that the sheets are of; blank: what the machine says of itself. */
  readonly revision: string;
  readonly creator: string;
  /** Address of the server on the network, `https://…`, which the code in the corner leads to; blank: none. */
  readonly address: string;
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
  revision: "",
  creator: "Pinwright",
  address: "",
  machines: 1,
  pegHoleMm: 4,
  label: { widthMm: 25, tailMm: 20 },
};

/** Name of the revision that sheets are of. */
export const revisionOf = (
  machine: { readonly revision: string },
  options: Pick<SheetOptions, "revision">,
): string => (options.revision === "" ? machine.revision : options.revision);
