import { readFileSync } from "node:fs";

/** Distances of a TSPLIB instance of type EUC_2D: Euclidean, rounded to whole numbers, a half up. */
export const readTsp = (url: URL): number[][] => {
  const points: { readonly x: number; readonly y: number }[] = [];
  for (const line of readFileSync(url, "utf8").split("\n")) {
    const match = /^\s*\d+\s+([-+.\deE]+)\s+([-+.\deE]+)\s*$/.exec(line);
    if (match) points.push({ x: Number(match[1]), y: Number(match[2]) });
  }
  return points.map((p) => points.map((q) => Math.floor(Math.hypot(p.x - q.x, p.y - q.y) + 0.5)));
};
