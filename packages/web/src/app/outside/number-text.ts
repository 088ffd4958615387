/** The number that a person typed, decimal point or comma; null when it is none. */
export function typedNumber(text: string): number | null {
  const plain = text
    .trim()
    .replace(",", ".")
    .replace(/^\u2212/, "-");
  return /^-?(?:\d+(?:\.\d*)?|\.\d+)$/.test(plain) ? Number(plain) : null;
}

/** A number without noise: at most four decimals, no trailing noughts. */
export const shortText = (value: number): string => String(Math.round(value * 1e4) / 1e4 + 0);

/** `±0.1`, `+0.1 −0.2`; a dash for what is only looked at. */
export function toleranceText(nominal: number | null, minus: number, plus: number): string {
  if (nominal === null) return "–";
  if (minus === plus) return `±${shortText(plus)}`;
  const signed = (sign: string, value: number): string => (value === 0 ? "0" : `${sign}${shortText(value)}`);
  return `${signed("+", plus)} ${signed("−", minus)}`;
}

/** What a reading says at once, while it is typed: limits belong to what is good. */
export function verdictOf(
  reading: number | null,
  { min, max }: { readonly min: number | null; readonly max: number | null },
): "pass" | "fail" | "open" {
  if (reading === null || min === null || max === null) return "open";
  return reading >= min && reading <= max ? "pass" : "fail";
}
