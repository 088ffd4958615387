/** Words that every section uses. */
export const common = {
  ok: "OK",
  cancel: "Cancel",
  close: "Close",
  save: "Save",
  delete: "Delete",
  undo: "Undo",
  redo: "Redo",
  retry: "Try again",
  search: "Search",
  loading: "Loading …",
  nothing: "Nothing",
  all: "All",
  more: "Show more",
  side: { top: "Top side", under: "Underside" },
  severity: { error: "Error", warning: "Warning", note: "Note" },
  count: (n: number) => String(n),
};
