/** Capitals that are not taken for a figure in bad light: without I and O (1, 0), Q (0), S (5) and Z (2). */
const LETTERS = "ABCDEFGHJKLMNPRTUVWXY";

/** The letters of a symbol by their place, from 0: A to Y, then AA, AB and so on. */
export function symbolLetters(index: number): string {
  const last = LETTERS[index % LETTERS.length] ?? "";
  return index < LETTERS.length ? last : symbolLetters(Math.floor(index / LETTERS.length) - 1) + last;
}
