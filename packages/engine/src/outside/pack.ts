import { compareText } from "@pinwright/kernel";
import { type Languages, labelsOf, type Machine } from "../model/index.ts";
import { type DrawingState, drawingsOf, type FileFacts, type PartDrawing } from "./drawings.ts";
import { type CheckedDimension, dimensionsOf } from "./first-article.ts";
import { type LotBlock, lotBlock } from "./samples.ts";

/** How many of a part are sent out for. */
export interface WantedPart {
  readonly partId: string;
  readonly quantity: number;
}

/** Why a pack must not go out as it is. */
export interface PackFault {
  readonly what: /** The book has no such part. */
    | "part-unknown"
    /** The part has no revision, so nobody can say which drawing is right. */
    | "no-revision"
    /** No drawing of the present revision. */
    | "no-drawing"
    /** A file of it is not there, or has other bytes than were meant. */
    | Extract<DrawingState, "missing" | "differs">;
  readonly partId: string;
  /** File that it is about; blank: the part. */
  readonly file: string;
}

/** One part of a pack. */
export interface PackPart {
  readonly partId: string;
  readonly labels: Languages;
  readonly revision: string;
  readonly material: string;
  readonly thicknessMm: number | null;
  readonly finish: string;
  readonly unit: string;
  readonly quantity: number;
  /** Folder of its drawings within the pack. */
  readonly folder: string;
  /** Drawings of the present revision. */
  readonly drawings: readonly PartDrawing[];
  readonly dimensions: readonly CheckedDimension[];
  /** What keeps its lot from being ordered: first articles only. */
  readonly blocked: LotBlock | null;
}

/** What is sent out to a shop to be made. */
export interface SendOutPack {
  readonly parts: readonly PackPart[];
  /** By part, then file. Nothing goes out while there is one. */
  readonly faults: readonly PackFault[];
}

/** One file of a pack. */
export interface PackFile {
  /** Path within the pack. */
  readonly path: string;
  /** Name in the folder of the book's drawings. */
  readonly file: string;
  readonly partId: string;
  readonly revision: string;
  readonly kind: "drawing" | "outline" | "model";
  readonly bytes: number;
  readonly sha256: string;
}

/** A text as a part of a path: `Rev. B/2` is `Rev.-B-2`. */
const slug = (text: string): string =>
  text
    .replace(/[^A-Za-z0-9.-]+/g, "-")
    .replace(/^[.-]+|[.-]+$/g, "")
    .slice(0, 60);

function faultsOf({ partId, revision, drawings }: PackPart): readonly PackFault[] {
  if (revision === "") return [{ what: "no-revision", partId, file: "" }];
  if (drawings.length === 0) return [{ what: "no-drawing", partId, file: "" }];
  return drawings.flatMap(({ row, state }) =>
    state === "missing" || state === "differs" ? [{ what: state, partId, file: row.file }] : [],
  );
}

function packPart(machine: Machine, { partId, quantity }: WantedPart, files: FileFacts): PackPart | null {
  const part = machine.book.tables.parts.find(({ id }) => id === partId);
  if (part === undefined) return null;
  return {
    partId,
    labels: labelsOf(part, partId),
    revision: part.revision,
    material: part.material,
    thicknessMm: part.thickness_mm,
    finish: part.finish,
    unit: part.unit,
    quantity,
    folder: `${partId}_${slug(part.revision)}`,
    drawings: drawingsOf(machine, partId, files).present,
    dimensions: dimensionsOf(machine, partId),
    blocked: lotBlock(machine, partId),
  };
}

/**
 * What a shop needs to make some parts: of each the drawings of its present revision, material, thickness, finish and
 * quantity; and everything that forbids sending it out. Parts in the order of their ids; one that is wanted twice has
 * its quantities added.
 */
export function sendOutPack(machine: Machine, wanted: readonly WantedPart[], files: FileFacts): SendOutPack {
  const quantities = new Map<string, number>();
  for (const { partId, quantity } of wanted) quantities.set(partId, (quantities.get(partId) ?? 0) + quantity);
  const parts: PackPart[] = [];
  const faults: PackFault[] = [];
  for (const [partId, quantity] of [...quantities].sort(([a], [b]) => compareText(a, b))) {
    const part = packPart(machine, { partId, quantity }, files);
    if (part === null) faults.push({ what: "part-unknown", partId, file: "" });
    else {
      parts.push(part);
      faults.push(...faultsOf(part));
    }
  }
  return { parts, faults };
}

/** The drawings of a pack by their path in it, those that are at hand. */
export const packFiles = ({ parts }: SendOutPack): readonly PackFile[] =>
  parts.flatMap(({ partId, revision, folder, drawings }) =>
    drawings.flatMap(({ row, fact }): PackFile[] =>
      fact === null
        ? []
        : [{ path: `${folder}/${row.file}`, file: row.file, partId, revision, kind: row.kind, ...fact }],
    ),
  );
