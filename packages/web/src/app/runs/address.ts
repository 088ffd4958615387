/** Parts of a run's page, as the address has them. */
export const TABS = [
  "overview",
  "needs",
  "orders",
  "schedule",
  "cash",
  "quantity",
  "what-if",
  "shortages",
] as const;
export type Tab = (typeof TABS)[number];

export const runsAddress = (bookId: string): string => `/b/${bookId}/runs`;

/** The address of a run, or of a part of its page. */
export const runAddress = (bookId: string, runId: string, tab: Tab = "overview"): string =>
  `/b/${bookId}/runs/${encodeURIComponent(runId)}${tab === "overview" ? "" : `/${tab}`}`;

/** Where two runs stand side by side. */
export const compareAddress = (bookId: string, a: string, b: string): string =>
  `/b/${bookId}/runs?${new URLSearchParams({ a, b })}`;
