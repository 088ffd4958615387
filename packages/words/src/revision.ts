/** Ends the name of a revision that is no release: no name of a release may hold it. */
const DRAFT = "+";

/** Revision of what is made of a book as it is now. @param release newest release; blank: nothing was released yet */
export const draftAfter = (release: string): string => `${release}${DRAFT}`;

/** Release that a revision is a draft after, blank before the first; null: it is no such draft. */
export const afterOf = (revision: string): string | null =>
  revision.endsWith(DRAFT) ? revision.slice(0, -DRAFT.length) : null;
