/** Parts of the section, as the address has them. */
export const TABS = ["units", "trace", "defects", "charts", "floor", "sites", "minutes", "records"] as const;
export type Tab = (typeof TABS)[number];

/** Address of a tab, with what is asked of it. */
export function benchAddress(
  bookId: string,
  tab: Tab,
  asked: Readonly<Record<string, string | undefined>> = {},
): string {
  const params = new URLSearchParams();
  for (const [name, value] of Object.entries(asked)) if (value !== undefined) params.set(name, value);
  const search = params.toString();
  return `/b/${bookId}/bench/${tab}${search === "" ? "" : `?${search}`}`;
}

/** Address of the page of a unit. */
export const unitAddress = (bookId: string, unit: string): string =>
  `/b/${bookId}/bench/units/${encodeURIComponent(unit)}`;
