/** Millimetres to a tenth, without a nought behind the point. */
export const mmText = (mm: number): string => String(Math.round(mm * 10) / 10 + 0);

/** A number to so many decimals, always with all of them so that columns line up. */
export const fixed = (value: number, decimals: number): string => value.toFixed(decimals);
