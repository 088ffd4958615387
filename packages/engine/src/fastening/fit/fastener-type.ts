import type { BookRow } from "@pinwright/book";

type FastenerType = BookRow<"fastener_types">;

const WOOD_KINDS: ReadonlySet<FastenerType["kind"]> = new Set([
  "wood-screw",
  "post",
  "standoff",
  "nail",
  "saddle",
]);

/** What the thread of a type holds in; `none` for what has none of its own: washers, nuts, what is glued. */
export function bitesIn(type: FastenerType): "wood" | "thread" | "none" {
  if (type.length_mm <= 0) return "none";
  if (type.bites !== "usual") return type.bites;
  if (WOOD_KINDS.has(type.kind)) return "wood";
  return type.kind === "machine-screw" ? "thread" : "none";
}

/** Extent of a washer or nut along its axis, mm: given as its height or as its length; 0 when as neither. */
export const axialMm = (type: FastenerType): number => Math.max(type.head_height_mm ?? 0, type.length_mm);

/**
 * Length of a countersunk head's cone, which has no thread, mm: 90° between its sides (ISO 7721; from memory), so as
 * long as the head is wider than the shank on one side. 0 for other heads.
 */
export function coneMm({ kind, head_height_mm, head_diameter_mm, diameter_mm }: FastenerType): number {
  const isScrew = kind === "wood-screw" || kind === "machine-screw" || kind === "nail";
  if (!isScrew || head_height_mm !== 0 || head_diameter_mm === null) return 0;
  return Math.max(0, (head_diameter_mm - diameter_mm) / 2);
}

/** `M3` or `M8×1` at the beginning of a thread's name: diameter, and pitch when it is given. */
const METRIC = /^\s*M\s?(\d+(?:\.\d+)?)(?:\s*[x×]\s*(\d+(?:\.\d+)?))?/u;

/**
 * Whether a nut goes on a screw: metric threads by diameter, and by pitch where both give one; other threads by their
 * names when both have one, and by diameter.
 */
export function threadsMatch(screw: FastenerType, nut: FastenerType): boolean {
  if (nut.kind !== "nut" && nut.kind !== "t-nut") return false;
  const [a, b] = [METRIC.exec(screw.thread), METRIC.exec(nut.thread)];
  if (a !== null && b !== null)
    return (
      Number(a[1]) === Number(b[1]) &&
      (a[2] === undefined || b[2] === undefined || Number(a[2]) === Number(b[2]))
    );
  const sameName = screw.thread === "" || nut.thread === "" || screw.thread === nut.thread;
  return sameName && Math.abs(screw.diameter_mm - nut.diameter_mm) < 0.05;
}
