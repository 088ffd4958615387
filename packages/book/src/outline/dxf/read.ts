import { LIMITS } from "../../limits.ts";
import type { OutlinePoint } from "../outline.ts";
import type { DrawnPath } from "../rings.ts";
import { type DxfEntity, type DxfFile, numberOf, readDxfGroups, textOf } from "./groups.ts";
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

/** What a drawing gave, and what in it could not be used: text, and the line of the file where it starts. */
export interface Drawing {
  readonly paths: readonly DrawnPath[];
  readonly problems: readonly { readonly text: string; readonly line: number | null }[];
}

/** Millimetres per drawing unit by `$INSUNITS` of the DXF Reference; 0 and nothing are taken as millimetres. */
const MM_PER_UNIT: Readonly<Record<number, number>> = {
  0: 1,
  1: 25.4,
  2: 304.8,
  4: 1,
  5: 10,
  6: 1000,
  8: 25.4e-6,
  9: 0.0254,
  10: 914.4,
  13: 0.001,
  14: 100,
};

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

/** Entities whose coordinates are in their own plane, which a negative extrusion turns over. */
const OWN_PLANE: ReadonlySet<string> = new Set(["LWPOLYLINE", "POLYLINE", "ARC", "CIRCLE", "INSERT"]);

const SHAPES: Readonly<Record<string, (entity: DxfEntity, scale: Scale) => Shape>> = {
  LINE: line,
  LWPOLYLINE: lwPolyline,
  ARC: arc,
  CIRCLE: circle,
  ELLIPSE: ellipse,
  SPLINE: spline,
};

const MOST_NESTING = 8;

/** Blocks may be inserted this often in all, however they are nested. */
const MOST_INSERTIONS = 10_000;

type Move = (p: OutlinePoint) => OutlinePoint;

class DxfReader {
  readonly #file: DxfFile;
  readonly #scale: Scale;
  readonly paths: DrawnPath[] = [];
  readonly problems: { text: string; line: number | null }[] = [];
  readonly #unknown = new Map<string, { count: number; line: number }>();
  #corners = 0;
  #insertions = 0;

  constructor(file: DxfFile, scale: Scale) {
    this.#file = file;
    this.#scale = scale;
  }

  walk(entities: readonly DxfEntity[], move: Move, depth: number): void {
    for (let i = 0; i < entities.length; i++) {
      const entity = entities[i];
      if (entity === undefined || numberOf(entity, 67, 0) === 1) continue;
      if (entity.type === "INSERT") this.#insert(entity, move, depth);
      else if (entity.type === "POLYLINE") {
        const vertices: DxfEntity[] = [];
        for (let next = entities[i + 1]; next?.type === "VERTEX"; next = entities[i + 1]) {
          vertices.push(next);
          i++;
        }
        this.#add(entity, polyline(entity, vertices, this.#scale), move);
      } else {
        const shape = SHAPES[entity.type];
        if (shape !== undefined) this.#add(entity, shape(entity, this.#scale), move);
        else if (!ANNOTATIONS.has(entity.type)) this.#countUnknown(entity);
      }
    }
  }

  finish(): Drawing {
    for (const [type, { count, line }] of this.#unknown) {
      this.problems.push({
        text: `lines, polylines, arcs, circles, ellipses, splines and blocks; ${count} ${type} ${count === 1 ? "entity is" : "entities are"} not read`,
        line,
      });
    }
    return { paths: this.paths, problems: this.problems };
  }

  #countUnknown({ type, line }: DxfEntity): void {
    const known = this.#unknown.get(type);
    this.#unknown.set(type, { count: (known?.count ?? 0) + 1, line: known?.line ?? line });
  }

  #add(entity: DxfEntity, shape: Shape, move: Move): void {
    if (typeof shape === "string") {
      this.problems.push({
        text: `a flat outline; this ${entity.type} ${shape} and is not read`,
        line: entity.line,
      });
      return;
    }
    const plane = this.#plane(entity);
    if (plane === null) return;
    const points = shape.points.map((p) => move(plane(p)));
    if (points.some((p) => !Number.isFinite(p.xMm) || !Number.isFinite(p.yMm))) {
      this.problems.push({
        text: `numbers as coordinates; this ${entity.type} is not read`,
        line: entity.line,
      });
      return;
    }
    this.#corners += points.length;
    if (this.#corners > LIMITS.outlinePoints) return;
    this.paths.push({ points, closed: shape.closed });
  }

  get tooManyCorners(): boolean {
    return this.#corners > LIMITS.outlinePoints;
  }

  get tooManyInsertions(): boolean {
    return this.#insertions > MOST_INSERTIONS;
  }

  /** How the plane of an entity lies on the drawing: as it is, or turned over. */
  #plane(entity: DxfEntity): Move | null {
    const [x, y, z] = [numberOf(entity, 210, 0), numberOf(entity, 220, 0), numberOf(entity, 230, 1)];
    if (Math.abs(x) > 1e-9 || Math.abs(y) > 1e-9) {
      this.problems.push({
        text: `everything flat in x and y; this ${entity.type} is tilted and is not read`,
        line: entity.line,
      });
      return null;
    }
    const turned = z < 0 && OWN_PLANE.has(entity.type);
    return turned ? ({ xMm, yMm }) => ({ xMm: -xMm, yMm }) : (p) => p;
  }

  #insert(entity: DxfEntity, move: Move, depth: number): void {
    const block = this.#file.blocks.get(textOf(entity, 2));
    const plane = this.#plane(entity);
    if (plane === null || this.tooManyCorners || this.tooManyInsertions) return;
    if (block === undefined || depth >= MOST_NESTING) {
      this.problems.push({
        text:
          block === undefined
            ? `a block named \`${textOf(entity, 2)}\``
            : `blocks nested at most ${MOST_NESTING} deep`,
        line: entity.line,
      });
      return;
    }
    const { mmPerUnit } = this.#scale;
    const [sx, sy] = [numberOf(entity, 41, 1), numberOf(entity, 42, 1)];
    const angle = numberOf(entity, 50, 0) * (Math.PI / 180);
    const [columns, rows] = [numberOf(entity, 70, 1), numberOf(entity, 71, 1)];
    if (columns * rows > 1000 || Math.abs(Math.abs(sx) - Math.abs(sy)) > 1e-9) {
      this.problems.push({
        text:
          columns * rows > 1000 ? "at most 1000 copies of a block" : "the same scale of a block in x and y",
        line: entity.line,
      });
      return;
    }
    const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
    for (let column = 0; column < columns; column++) {
      for (let row = 0; row < rows; row++) {
        const place: Move = ({ xMm, yMm }) => {
          const x = (xMm - block.xBase * mmPerUnit) * sx + column * numberOf(entity, 44, 0) * mmPerUnit;
          const y = (yMm - block.yBase * mmPerUnit) * sy + row * numberOf(entity, 45, 0) * mmPerUnit;
          return plane({
            xMm: numberOf(entity, 10, 0) * mmPerUnit + x * cos - y * sin,
            yMm: numberOf(entity, 20, 0) * mmPerUnit + x * sin + y * cos,
          });
        };
        if (++this.#insertions > MOST_INSERTIONS) return;
        this.walk(block.entities, (p) => move(place(p)), depth + 1);
      }
    }
  }
}

/** Reads what a DXF file draws, in mm. Text, dimensions and the paper space are left out silently. */
export function readDxf(text: string): Drawing {
  const file = readDxfGroups(text);
  if (typeof file === "string") return { paths: [], problems: [{ text: `a DXF file; ${file}`, line: null }] };
  const mmPerUnit = MM_PER_UNIT[file.unit ?? 0];
  const reader = new DxfReader(file, { mmPerUnit: mmPerUnit ?? 1 });
  if (mmPerUnit === undefined) {
    reader.problems.push({
      text: `$INSUNITS as mm (4), inch (1), cm (5) or another unit of length; ${file.unit} is taken as mm`,
      line: null,
    });
  }
  reader.walk(file.entities, (p) => p, 0);
  if (reader.tooManyCorners) {
    reader.problems.push({ text: `at most ${LIMITS.outlinePoints} corners after flattening`, line: null });
  }
  if (reader.tooManyInsertions) {
    reader.problems.push({
      text: `blocks that are inserted at most ${MOST_INSERTIONS} times in all`,
      line: null,
    });
  }
  return reader.finish();
}
