import { NET_CLASSES } from "@pinwright/book";
import type { NetClass } from "../model/index.ts";

/**
 * Whether wires of two classes must not lie together. Mains stays apart from everything but the earth conductor
 * that belongs to it; coils and motors stay apart from audio and sensors, which they would disturb. (The trade's
 * rules as design.md, section 5, states them; common practice, no source.)
 */
export function mustBeApart(a: NetClass, b: NetClass): boolean {
  return apartFrom(a, b) || apartFrom(b, a);
}

function apartFrom(a: NetClass, b: NetClass): boolean {
  if (a === "mains") return b !== "mains" && b !== "earth";
  return (a === "coil" || a === "motor") && (b === "audio" || b === "sensor");
}

/** All pairs of class numbers (places in `NET_CLASSES`) that must be apart. */
export const APART_PAIRS: readonly (readonly [number, number])[] = NET_CLASSES.flatMap((a, i) =>
  NET_CLASSES.flatMap((b, k) => (i < k && mustBeApart(a, b) ? [[i, k] as const] : [])),
);
