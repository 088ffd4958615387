/** Parts of the section, as the address has them. */
export const TABS = ["bill", "ways", "stock", "outside"] as const;
export type Tab = (typeof TABS)[number];

/** Address of a tab, with what is asked of it. */
export function tabAddress(
  bookId: string,
  tab: Tab,
  asked: Readonly<Record<string, string | undefined>> = {},
): string {
  const params = new URLSearchParams();
  for (const [name, value] of Object.entries(asked)) if (value !== undefined) params.set(name, value);
  const search = params.toString();
  return `/b/${bookId}/parts/${tab}${search === "" ? "" : `?${search}`}`;
}

/** The address of a part, or of anything else of the bill, in the bill. */
export const partAddress = (bookId: string, id: string): string => tabAddress(bookId, "bill", { id });

/** Where what a node of the bill stands for is drawn or made; null: it has no place of its own but the bill. */
export function nodeAddress(bookId: string, id: string, kind: string): string | null {
  const asked = encodeURIComponent(id.slice(id.indexOf(":") + 1));
  switch (kind) {
    case "harness":
      return `/b/${bookId}/harnesses/${asked}`;
    case "panel":
      return `/b/${bookId}/layout?id=${asked}`;
    case "board":
      return `/b/${bookId}/boards?id=${asked}`;
    case "mechanism":
      return `/b/${bookId}/tables/mechanism_types?id=${asked}`;
    case "part":
      return `/b/${bookId}/tables/parts?id=${encodeURIComponent(id)}`;
    default:
      return null;
  }
}
