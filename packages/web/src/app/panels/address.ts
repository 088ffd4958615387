/** Parts of the section, as the address has them. */
export const TABS = ["sizes", "cutting", "fits", "paint"] as const;
export type Tab = (typeof TABS)[number];

export const tabAddress = (bookId: string, tab: Tab): string => `/b/${bookId}/panels/${tab}`;

/** The address of a panel among the sizes. */
export const sizeAddress = (bookId: string, panelId: string): string =>
  `${tabAddress(bookId, "sizes")}?id=${encodeURIComponent(panelId)}`;

/** The address of a fit. */
export const fitAddress = (bookId: string, fitId: string): string =>
  `${tabAddress(bookId, "fits")}?id=${encodeURIComponent(fitId)}`;
