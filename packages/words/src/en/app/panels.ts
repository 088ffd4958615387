/** Panels: sizes, cutting, fits, paint. */
export const panels = {
  empty: "No panel is in the book yet.",
};
