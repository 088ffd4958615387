import type { SheetRequest } from "@pinwright/contract";
import type { Store } from "@pinwright/store";
import { done } from "../http/problem.ts";
import type { Standing } from "../records/standing.ts";
import type { CompareCase } from "../threads/messages.ts";

type Asked = NonNullable<SheetRequest["compare"]>;

/** A release's facts as they were kept, and what was written of it. */
async function revisionOf(store: Store, book: string, name: string): Promise<NonNullable<CompareCase["to"]>> {
  const what = `release ${name} of ${book}`;
  const { note } = done(await store.releases.get(book, name), what);
  return { name, note, facts: done(await store.releases.body(book, name, "results", "facts"), what) };
}

/**
 * Everything that two revisions of a book are compared from.
 * @param now another text whenever the book or the shop is another
 */
export async function compareCase(
  store: Store,
  standing: Standing,
  book: string,
  asked: Asked,
  now: string,
): Promise<CompareCase> {
  const from = await revisionOf(store, book, asked.from);
  const to = asked.to === undefined ? null : await revisionOf(store, book, asked.to);
  const units = [...(await standing.units()).values()].filter((unit) => unit.book === book);
  return {
    from,
    to,
    key: `${book} ${now}`,
    make: [...asked.make],
    today: asked.today,
    units: units.map(({ unit, what, type, revision, releasedAt, within }) => ({
      ...{ unit, what, type, revision },
      within: within?.unit ?? "",
      isReleased: releasedAt !== null,
    })),
  };
}
