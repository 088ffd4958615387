/** Parts of the section, as the address has them; anything else there is a kind of board. */
export const TABS = ["register", "solder", "tests"] as const;
export type Tab = (typeof TABS)[number];

export const tabAddress = (bookId: string, tab: Tab): string => `/b/${bookId}/boards/${tab}`;

/** The address of a kind of board. */
export const boardAddress = (bookId: string, typeId: string): string =>
  `/b/${bookId}/boards/${encodeURIComponent(typeId)}`;
