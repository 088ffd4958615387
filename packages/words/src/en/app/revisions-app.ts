const n = (count: number, one: string, many: string): string =>
  count === 1 ? `1 ${one}` : `${count} ${many}`;

/** Releases of a machine: what was released, and releasing it. */
export const revisionsApp = {
  /** In the bar above every page: which revision is looked at. */
  bar: {
    draft: "draft",
    after: (name: string) => `draft after ${name}`,
    same: (name: string) => `as released: ${name}`,
    unit: (name: string) => `revision ${name}`,
    unitChange: (no: string) => `change ${no}`,
    hint: "Which revision this is. Opens the releases.",
  },
  list: {
    title: "Releases",
    about:
      "A release is the machine under a name that never changes again: its tables, its findings and who accepted what, and every sheet as it was composed then. What is built to it stays as it is, whatever is changed afterwards.",
    none: "Nothing was released yet. Release the machine before its first sheets go to the floor: from then on every print, unit and service book says which revision it is of.",
    make: "Release …",
    asDesigner: "A designer releases a machine.",
    by: (who: string, when: string) => `Released by ${who}, ${when}`,
    change: (no: number) => `after change ${no}`,
    newest: "newest",
    note: "Note",
    noNote: "No note was written.",
    hash: "Hash",
    hashAbout: (full: string, program: string) =>
      `SHA-256 ${full}. Made by version ${program} of the program.`,
    copy: "Copy the whole hash",
    copied: "Copied",
    findings: (errors: number, warnings: number, notes: number) =>
      `${n(errors, "error", "errors")}, ${n(warnings, "warning", "warnings")} and ${n(notes, "note", "notes")} stayed open`,
    accepted: (count: number) =>
      count === 0 ? "Nothing was accepted." : `${n(count, "finding was", "findings were")} accepted`,
    acceptedBy: (who: string) => `accepted by ${who}`,
    noName: "somebody",
    units: "Built to it",
    noUnits: "No unit yet.",
    kinds: { machine: "Machines", board: "Boards", harness: "Harnesses", mechanism: "Mechanisms" },
    sheets: "Sheets",
    sheetsOf: (count: number) => n(count, "sheet", "sheets"),
    loading: "One moment …",
    machine: "Machine",
    pages: (count: number) => n(count, "page", "pages"),
    export: "Everything in it (ZIP)",
    compare: "What changed since",
    compareBefore: (name: string) => `What changed from ${name}`,
    files: "Files",
    file: {
      "fault-file": "Fault file, to find faults without the network",
      "fault-file.json": "Fault file, to find faults without the network",
      "service-book": "Service book",
    },
    book: "Service book",
  },
  make: {
    title: "Release this machine",
    about: (no: number) =>
      `The machine as it is now, after change ${no}, gets a name that never changes again. All its sheets are composed in English and Chinese, and kept.`,
    name: "Name of the revision",
    nameHint: "Letters, digits, dot, dash and underscore; it stands in every title block.",
    note: "What is new in it, and why",
    noteHint: "What the floor, the service desk and whoever comes after should know.",
    stands: "What stands in the way",
    nothing: "Nothing stands in the way.",
    errors: (count: number) => `${n(count, "error", "errors")} that nobody accepted`,
    faults: (count: number) => `${n(count, "fault", "faults")} in the tables`,
    unsent: "Changes that are not saved yet",
    open: (warnings: number, notes: number) =>
      `${n(warnings, "warning", "warnings")} and ${n(notes, "note", "notes")} stay open and are written down with it.`,
    accepted: (count: number) =>
      `${n(count, "accepted finding is", "accepted findings are")} kept with who accepted it and why.`,
    same: (name: string) =>
      `Nothing was changed in the machine since ${name}. It is released again only if something changed that a release keeps of the shop: tools, reels, sheets, holders, benches, coats, times.`,
    seeFindings: "Open the findings",
    go: "Release",
    going: (name: string) => `Releasing ${name}`,
    progress: (done: number, total: number) => `${done} of ${n(total, "sheet", "sheets")}`,
    preparing: "Working out the machine …",
    keeping: "Keeping it …",
    cancel: "Stop",
    done: (name: string) => `Released as ${name}.`,
    cancelled: "Stopped. Nothing was released.",
    failed: (why: string) => `Not released. ${why}`,
    close: "Close",
  },
};
