import { LABEL_HEIGHT_MM, LABEL_WIDTH_MM, pathTo } from "@pinwright/contract";
import { today } from "../../runs/today.ts";

export const SHEET_LANGUAGES = ["en", "zh", "both"] as const;
export type SheetLanguage = (typeof SHEET_LANGUAGES)[number];

/** Where the test certificate of a unit comes from. */
export const certificatePath = (unit: string, language: SheetLanguage): string =>
  pathTo("unitCertificate", { unit }, { language, date: today() });

/** Where the crate checklist of a machine comes from. */
export const cratePath = (unit: string, language: SheetLanguage): string =>
  pathTo("crateChecklist", { unit }, { language, date: today() });

/** Where the list of one transport comes from; null: of all that is on the way. */
export const transportPath = (book: string, transport: string | null, language: SheetLanguage): string =>
  pathTo("transportList", {}, { book, language, date: today(), transport: transport ?? undefined });

/** On what labels are printed: as it was typed. */
export interface LabelPaper {
  readonly kind: "a4" | "roll";
  readonly start: string;
  readonly widthMm: string;
  readonly heightMm: string;
}

/** A sheet from its first place, or the roll that is usual. */
export const USUAL_PAPER: LabelPaper = { kind: "a4", start: "1", widthMm: "62", heightMm: "29" };

/** Most serial numbers that fit an address. */
export const MOST_UNITS = 800;

const within = (text: string, { least, most }: { readonly least: number; readonly most: number }): boolean =>
  text.trim() !== "" && Number(text) >= least && Number(text) <= most;

/** Whether labels can be printed so. */
export const isPaper = ({ kind, start, widthMm, heightMm }: LabelPaper): boolean =>
  kind === "a4"
    ? Number.isInteger(Number(start)) && within(start, { least: 1, most: 200 })
    : within(widthMm, LABEL_WIDTH_MM) && within(heightMm, LABEL_HEIGHT_MM);

/** Where labels of units come from, in the order given. */
export const labelsPath = (
  book: string,
  units: readonly string[],
  { kind, start, widthMm, heightMm }: LabelPaper,
  language: SheetLanguage,
): string =>
  pathTo(
    "unitLabels",
    {},
    {
      ...{ book, language, date: today(), paper: kind, units: units.join(",") },
      ...(kind === "a4" ? { start } : { widthMm, heightMm }),
    },
  );
