import type { BookRow } from "@pinwright/book";
import { roundTo } from "@pinwright/kernel";

type FastenerType = BookRow<"fastener_types">;

/** What a full difference leaves of the likeness: a plain one in length or size is enough to tell two apart. */
const LEFT = { kind: 0.1, length: 0.1, diameter: 0.2, head: 0.3, drive: 0.5, colour: 0.4 } as const;

/** Kinds that are taken for each other: things with a thread and a head. */
const SCREWS: ReadonlySet<string> = new Set(["wood-screw", "machine-screw"]);
const POSTS: ReadonlySet<string> = new Set(["post", "standoff"]);

/** A tenth in diameter is seen with the two side by side, a quarter at once; of length, two fifths. */
const SEEN = { length: 0.4, diameter: 0.25, head: 0.25 } as const;

/** 1 for equal sizes, 0 when one is smaller than the other by more than `seen` of it. */
function alike(a: number, b: number, seen: number): number {
  const most = Math.max(a, b);
  return most === 0 ? 1 : Math.max(0, 1 - (1 - Math.min(a, b) / most) / seen);
}

/** The first word of a text, or nothing. */
const firstWord = (text: string): string => /^[\p{L}\p{N}]*/u.exec(text.toLowerCase())?.[0] ?? "";

/** 1 for the same text, 0.7 when it begins with the same word, else 0. */
function alikeText(a: string, b: string): number {
  if (a === b) return 1;
  return firstWord(a) === firstWord(b) ? 0.7 : 0;
}

function alikeKind(a: string, b: string): number {
  if (a === b) return 1;
  return [SCREWS, POSTS].some((set) => set.has(a) && set.has(b)) ? 0.9 : 0;
}

/** What is seen of a fastener's length in the hand: with its head or body. */
const wholeMm = (type: FastenerType): number => type.length_mm + (type.head_height_mm ?? 0);

const headMm = (type: FastenerType): number => type.head_diameter_mm ?? type.diameter_mm;

/**
 * How easily two types are taken for each other in the hand, 0 to 1: the product of their likeness in kind, whole
 * length, diameter, head (in words and in size), drive and finish, each between what a full difference leaves and 1.
 * Common practice, no source. Rounded to 0.001.
 */
export function handLikeness(a: FastenerType, b: FastenerType): number {
  const part = (left: number, like: number): number => left + (1 - left) * like;
  const head = (alikeText(a.head, b.head) + alike(headMm(a), headMm(b), SEEN.head)) / 2;
  return roundTo(
    part(LEFT.kind, alikeKind(a.kind, b.kind)) *
      part(LEFT.length, alike(wholeMm(a), wholeMm(b), SEEN.length)) *
      part(LEFT.diameter, alike(a.diameter_mm, b.diameter_mm, SEEN.diameter)) *
      part(LEFT.head, head) *
      part(LEFT.drive, alikeText(a.drive, b.drive)) *
      part(LEFT.colour, alikeText(a.colour, b.colour)),
    0.001,
  );
}
