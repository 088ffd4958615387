/** Files of a finished service book in its folder. */
export const SERVICE_BOOK_FILES = {
  pdf: "book.pdf",
  guide: "guide.json",
  texts: "texts.json",
  /** The composed book, to be kept. */
  kept: "kept.json",
} as const;

/** File of a page, counted from 1. */
export const servicePageFile = (page: number): string => `${page}.svg`;
