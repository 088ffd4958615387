/** A length for the bench: one decimal at most, no trailing nought. */
export function shortMm(mm: number): string {
  return String(Math.round(mm * 10) / 10 + 0);
}

/** A number as printed, with at most `places` decimals. */
export function shortNumber(value: number, places: number): string {
  const scale = 10 ** places;
  return String(Math.round(value * scale) / scale + 0);
}
