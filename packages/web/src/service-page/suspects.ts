import type { FaultFile } from "@pinwright/engine";

/** Wear, dirt, bent parts. */
export const isMechanical = (file: FaultFile, suspect: number): boolean =>
  file.suspects[suspect]?.[1] === "m";

/** On the mains side, or inside what makes a supply: not for an owner. */
export function isLicensed(file: FaultFile, n: number): boolean {
  const suspect = file.suspects[n];
  if (suspect === undefined) return false;
  const [kind, way, p, q] = suspect;
  if (way === "d") return kind === "supply-dead";
  const nodes =
    way === "s" ? [p, q] : (way === "w" ? [p, q] : [p]).flatMap((n) => file.joints[n]?.slice(1, 3) ?? []);
  return nodes.some((node) => typeof node === "number" && file.mains.includes(node));
}
