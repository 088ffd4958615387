/**
 * Upper ends of the height classes, in millimetres. Parts of one class lie on the same foam when the board is turned,
 * so that none drops out: lying resistors and diodes; chips and small capacitors; standing small parts; headers;
 * tall electrolytics and power transistors. Common practice, no source.
 */
const CLASS_ENDS_MM = [3, 6, 10, 16, 25] as const;

/** Number of the height class of a part, the lowest being 0. */
export function heightClass(heightMm: number): number {
  const found = CLASS_ENDS_MM.findIndex((endMm) => heightMm <= endMm);
  return found === -1 ? CLASS_ENDS_MM.length : found;
}

/** How high parts of a class are at most; null: no limit. */
export const classEndMm = (number: number): number | null => CLASS_ENDS_MM[number] ?? null;
