import { createHash } from "node:crypto";
import type { Book, BookRow, Shop } from "@pinwright/book";
import { SHOP_TABLES } from "@pinwright/book";
import { fillRows, rows } from "../author.ts";
import {
  armatureDxf,
  armaturePdf,
  armatureStep,
  flipperPlateDxf,
  flipperPlatePdf,
  plasticDxf,
  plasticPdf,
} from "./plates.ts";
import { batPdf, plungerPdf, shaftPdf } from "./round-parts.ts";
import {
  ARMATURE,
  BAT,
  DIMENSIONS,
  PLASTIC,
  PLATE,
  PLUNGER,
  REVISIONS,
  SAMPLE_VALUES,
  SAMPLES,
  SHAFT,
} from "./rows.ts";

/** A file of a part, with what it says. */
interface PartFile {
  readonly part: string;
  readonly revision: string;
  readonly file: string;
  readonly kind: BookRow<"drawings">["kind"];
  readonly remark: string;
  readonly bytes: Uint8Array;
}

/** Every drawing, outline and model of Tidewatch. */
function partFiles(book: Book): readonly PartFile[] {
  const partOf = (id: string): BookRow<"parts"> => {
    const part = book.tables.parts.find((row) => row.id === id);
    if (part === undefined) throw new Error(`Tidewatch has no part ${id}.`);
    return part;
  };
  const plastic = book.outlines.get("top-plastic-sling-left.svg");
  if (plastic === undefined) throw new Error("Tidewatch has no outline of the slingshot plastic.");
  const pdf = (
    part: string,
    revision: string,
    file: string,
    draw: (part: BookRow<"parts">, revision: string, file: string) => Uint8Array,
  ): PartFile => ({
    part,
    revision,
    file,
    kind: "drawing",
    remark: "",
    bytes: draw(partOf(part), revision, file),
  });
  const { date } = book.machine;
  return [
    pdf(PLATE, "A", "flipper-plate-left-a.pdf", flipperPlatePdf),
    pdf(PLATE, "B", "flipper-plate-left-b.pdf", flipperPlatePdf),
    {
      part: PLATE,
      revision: "B",
      file: "flipper-plate-left-b.dxf",
      kind: "outline",
      remark: "Flat blank; bend on its own layer.",
      bytes: flipperPlateDxf("B"),
    },
    pdf(SHAFT, "A", "flipper-shaft-a.pdf", shaftPdf),
    pdf(BAT, "A", "flipper-bat-a.pdf", batPdf),
    pdf(BAT, "B", "flipper-bat-b.pdf", batPdf),
    pdf(ARMATURE, "A", "bumper-armature-a.pdf", armaturePdf),
    {
      part: ARMATURE,
      revision: "A",
      file: "bumper-armature-a.dxf",
      kind: "outline",
      remark: "",
      bytes: armatureDxf(),
    },
    {
      part: ARMATURE,
      revision: "A",
      file: "bumper-armature-a.step",
      kind: "model",
      remark: "",
      bytes: armatureStep(partOf(ARMATURE), date),
    },
    pdf(PLASTIC, "A", "plastic-sling-left-a.pdf", (part, revision, file) =>
      plasticPdf(part, revision, file, plastic),
    ),
    {
      part: PLASTIC,
      revision: "A",
      file: "plastic-sling-left-a.dxf",
      kind: "outline",
      remark: "",
      bytes: plasticDxf(plastic),
    },
    pdf(PLUNGER, "A", "plunger-12x62-a.pdf", plungerPdf),
  ];
}

/** Files of the folder `drawings` by name. */
export const drawingBytes = (book: Book): ReadonlyMap<string, Uint8Array> =>
  new Map(partFiles(book).map(({ file, bytes }) => [file, bytes]));

/** Puts in what is made outside: revisions, drawings with their hashes, marked dimensions, samples and their readings. */
export function withOutside(book: Book, shop: Shop): { readonly book: Book; readonly shop: Shop } {
  const drawings = partFiles(book).map(({ bytes, ...row }) => ({
    ...row,
    sha256: createHash("sha256").update(bytes).digest("hex"),
  }));
  const parts = book.tables.parts.map((part) => {
    const revision = REVISIONS.get(part.id);
    return revision === undefined ? part : { ...part, revision };
  });
  const tables = {
    ...book.tables,
    parts,
    drawings: rows("drawings", drawings),
    dimensions: rows("dimensions", DIMENSIONS),
  };
  const shopTables = {
    ...shop.tables,
    samples: fillRows(SHOP_TABLES.samples, SAMPLES),
    sample_values: fillRows(SHOP_TABLES.sample_values, SAMPLE_VALUES),
  };
  return { book: { ...book, tables }, shop: { ...shop, tables: shopTables } };
}
