import type { SheetLanguage } from "@pinwright/words";
import { bodyHash } from "../compose/body-hash.ts";
import { cautionBlock } from "../compose/caution.ts";
import { assemble, type PageBody, type SheetDocument } from "../compose/document.ts";
import { at, box, group, LINE, line, rect, stroke, TEXT, write } from "../compose/draw.ts";
import { type Block, flow, gap } from "../compose/flow.ts";
import { type Heading, headingBlock, roomOf } from "../compose/listing.ts";
import type { Box, Mark, PagePoint } from "../compose/mark.ts";
import { frameOf, PAPERS, type Paper } from "../compose/paper.ts";
import { paragraph } from "../compose/paragraph.ts";
import { say } from "../compose/say.ts";
import { type Identity, TITLE_BLOCK_MM } from "../compose/title-block.ts";
import { rulerMarks } from "./ruler.ts";
import { type Tile, type Tiling, tileBoard } from "./tiling.ts";
import { type Cuttable, cuttable, windowMarks } from "./window.ts";

/** Width of the seam on which two neighbours both show the drawing. Common practice, no source. */
const OVERLAP_MM = 10;
/** Room at the left and at the top of a tile for rulers and names. */
const BAND_MM = 9;

export type TilePaper = "a3" | "a4";

const TILE_PAPERS: Readonly<Record<TilePaper, Paper>> = {
  a3: PAPERS["a3-landscape"],
  a4: PAPERS["a4-landscape"],
};

/** The part of a tile's page that shows the drawing. */
export function tileWindow(paper: Paper): Box {
  const frame = frameOf(paper);
  return box(
    frame.xMm + BAND_MM,
    frame.yMm + BAND_MM,
    frame.widthMm - BAND_MM - 1,
    frame.heightMm - BAND_MM - TITLE_BLOCK_MM.strip - 1,
  );
}

/** A true-scale drawing that tiles are cut from, its origin at its upper left corner. */
interface TrueDrawing {
  readonly widthMm: number;
  readonly heightMm: number;
  /** Its marks as windows look at them. */
  readonly cuttable: readonly Cuttable[];
  /** Body hash of its marks. */
  readonly hash: string;
}

/** What a sheet of tiles shows and says. */
export interface TiledSheet {
  readonly identity: Identity;
  readonly language: SheetLanguage;
  readonly size: TilePaper;
  readonly scene: TrueDrawing;
  /** Head of the first page; how many tiles there are is added to its figures. */
  readonly heading: Omit<Heading, "facts" | "title">;
  readonly cautions: readonly string[];
  /** How to read the drawing: before how the tiles are joined, and after it. */
  readonly notes: (widthMm: number) => readonly Block[];
  readonly legend: (widthMm: number) => readonly Block[];
  /** What the map of the tiles shows of the drawing. */
  readonly mapMarks: (place: (p: PagePoint) => PagePoint, scale: number) => readonly Mark[];
}

/** A true-scale drawing as tiles to be taped together, after a page with the map of the tiles. */
export function composeTiled(sheet: TiledSheet): SheetDocument {
  const { scene, language } = sheet;
  const paper = TILE_PAPERS[sheet.size];
  const window = tileWindow(paper);
  const tiling = tileBoard(scene, window, OVERLAP_MM, scene.cuttable);
  const seams = seamsOf(tiling, window);
  const bodies: PageBody[] = [
    ...mapPages(sheet, tiling, paper).map((marks) => ({ paper, marks })),
    ...tiling.tiles
      .filter((t) => t.printed)
      .map((tile) => ({ paper, marks: tileMarks(tile, tiling, scene, seams, window, language) })),
  ];
  return assemble(sheet.identity, language, bodies, []);
}

/** Crosses on which neighbours are laid: on the middle line of each seam, at a quarter and three quarters. */
function registration(tiling: Tiling, window: Box): Mark[] {
  const stepX = window.widthMm - tiling.overlapMm;
  const stepY = window.heightMm - tiling.overlapMm;
  const half = tiling.overlapMm / 2;
  const marks: Mark[] = [];
  const cross = (x: number, y: number): void => {
    const pen = stroke("ink", LINE.thin);
    // A diamond with a slanting cross: no circle, so that nobody drills it for a peg.
    marks.push(line(at(x - 2, y - 2), at(x + 2, y + 2), pen), line(at(x - 2, y + 2), at(x + 2, y - 2), pen), {
      kind: "polygon",
      points: [at(x - 4, y), at(x, y - 4), at(x + 4, y), at(x, y + 4)],
      stroke: pen,
      fill: null,
      layer: "BORDER",
    });
  };
  const trim = stroke("faint", LINE.hair, [3, 2]);
  const widthMm = tiling.columns * stepX + tiling.overlapMm;
  const heightMm = tiling.rows * stepY + tiling.overlapMm;
  for (let c = 1; c < tiling.columns; c++) {
    marks.push(line(at(c * stepX + half, 0), at(c * stepX + half, heightMm), trim));
    for (let r = 0; r < tiling.rows; r++) {
      cross(c * stepX + half, r * stepY + window.heightMm * 0.25);
      cross(c * stepX + half, r * stepY + window.heightMm * 0.75);
    }
  }
  for (let r = 1; r < tiling.rows; r++) {
    marks.push(line(at(0, r * stepY + half), at(widthMm, r * stepY + half), trim));
    for (let c = 0; c < tiling.columns; c++) {
      cross(c * stepX + window.widthMm * 0.25, r * stepY + half);
      cross(c * stepX + window.widthMm * 0.75, r * stepY + half);
    }
  }
  return marks;
}

/** The marks of the seams as windows look at them. */
interface Seams {
  readonly cuttable: readonly Cuttable[];
  readonly hash: string;
}

function seamsOf(tiling: Tiling, window: Box): Seams {
  const marks = registration(tiling, window);
  return { cuttable: cuttable(marks), hash: bodyHash([{ widthMm: 0, heightMm: 0, marks }]) };
}

function tileMarks(
  tile: Tile,
  tiling: Tiling,
  scene: TrueDrawing,
  seams: Seams,
  window: Box,
  language: SheetLanguage,
): Mark[] {
  const named = (column: number, row: number): Tile | undefined =>
    tiling.tiles.find((t) => t.column === column && t.row === row && t.printed);
  const right = named(tile.column + 1, tile.row);
  const below = named(tile.column, tile.row + 1);
  const text = say(
    language,
    (w) =>
      [
        right === undefined ? "" : w.pinboard.right(right.name),
        below === undefined ? "" : w.pinboard.below(below.name),
      ]
        .filter((t) => t !== "")
        .join("   "),
    "   ",
  );
  const top = window.yMm - BAND_MM;
  return [
    windowMarks(scene.cuttable, tile.window, window, scene.hash),
    windowMarks(seams.cuttable, tile.window, window, seams.hash),
    rect(window, stroke("faint", LINE.hair)),
    group(rulerMarks(false), window.xMm + 22, top + 1.5),
    write("100 mm", at(window.xMm + 124, top + 5), { heightMm: TEXT.small }),
    group(rulerMarks(true), window.xMm - BAND_MM + 1.5, window.yMm + 8),
    write("100 mm", at(window.xMm - BAND_MM + 5, window.yMm + 110), {
      heightMm: TEXT.small,
      turnDeg: 90,
      anchor: "end",
    }),
    write(tile.name, at(window.xMm, top + 6.5), { heightMm: TEXT.head, weight: "bold", ink: "accent" }),
    write(text, at(window.xMm + window.widthMm - 2, top + 5.5), { anchor: "end" }),
  ];
}

/** First page: where each tile belongs, how to join them, and what the signs mean. */
function mapPages(sheet: TiledSheet, tiling: Tiling, paper: Paper): Mark[][] {
  const { language } = sheet;
  const room = roomOf(paper, 0);
  const printed = tiling.tiles.filter((t) => t.printed).length;
  const heading = headingBlock(
    {
      ...sheet.heading,
      title: say(language, (w) => w.pinboard.map),
      facts: [
        say(language, (w) => w.pinboard.tiles(tiling.columns, tiling.rows, printed), " · "),
        say(language, (w) => w.pinboard.overlap(tiling.overlapMm), " · "),
      ],
    },
    room.widthMm,
  );
  // Beside the title block, so that the text may use the height of the page.
  const textMm = Math.min(100, frameOf(paper).widthMm - TITLE_BLOCK_MM.width - 9);
  const blocks = [
    ...(sheet.cautions.length === 0 ? [] : [cautionBlock(sheet.cautions, language, textMm), gap(2)]),
    ...sheet.notes(textMm),
    paragraph(
      say(language, (w) => w.pinboard.joinTiles),
      textMm,
      TEXT.normal,
    ),
    ...sheet.legend(textMm),
  ];
  const column = (page: number): Box => {
    const r = roomOf(paper, page);
    return box(r.xMm, r.yMm + heading.heightMm, textMm, frameOf(paper).heightMm - heading.heightMm - 10);
  };
  const texts = flow(blocks, column);
  const mapBox = box(
    room.xMm + textMm + 8,
    room.yMm + heading.heightMm,
    room.widthMm - textMm - 8,
    room.heightMm - heading.heightMm,
  );
  return texts.map((marks, page) => [
    group(heading.marks, room.xMm, room.yMm),
    ...marks,
    ...(page === 0 ? mapMarks(sheet, tiling, mapBox) : []),
  ]);
}

function mapMarks({ scene, mapMarks: show }: TiledSheet, tiling: Tiling, into: Box): Mark[] {
  const last = tiling.tiles[tiling.tiles.length - 1]?.window ?? box(0, 0, 1, 1);
  const scale = Math.min(
    into.widthMm / (last.xMm + last.widthMm),
    into.heightMm / (last.yMm + last.heightMm),
  );
  const p = (q: { readonly xMm: number; readonly yMm: number }) =>
    at(into.xMm + q.xMm * scale, into.yMm + q.yMm * scale);
  const cells = tiling.tiles.flatMap((t): Mark[] => {
    const stepX = (t.window.widthMm - tiling.overlapMm) * scale;
    const stepY = (t.window.heightMm - tiling.overlapMm) * scale;
    const corner = at(into.xMm + t.column * stepX, into.yMm + t.row * stepY);
    const cell = [
      corner,
      at(corner.xMm + stepX, corner.yMm),
      at(corner.xMm + stepX, corner.yMm + stepY),
      at(corner.xMm, corner.yMm + stepY),
    ];
    const pen = stroke(t.printed ? "ink" : "faint", LINE.thin);
    return [
      {
        kind: "polygon",
        points: cell,
        stroke: pen,
        fill: null,
        layer: "BORDER",
        ...(t.printed ? {} : { hatchMm: 2.5 }),
      },
      ...(t.printed
        ? [
            write(t.name, at(corner.xMm + 1.2, corner.yMm + 4.2), {
              heightMm: TEXT.normal,
              weight: "bold" as const,
              ink: "accent" as const,
            }),
          ]
        : []),
    ];
  });
  return [
    ...cells,
    rect(box(into.xMm, into.yMm, scene.widthMm * scale, scene.heightMm * scale), stroke("ink", LINE.strong)),
    ...show(p, scale),
  ];
}
