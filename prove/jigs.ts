/**
 * Reads every drilling drawing, pilot template and screw tray of Tidewatch back from DXF with ezdxf (Debian's
 * python3-ezdxf), holds each hole against its fastener's place in the book, and writes what came out to
 * `results/jigs.json`.
 *
 *     npx tsx prove/jigs.ts
 */
import { execFileSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { emptyShop } from "../packages/book/src/index.ts";
import { readBook } from "../packages/book/src/io/index.ts";
import { type FastenerItem, Line, type LineResult } from "../packages/engine/src/index.ts";
import {
  type AssemblySheetKind,
  composeAssemblySheets,
  type SheetDocument,
  USUAL_OPTIONS,
} from "../packages/sheets/src/index.ts";
import { renderDocument } from "../packages/sheets/src/print/index.ts";
import { type ReadDxf, readDxfs } from "../packages/sheets/src/testing/read-dxf.ts";
import { writeJson } from "./write-json.ts";

const { book, shop } = await readBook(fileURLToPath(new URL("../examples/tidewatch", import.meta.url)));
const line = new Line().run(book, shop ?? emptyShop());
const options = { ...USUAL_OPTIONS, date: book.machine.date };
const folder = mkdtempSync(join(tmpdir(), "pinwright-jigs-"));

/** A place of a panel as it lies with a side up, from its lower left corner. */
function lying({ panelId, side, xMm, yMm }: FastenerItem["place"]): readonly [number, number] {
  const width = book.tables.panels.find((p) => p.id === panelId)?.width_mm ?? 0;
  return side === "under" ? [width - xMm, yMm] : [xMm, yMm];
}

async function drawings(kind: AssemblySheetKind): Promise<readonly (readonly [SheetDocument, ReadDxf])[]> {
  const documents = [...composeAssemblySheets(line, options, [kind])].filter((d) => d.drawing !== null);
  const paths: string[] = [];
  for (const document of documents) {
    const path = join(folder, `${document.fileName}.dxf`);
    writeFileSync(path, await renderDocument(document, "dxf"));
    paths.push(path);
  }
  const read = readDxfs(paths);
  return documents.flatMap((document, i) => {
    const own = read[i];
    return own === undefined ? [] : [[document, own] as const];
  });
}

const fasteners = (ids: Iterable<string>): readonly FastenerItem[] =>
  [...ids].flatMap((id) => {
    const item = line.machine.items.get(id);
    return item?.kind === "fastener" ? [item] : [];
  });

/** How far each fastener's hole is off, and its diameter, in the drawing whose name holds one of some words. */
interface Held {
  readonly files: number;
  readonly faults: number;
  readonly holes: number;
  readonly fasteners: number;
  readonly worstPlaceMm: number;
  readonly worstDiameterMm: number;
}

function held(
  read: readonly (readonly [SheetDocument, ReadDxf])[],
  layer: string,
  wanted: readonly { readonly file: string; readonly item: FastenerItem; readonly diameterMm: number }[],
): Held {
  const files = new Map(read.map(([document, dxf]) => [document.id, dxf]));
  let worstPlaceMm = 0;
  let worstDiameterMm = 0;
  for (const { file, item, diameterMm } of wanted) {
    const [x, y] = lying(item.place);
    const holes = (files.get(file)?.circles ?? []).filter(([own]) => own.startsWith(layer));
    // Of the holes of its diameter the nearest: two of unequal diameter may share a place.
    const near = holes
      .map(([, hx, hy, r]) => ({ placeMm: Math.hypot(hx - x, hy - y), offMm: Math.abs(2 * r - diameterMm) }))
      .sort((a, b) => a.placeMm + a.offMm - b.placeMm - b.offMm)[0];
    worstPlaceMm = Math.max(worstPlaceMm, near?.placeMm ?? Number.POSITIVE_INFINITY);
    worstDiameterMm = Math.max(worstDiameterMm, near?.offMm ?? Number.POSITIVE_INFINITY);
  }
  const micro = (mm: number): number => Math.round(mm * 1e5) / 1e5;
  return {
    files: read.length,
    faults: read.reduce((sum, [, dxf]) => sum + dxf.errors + dxf.fixes + (dxf.units === 4 ? 0 : 1), 0),
    holes: read.reduce(
      (sum, [, dxf]) => sum + dxf.circles.filter(([own]) => own.startsWith(layer)).length,
      0,
    ),
    fasteners: wanted.length,
    worstPlaceMm: micro(worstPlaceMm),
    worstDiameterMm: micro(worstDiameterMm),
  };
}

/** Every fastener with a hole, and the drawings that it must be on: a hole right through may be on the other side's. */
function drilled(
  of: LineResult,
  fileOf: (panelId: string, side: string) => string,
  ids: ReadonlySet<string>,
) {
  return [...of.fastening.fits.values()].flatMap((fit) =>
    fasteners([fit.fastenerId]).flatMap((item) => {
      const file = fileOf(item.place.panelId, item.place.side);
      return fit.hole === null || !ids.has(file) ? [] : [{ file, item, diameterMm: fit.hole.diameterMm }];
    }),
  );
}

const drills = await drawings("drill-table");
const templates = await drawings("pilot-template");
const trays = await drawings("screw-tray");
const idsOf = (read: typeof drills): ReadonlySet<string> => new Set(read.map(([document]) => document.id));
const screwed = line.steps.steps.flatMap((step) =>
  fasteners(step.fastenerIds).map((item) => ({ step, item })),
);

writeJson("jigs.json", {
  ezdxf: execFileSync("/usr/bin/python3", ["-c", "import ezdxf; print(ezdxf.__version__)"], {
    encoding: "utf8",
  }).trim(),
  fastenersOfTheMachine: fasteners(line.machine.items.keys()).length,
  drillDrawings: held(
    drills,
    "DRILL_",
    drilled(line, (panel, side) => `machine.drill-table-${panel}-${side}-drawing.en`, idsOf(drills)),
  ),
  pilotTemplates: held(
    templates,
    "DRILL_",
    drilled(line, (panel, side) => `machine.pilot-template-${panel}-${side}.en`, idsOf(templates)),
  ),
  screwTrays: held(
    trays,
    "DRILL_TRAY",
    screwed.map(({ step, item }) => {
      const sides = new Set(fasteners(step.fastenerIds).map(({ place }) => `${place.panelId}-${place.side}`));
      const own = sides.size > 1 ? `-${item.place.panelId}-${item.place.side}` : "";
      const name = step.id.toLowerCase().replace(/[^a-z0-9.-]+/gu, "-");
      return {
        file: `machine.screw-tray-${name}${own}.en`,
        item,
        diameterMm: item.type.diameter_mm + 0.5,
      };
    }),
  ),
});
rmSync(folder, { recursive: true });
