import type { FaultFile } from "./fault-file.ts";

/** What stands in the empty page where the fault file goes. */
export const FAULT_FILE_MARK = "@@fault-file@@";
/** And where the language goes that it was made for. */
export const LANGUAGE_MARK = "@@language@@";

/**
 * The page that is shipped with a machine: the empty page with its fault file in it, in one file that needs no network.
 * @param page the empty page as it was built
 * @param language that it opens in; empty: the one of the browser
 */
export function faultPageOf(page: string, file: FaultFile, language: "en" | "zh" | ""): string {
  // No text of a book may end the element that it stands in.
  const json = JSON.stringify(file).replaceAll("<", "\\u003c");
  return page.replace(LANGUAGE_MARK, () => language).replace(FAULT_FILE_MARK, () => json);
}
