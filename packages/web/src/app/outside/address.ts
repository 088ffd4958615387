import { pathTo } from "@pinwright/contract";
import { today } from "../runs/today.ts";

/** Address of outside work, or of one part in it. */
export const outsideAddress = (bookId: string, partId?: string): string =>
  `/b/${bookId}/parts/outside${partId === undefined ? "" : `?id=${encodeURIComponent(partId)}`}`;

/** Where the first-article check of a part comes from, with the readings of a sample if one is named. */
export const checkSheetPath = (
  bookId: string,
  part: string,
  sample: string | undefined,
  language: "en" | "zh",
): string => pathTo("checkSheet", { book: bookId }, { part, sample, date: today(), language });
