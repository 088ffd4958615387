import { type ReleasedSheet, type ReleaseItem, releasedSheetSchema } from "@pinwright/contract";
import { keptSheet, type SheetDocument } from "@pinwright/sheets";
import type { Outcome, Store } from "@pinwright/store";
import { done } from "../http/problem.ts";

/** A sheet by what a release says of it; null: the item is none. */
export function releasedSheet({
  kind,
  id,
  about,
}: Pick<ReleaseItem, "kind" | "id" | "about">): ReleasedSheet | null {
  if (kind !== "frame") return null;
  return releasedSheetSchema.parse({ ...about, id, pages: Number(about.pages) });
}

/** Sheets of a release, as they were made: those of the machine first. */
export async function releasedSheets(store: Store, book: string, name: string): Promise<ReleasedSheet[]> {
  const items = done(await store.releases.items(book, name, "frame"), `release ${name} of ${book}`);
  return items.flatMap((item) => releasedSheet(item) ?? []);
}

const decoder = new TextDecoder();

/** A sheet of a release, exactly as it was composed then. */
export async function releasedDocument(
  store: Store,
  book: string,
  name: string,
  sheet: string,
): Promise<SheetDocument> {
  const part = async (kind: string): Promise<string> => {
    const outcome: Outcome<Uint8Array> = await store.releases.body(book, name, kind, sheet);
    return decoder.decode(done(outcome, `sheet ${sheet} in release ${name} of ${book}`));
  };
  const [body, frame] = await Promise.all([part("body"), part("frame")]);
  return keptSheet(body, frame);
}
