/** `0.52 mm²: 1.15`: the height for one conductor. */
const FOR_AREA = /^\s*(\d+(?:\.\d+)?)\s*mm²\s*:\s*(\d+(?:\.\d+)?)\s*(?:mm)?\s*$/u;
/** `1.15`: one height for whatever the contact takes. */
const FOR_ALL = /^\s*(\d+(?:\.\d+)?)\s*(?:mm)?\s*$/u;

/** Nominal areas of one size differ by less than this among makers of wire, and two sizes by more: common practice. */
const SAME_SIZE = 0.05;

/**
 * The crimp height that a connector family gives for a conductor.
 * @param text as in the book: `0.50 mm²: 1.10; 0.75 mm²: 1.20`, or one number for all conductors
 * @param areaMm2 of the conductor, mm²
 * @returns mm; null when no entry is for this conductor
 */
export function crimpHeightMm(text: string, areaMm2: number): number | null {
  for (const part of text.split(";")) {
    const [, forAll] = FOR_ALL.exec(part) ?? [];
    if (forAll !== undefined) return Number(forAll);
    const [, area, height] = FOR_AREA.exec(part) ?? [];
    if (area === undefined || height === undefined) continue;
    if (Math.abs(Number(area) - areaMm2) <= SAME_SIZE * areaMm2) return Number(height);
  }
  return null;
}
