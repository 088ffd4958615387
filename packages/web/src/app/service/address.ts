/** Parts of the section, as the address has them. */
export const TABS = ["faults", "thing", "problems", "book"] as const;
export type Tab = (typeof TABS)[number];

/** Address of a tab, with what is asked of it. */
export function serviceAddress(
  bookId: string,
  tab: Tab,
  asked: Readonly<Record<string, string | undefined>> = {},
): string {
  const params = new URLSearchParams();
  for (const [name, value] of Object.entries(asked)) if (value !== undefined) params.set(name, value);
  const search = params.toString();
  return `/b/${bookId}/service/${tab}${search === "" ? "" : `?${search}`}`;
}

/** Address of the page of any id. */
export const thingAddress = (bookId: string, id: string): string =>
  `/b/${bookId}/service/thing/${encodeURIComponent(id)}`;

/** Address of the page of a problem. */
export const problemAddress = (bookId: string, problem: string): string =>
  `/b/${bookId}/service/problems/${encodeURIComponent(problem)}`;

/** Address at which a problem is written down, with what is known of it already. */
export const newProblemAddress = (
  bookId: string,
  known: Readonly<Partial<Record<"about" | "from" | "says" | "unit" | "run", string>>> = {},
): string => serviceAddress(bookId, "problems", { new: "yes", ...known });
