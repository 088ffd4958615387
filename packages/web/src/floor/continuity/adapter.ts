/** The list of an adapter that this tablet was given for a harness, with the name of its file. */
export interface KeptAdapter {
  readonly name: string;
  readonly text: string;
}

const keyOf = (harnessId: string): string => `pinwright.floor.adapter.${harnessId}`;

/** The list that was taken for a harness; null: the usual one, in the order of its places. */
export function keptAdapter(harnessId: string): KeptAdapter | null {
  try {
    const found: unknown = JSON.parse(localStorage.getItem(keyOf(harnessId)) ?? "null");
    if (typeof found !== "object" || found === null || !("name" in found) || !("text" in found)) return null;
    return { name: String(found.name), text: String(found.text) };
  } catch {
    return null;
  }
}

/** Keeps the list of an adapter on this tablet; null: back to the usual one. */
export function keepAdapter(harnessId: string, adapter: KeptAdapter | null): void {
  if (adapter === null) localStorage.removeItem(keyOf(harnessId));
  else localStorage.setItem(keyOf(harnessId), JSON.stringify(adapter));
}
