/** `1–4, 7`: numbers in their order, each once, runs drawn together. */
export function runsText(numbers: readonly number[]): string {
  const sorted = [...new Set(numbers)].sort((a, b) => a - b);
  const runs: { from: number; to: number }[] = [];
  for (const n of sorted) {
    const last = runs.at(-1);
    if (last !== undefined && n === last.to + 1) last.to = n;
    else runs.push({ from: n, to: n });
  }
  return runs
    .map(({ from, to }) => (from === to ? `${from}` : to === from + 1 ? `${from}, ${to}` : `${from}–${to}`))
    .join(", ");
}
