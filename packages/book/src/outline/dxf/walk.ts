import type { OutlinePoint } from "../outline.ts";
import { type DxfEntity, type DxfFile, numberOf, readDxfGroups, textOf } from "./groups.ts";

/** What in a drawing could not be used: text, and the line of the file where it starts. */
export interface DrawingProblem {
  readonly text: string;
  readonly line: number | null;
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

/** Entities whose coordinates are in their own plane, which a negative extrusion turns over. */
const OWN_PLANE: ReadonlySet<string> = new Set(["LWPOLYLINE", "POLYLINE", "ARC", "CIRCLE", "INSERT"]);

const MOST_NESTING = 8;

/** Blocks may be inserted this often in all, however they are nested. */
const MOST_INSERTIONS = 10_000;

/** Layer of an entity that takes the layer of the block which it is part of. DXF Reference, "BLOCK". */
const BLOCK_LAYER = "0";

/** Where a point of an entity lies on the drawing, in mm. */
type Move = (p: OutlinePoint) => OutlinePoint;

/** One entity of the drawing and where it lies. */
export interface Placed {
  readonly entity: DxfEntity;
  /** Corners of a POLYLINE. */
  readonly vertices: readonly DxfEntity[];
  readonly layer: string;
  readonly mmPerUnit: number;
  /** Null when the entity does not lie flat; then that is a problem already. */
  readonly move: () => Move | null;
}

/** Goes through the entities of a drawing, those of inserted blocks included. */
class DxfWalk {
  readonly #file: DxfFile;
  readonly #mmPerUnit: number;
  readonly #visit: (placed: Placed) => void;
  readonly problems: DrawingProblem[] = [];
  #insertions = 0;

  constructor(file: DxfFile, mmPerUnit: number, visit: (placed: Placed) => void) {
    this.#file = file;
    this.#mmPerUnit = mmPerUnit;
    this.#visit = visit;
  }

  walk(entities: readonly DxfEntity[], move: Move, blockLayer: string, depth: number): void {
    for (let i = 0; i < entities.length; i++) {
      const entity = entities[i];
      if (entity === undefined || numberOf(entity, 67, 0) === 1) continue;
      const own = textOf(entity, 8);
      const layer = own === BLOCK_LAYER || own === "" ? blockLayer : own;
      if (entity.type === "INSERT") {
        this.#insert(entity, move, layer, depth);
        continue;
      }
      const vertices: DxfEntity[] = [];
      if (entity.type === "POLYLINE") {
        for (let next = entities[i + 1]; next?.type === "VERTEX"; next = entities[i + 1]) {
          vertices.push(next);
          i++;
        }
      }
      this.#visit({
        entity,
        vertices,
        layer,
        mmPerUnit: this.#mmPerUnit,
        move: () => {
          const plane = this.#plane(entity);
          return plane === null ? null : (p) => move(plane(p));
        },
      });
    }
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

  #insert(entity: DxfEntity, move: Move, layer: string, depth: number): void {
    const block = this.#file.blocks.get(textOf(entity, 2));
    const plane = this.#plane(entity);
    if (plane === null || this.tooManyInsertions) return;
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
    const mmPerUnit = this.#mmPerUnit;
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
        this.walk(block.entities, (p) => move(place(p)), layer, depth + 1);
      }
    }
  }
}

/**
 * Goes through everything that a DXF file draws, in mm; the paper space is left out. Gives what could not be
 * used.
 */
export function walkDxf(text: string, visit: (placed: Placed) => void): readonly DrawingProblem[] {
  const file = readDxfGroups(text);
  if (typeof file === "string") return [{ text: `a DXF file; ${file}`, line: null }];
  const mmPerUnit = MM_PER_UNIT[file.unit ?? 0];
  const walk = new DxfWalk(file, mmPerUnit ?? 1, visit);
  if (mmPerUnit === undefined) {
    walk.problems.push({
      text: `$INSUNITS as mm (4), inch (1), cm (5) or another unit of length; ${file.unit} is taken as mm`,
      line: null,
    });
  }
  walk.walk(file.entities, (p) => p, BLOCK_LAYER, 0);
  if (walk.tooManyInsertions) {
    walk.problems.push({
      text: `blocks that are inserted at most ${MOST_INSERTIONS} times in all`,
      line: null,
    });
  }
  return walk.problems;
}
