const n = (count: number, one: string, many: string): string =>
  count === 1 ? `1 ${one}` : `${count} ${many}`;

/** The page that the code of a print leads to. */
export const printPage = {
  title: "Does this print still hold?",
  is: { current: "Current", superseded: "Superseded", draft: "Not released", unknown: "Unknown" },
  says: {
    current: (newest: string) => `This print says what revision ${newest} says. It may be worked from.`,
    change: (newest: string) =>
      `This sheet tells of a change. Revision ${newest} is the newest, and no release came after it.`,
    superseded: (newest: string) =>
      `Revision ${newest} says something else on this sheet. Do not work from this print for a unit of ${newest}; throw it away, or keep it only with units of its own revision.`,
    withdrawn: (newest: string) =>
      `Revision ${newest} has no such sheet any more. Do not work from this print for a unit of ${newest}.`,
    draft:
      "This is no print of any release. If it is one of the draft, the draft may have changed since. Do not work from it unless whoever leads the work says so.",
    unknown:
      "No release of this machine has such a sheet, and neither has its draft. Papers of runs, orders and single units are not released with it: make them again to be sure.",
    nowhere: "There is no such machine on this server.",
  },
  /** @param printed `revision A`, `draft after A` */
  same: (printed: string, newest: string) =>
    `Printed as ${printed}; revision ${newest} says the same on this sheet.`,
  facts: {
    machine: "Machine",
    sheet: "Sheet",
    revision: "Revision of the print",
    newest: "Newest revision",
    none: "none yet",
    releases: "Says the same as",
    draftSince: (count: number) =>
      count === 0
        ? "The draft has no change since."
        : `The draft has ${n(count, "change", "changes")} since.`,
  },
  current: "Open the current sheet",
  asPrinted: (revision: string) => `Open it as it was in ${revision}`,
  since: "What changed on it since",
  pages: (pages: string) => `Pages that changed: ${pages}`,
  notesOf: (name: string) => `Note of revision ${name}`,
  noSentences:
    "The sheet says something else, and no change of the machine names why. Lay the two over each other.",
  overlay: "Lay old and new over each other",
  all: "All that changed",
  working: "Working out what changed …",
  enter: "Code of the print",
  enterHint: "Scan the code in the corner of the sheet, or type what stands in it.",
  look: "Look it up",
  wrong: "This is not the code of a sheet.",
  toBooks: "To the machines",
};
