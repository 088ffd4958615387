/** What the short name of a book looks like, as the server takes it. */
const BOOK_ID = /^[a-z0-9]+(?:[.-][a-z0-9]+)*$/u;

export const isBookId = (id: string): boolean => id.length <= 80 && BOOK_ID.test(id);

/** A short name made from a name that people use; blank when none of its signs may stand in one. */
export const bookIdFrom = (label: string): string =>
  label
    .normalize("NFKD")
    .toLowerCase()
    .replace(/\p{M}/gu, "")
    .replace(/[^a-z0-9]+/gu, "-")
    .replace(/^-+|-+$/gu, "")
    .slice(0, 80)
    .replace(/-+$/u, "");
