/** What was changed, when and by whom; named states. */
export const history = {
  of: "History of",
  ofBook: "This machine",
  ofShop: "The shop",
  kinds: { edit: "change", undo: "undo", redo: "redo", import: "brought in", restore: "restored" },
  noNote: "Change",
  /** Notes that the server writes itself. */
  serverNotes: { example: "Example", from: (book: string) => `New, from “${book}”` },
  cells: (n: number) => `${n} ${n === 1 ? "cell" : "cells"}`,
  number: (no: number) => `No. ${no}`,
  undoneBy: (no: number) => `taken back by no. ${no}`,
  reverses: (no: number) => `takes back no. ${no}`,
  redoes: (no: number) => `makes no. ${no} again`,
  older: "Show older changes",
  none: "Nothing was changed yet. Every change will stand here with who made it and what every cell said before.",
  undoMine: "Undo my last change",
  undone: (note: string) => `Taken back: ${note}`,
  manyCells: (n: number) => `Show all ${n} cells`,
  row: {
    added: "row added",
    removed: "row removed",
    changed: "changed",
    moved: "moved to another place in the table",
    more: (n: number) => `… and ${n} more rows`,
  },
  blank: "blank",
  openRow: "Open in the table",
  drawing: (chars: number) => `drawing, ${chars} characters`,
  snapshots: {
    title: "Named states",
    about: "A named state never changes again. It can be exported, and the book can be brought back to it.",
    none: "There is none yet. Name the present state before a larger change, or when a machine goes to the floor.",
    name: "Name of the present state",
    make: "Name it",
    taken: "There is a state of this name already.",
    at: (no: number, who: string, when: string) => `after change ${no}, by ${who}, ${when}`,
    restore: "Bring back",
    restored: (name: string, rows: number) =>
      rows === 0
        ? `The book is already as in “${name}”.`
        : `The book is as in “${name}” again; ${rows} ${rows === 1 ? "row" : "rows"} changed. Undo takes it back.`,
  },
  export: {
    title: "Export",
    now: "The book as it is now",
    zip: "ZIP of CSV tables",
    xlsx: "Excel workbook",
  },
  failed: (why: string) => `The history could not be read: ${why}`,
};
