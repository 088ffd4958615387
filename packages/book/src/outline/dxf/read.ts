import { LIMITS } from "../../limits.ts";
import type { DrawnPath } from "../rings.ts";
import type { DxfEntity } from "./groups.ts";
import {
  arc,
  circle,
  ellipse,
  line,
  lwPolyline,
  polyline,
  type Scale,
  type Shape,
  spline,
} from "./shapes.ts";
import { type DrawingProblem, type Placed, walkDxf } from "./walk.ts";

/** What a drawing gave, and what in it could not be used. */
export interface Drawing {
  readonly paths: readonly DrawnPath[];
  readonly problems: readonly DrawingProblem[];
}

/** Entities that annotate and draw nothing that is cut. */
const ANNOTATIONS: ReadonlySet<string> = new Set([
  "TEXT",
  "MTEXT",
  "ATTDEF",
  "ATTRIB",
  "SEQEND",
  "DIMENSION",
  "LEADER",
  "MULTILEADER",
  "POINT",
  "VIEWPORT",
  "XLINE",
  "RAY",
  "ACAD_PROXY_ENTITY",
]);

const SHAPES: Readonly<Record<string, (entity: DxfEntity, scale: Scale) => Shape>> = {
  LINE: line,
  LWPOLYLINE: lwPolyline,
  ARC: arc,
  CIRCLE: circle,
  ELLIPSE: ellipse,
  SPLINE: spline,
};

/** Gathers the paths of a drawing. */
class Paths {
  readonly paths: DrawnPath[] = [];
  readonly problems: DrawingProblem[] = [];
  readonly #unknown = new Map<string, { count: number; line: number }>();
  #corners = 0;

  visit(placed: Placed): void {
    const { entity, vertices, mmPerUnit } = placed;
    if (this.tooManyCorners || ANNOTATIONS.has(entity.type)) return;
    const shape = SHAPES[entity.type];
    if (entity.type === "POLYLINE") this.#add(placed, polyline(entity, vertices, { mmPerUnit }));
    else if (shape !== undefined) this.#add(placed, shape(entity, { mmPerUnit }));
    else this.#countUnknown(entity);
  }

  /** Everything that was wrong, `walked` being what was wrong on the way. */
  finish(walked: readonly DrawingProblem[]): Drawing {
    const problems = [...walked, ...this.problems];
    if (this.tooManyCorners) {
      problems.push({ text: `at most ${LIMITS.outlinePoints} corners after flattening`, line: null });
    }
    for (const [type, { count, line }] of this.#unknown) {
      problems.push({
        text: `lines, polylines, arcs, circles, ellipses, splines and blocks; ${count} ${type} ${count === 1 ? "entity is" : "entities are"} not read`,
        line,
      });
    }
    return { paths: this.paths, problems };
  }

  get tooManyCorners(): boolean {
    return this.#corners > LIMITS.outlinePoints;
  }

  #countUnknown({ type, line }: DxfEntity): void {
    const known = this.#unknown.get(type);
    this.#unknown.set(type, { count: (known?.count ?? 0) + 1, line: known?.line ?? line });
  }

  #add({ entity, move }: Placed, shape: Shape): void {
    if (typeof shape === "string") {
      this.problems.push({
        text: `a flat outline; this ${entity.type} ${shape} and is not read`,
        line: entity.line,
      });
      return;
    }
    const place = move();
    if (place === null) return;
    const points = shape.points.map(place);
    if (points.some((p) => !Number.isFinite(p.xMm) || !Number.isFinite(p.yMm))) {
      this.problems.push({
        text: `numbers as coordinates; this ${entity.type} is not read`,
        line: entity.line,
      });
      return;
    }
    this.#corners += points.length;
    if (!this.tooManyCorners) this.paths.push({ points, closed: shape.closed });
  }
}

/** Reads what a DXF file draws, in mm. Text, dimensions and the paper space are left out silently. */
export function readDxf(text: string): Drawing {
  const paths = new Paths();
  const walked = walkDxf(text, (placed) => paths.visit(placed));
  return paths.finish(walked);
}
