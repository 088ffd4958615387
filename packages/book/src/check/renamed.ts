import type { AnyRow } from "../read/raw.ts";

/** Where old ids lead: follows the `renames` of a table until an id is not renamed any more. */
export class Renamed {
  readonly #tables = new Map<string, Map<string, string>>();

  constructor(renames: { readonly rows: readonly Readonly<AnyRow>[] } | undefined) {
    for (const row of renames?.rows ?? []) {
      const table = String(row.table);
      const names = this.#tables.get(table) ?? new Map<string, string>();
      names.set(String(row.old), String(row.new));
      this.#tables.set(table, names);
    }
  }

  /** The present id that an old id leads to, or null when the id was never renamed or the renames go round. */
  follow(table: string, id: string): string | null {
    const names = this.#tables.get(table);
    let next = names?.get(id);
    if (names === undefined || next === undefined) return null;
    for (let steps = 0; steps <= names.size; steps++) {
      const further = names.get(next);
      if (further === undefined) return next;
      next = further;
    }
    return null;
  }
}
