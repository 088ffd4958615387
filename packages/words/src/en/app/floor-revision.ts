/** Which revision the floor shows, and its kept sheets. */
export const floorRevision = {
  rev: (name: string) => `Revision ${name}`,
  change: (no: string) => `Draft, begun at change ${no}`,
  draft: "Draft",
  fetching: (name: string) => `Revision ${name} is fetched …`,
  away: (name: string) =>
    `This is built to revision ${name}. That revision is not on this tablet, and the server does not answer. The draft is not shown in its place.`,
  again: "Try again",
  none: (name: string) => `There is no release ${name}: what is shown is the book as it is now.`,
  mixed: (list: string) => `These are of different revisions: ${list}. Build them apart.`,
  sheets: (name: string) => `Sheets of revision ${name}`,
  stepSheet: (name: string) => `Step sheet of revision ${name}`,
  about: "As they were composed when it was released.",
  noSheet: "The release keeps no such sheet.",
  failed: "The sheet could not be fetched:",
  page: (n: number, all: number) => `Page ${n} of ${all}`,
  before: "Page before",
  after: "Page after",
} as const;
