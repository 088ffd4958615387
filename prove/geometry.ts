/**
 * Compares plane geometry with Shapely (Debian's python3-shapely, on GEOS) on a thousand random layouts, and prisms in
 * the room with linear programs that the HiGHS solver solves, and writes what came out to `results/geometry.json`.
 *
 *     npx tsx prove/geometry.ts
 */
import { execFileSync } from "node:child_process";
import { compareLayout, type Differences } from "../packages/engine/src/fastening/testing/compare.ts";
import { randomLayout } from "../packages/engine/src/fastening/testing/layouts.ts";
import { askShapely } from "../packages/engine/src/fastening/testing/shapely.ts";
import { comparePrisms } from "./prism-program.ts";
import { writeJson } from "./write-json.ts";

const LAYOUTS = 1000;
const PRISMS = 1000;

const layouts = Array.from({ length: LAYOUTS }, (_, i) => randomLayout(i + 1));
const answers = askShapely(layouts);
const found = layouts.map((layout, i) => {
  const answer = answers[i];
  if (answer === undefined) throw new Error(`Shapely gave no answer for layout ${i + 1}`);
  return compareLayout(layout, answer);
});
const sum = (of: (d: Differences) => number): number => found.reduce((total, d) => total + of(d), 0);
const worst = (of: (d: Differences) => number): number => Math.max(...found.map(of));

writeJson("geometry.json", {
  shapely: execFileSync("/usr/bin/python3", ["-c", "import shapely; print(shapely.__version__)"], {
    encoding: "utf8",
  }).trim(),
  layouts: {
    count: LAYOUTS,
    shapes: layouts.reduce((total, layout) => total + layout.length, 0),
    pairs: sum((d) => d.pairs),
    overlapping: sum((d) => d.overlapping),
    touching: sum((d) => d.touching),
    worstAreaMm2: worst((d) => d.areaMm2),
    worstConvexPiecesMm2: worst((d) => d.piecesMm2),
    worstDistanceMm: worst((d) => d.distanceMm),
    worstOverlapMm2: worst((d) => d.overlapMm2),
    worstCoverageMm2: worst((d) => d.coverageMm2),
    nearPairsMissedOrAdded: sum((d) => d.missed),
  },
  prisms: await comparePrisms(PRISMS),
});
