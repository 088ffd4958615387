/** Words of tables on the screen. */
export const lists = {
  copy: "Copy table",
  copied: "Copied",
  filter: "Filter",
  filterHint: "Part of an id or name",
  none: "Nothing matches.",
  more: (n: number) => `Show ${n} more`,
  shown: (shown: number, of: number) => (shown === of ? `${of}` : `${shown} of ${of}`),
};
