/** Bringing tables in from files, and writing them out. */
export const imports = {
  title: "Bring in and export",
  export: {
    title: "Export",
    about: "The whole book as it is now, faults included.",
    zip: "As a .zip of CSV tables",
    xlsx: "As a workbook (.xlsx)",
  },
  bring: {
    title: "Bring in",
    about:
      "A whole book that Pinwright wrote (.zip or .xlsx), or any spreadsheet or CSV whose columns you match to those of a table. Nothing is changed before you have seen what would change.",
    choose: "Choose a file …",
    drop: "or drop it here",
    reading: "Reading …",
    another: "Another file …",
    mayNot: "Your account may not bring in files. Ask a designer.",
    unreadable: "Nothing in this file could be read.",
    kind: "What the file is",
    asBook: "A whole book",
    asRows: "Rows for one table",
    wrongType: "Choose a .zip, .xlsx, .csv or .tsv file.",
  },
  book: {
    would: "This would make the open book what the file says:",
    added: (n: number) => (n === 1 ? "1 row is added" : `${n} rows are added`),
    changed: (n: number) => (n === 1 ? "1 cell is changed" : `${n} cells are changed`),
    removed: (n: number) => (n === 1 ? "1 row is removed" : `${n} rows are removed`),
    nothing: "The file says the same as the open book. Nothing would change.",
    sound: "Everything in it can be read.",
    faults: (n: number) =>
      n === 1
        ? "1 fault. It is taken in as it stands and can be mended in its table."
        : `${n} faults. They are taken in as they stand and can be mended in their tables.`,
    take: "Take it in",
    done: "The book is now what the file says. Undo takes it back in one step.",
  },
  rows: {
    sheet: "Sheet",
    table: "Table",
    sheetRows: (name: string, n: number) => `${name} (${n} rows)`,
    noRows: "This sheet has no rows below its heading.",
    match: "Which column each heading goes to",
    matchHint: "Values in another unit are converted when the heading names it, as in “X (in)”.",
    heading: "Heading in the file",
    example: "First values",
    column: "Column of the table",
    none: "Not taken",
    converted: (from: string, to: string) => `converted from ${from} to ${to}`,
    how: {
      remembered: "as before",
      exact: "same name",
      folded: "same name",
      unit: "same name, other unit",
      stem: "same name without unit",
      label: "usual word for it",
      words: "guessed",
      nearest: "guessed from the spelling",
    },
    missing: (columns: string) => `No heading goes to ${columns}, which must be filled.`,
    unread: (n: number) =>
      n === 1 ? "1 place of the sheet could not be read:" : `${n} places of the sheet could not be read:`,
    preview: "What would be taken in",
    previewHint: "Faults can be mended here, and rows left out, before anything is taken in.",
    sum: (added: number, filled: number, same: number) =>
      `${added} new, ${filled} filling in rows of the same key, ${same} already there.`,
    checking: "Checking …",
    faults: (n: number) => (n === 1 ? "1 cell does not fit" : `${n} cells do not fit`),
    sound: "Every cell fits.",
    take: (n: number) => (n === 1 ? "Take in 1 row" : `Take in ${n} rows`),
    takeFaults: (n: number) =>
      n === 1 ? "Take in 1 row with its faults" : `Take in ${n} rows with their faults`,
    leaveOut: "Leave out the selected rows",
    nothing: "Every row is there already and says the same.",
    note: (n: number, table: string, file: string) => `Bring ${n} rows into ${table} from ${file}`,
    undone: "Your last change to the preview is undone.",
  },
};
