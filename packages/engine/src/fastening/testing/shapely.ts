import { execFileSync } from "node:child_process";
import type { PointMm } from "@pinwright/kernel";

type Layout = readonly (readonly PointMm[])[];

/** What Shapely, which stands on GEOS, says of one layout: areas in mm², distances in mm. */
export interface ShapelyAnswer {
  readonly areas: readonly number[];
  /** Area of all shapes together. */
  readonly coverage: number;
  /** Of every two shapes, the earlier one first: (0, 1), (0, 2) and so on. */
  readonly pairs: readonly (readonly [overlap: number, distance: number])[];
}

const SCRIPT = `
import json, sys
from itertools import combinations
from shapely.geometry import Polygon
from shapely.ops import unary_union
out = []
for layout in json.load(sys.stdin):
    shapes = [Polygon(ring) for ring in layout]
    out.append({
        "areas": [s.area for s in shapes],
        "coverage": unary_union(shapes).area,
        "pairs": [[a.intersection(b).area, a.distance(b)] for a, b in combinations(shapes, 2)],
    })
json.dump(out, sys.stdout)
`;

/** Asks Shapely of Debian's package python3-shapely about layouts. */
export function askShapely(layouts: readonly Layout[]): readonly ShapelyAnswer[] {
  const input = JSON.stringify(
    layouts.map((layout) => layout.map((ring) => ring.map((p) => [p.xMm, p.yMm]))),
  );
  const text = execFileSync("/usr/bin/python3", ["-c", SCRIPT], {
    input,
    encoding: "utf8",
    maxBuffer: 1 << 28,
  });
  const answers: readonly ShapelyAnswer[] = JSON.parse(text);
  return answers;
}
