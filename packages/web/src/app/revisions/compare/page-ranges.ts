/** `1–3, 7`: numbers of pages, those in a row as a range. */
export function pageRanges(pages: readonly number[]): string {
  const ranges: [number, number][] = [];
  for (const page of [...new Set(pages)].sort((a, b) => a - b)) {
    const last = ranges.at(-1);
    if (last !== undefined && last[1] === page - 1) last[1] = page;
    else ranges.push([page, page]);
  }
  return ranges.map(([a, b]) => (a === b ? `${a}` : `${a}–${b}`)).join(", ");
}
