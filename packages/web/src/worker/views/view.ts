import type { Model } from "../model.ts";

/**
 * Something that the page shows, as entries by key. The worker makes it anew when one of `uses` is another
 * object than before, and sends the page only the entries that differ.
 */
export interface View<P, E> {
  readonly uses: (model: Model, param: P) => readonly unknown[];
  readonly entries: (model: Model, param: P) => ReadonlyMap<string, E>;
  /** True when it needs only texts and places, which are known before wires are. */
  readonly early?: boolean;
  /** True when it need not follow a drag. */
  readonly restsInPreview?: boolean;
}

export const view = <P, E>(given: View<P, E>): View<P, E> => given;
