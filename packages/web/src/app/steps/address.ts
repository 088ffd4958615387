/** Parts of the section, as the address has them. */
export const TABS = ["stations", "table", "learning", "order"] as const;
export type Tab = (typeof TABS)[number];

export const tabAddress = (bookId: string, tab: Tab): string => `/b/${bookId}/steps/${tab}`;

/** The address of a step in the table of steps. */
export const stepAddress = (bookId: string, stepId: string): string =>
  `${tabAddress(bookId, "table")}?id=${encodeURIComponent(stepId)}`;
