import type { Run } from "./run-tab.ts";

/** Sheets of the run as files. */
export function RunDownloads(_: { readonly run: Run; readonly day: string }) {
  return null;
}
