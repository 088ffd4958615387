/** Parts of the section, as the address has them. */
export const TABS = ["releases", "compare"] as const;
export type Tab = (typeof TABS)[number];

/** Address of a tab, with what is asked of it. */
export function revisionsAddress(
  bookId: string,
  tab: Tab,
  asked: Readonly<Record<string, string | undefined>> = {},
): string {
  const params = new URLSearchParams();
  for (const [name, value] of Object.entries(asked)) if (value !== undefined) params.set(name, value);
  const search = params.toString();
  return `/b/${bookId}/revisions/${tab}${search === "" ? "" : `?${search}`}`;
}

/** Stands for the book as it is now where a release is named. */
export const DRAFT = "draft";
