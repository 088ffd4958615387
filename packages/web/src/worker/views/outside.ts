import {
  type CheckedDimension,
  dimensionsOf,
  type Finding,
  type JudgedSample,
  judgeSample,
  type LotBlock,
  type Machine,
  outsideFindings,
  outsidePart,
  outsidePartIds,
  type SampleState,
  samplesOf,
} from "@pinwright/engine";
import type { Model } from "../model.ts";
import type { NamedId } from "../steps/named.ts";
import { view } from "./view.ts";

/** The machine with the shop as it is now: the line's own leaves out what the floor writes down. */
const machineNow = ({ line, book, shop }: Model): Machine => ({ ...line.machine, book, shop });

const usesOf = ({ book, shop }: Model): readonly unknown[] => [
  book.tables.parts,
  book.tables.drawings,
  book.tables.dimensions,
  shop.tables.samples,
  shop.tables.sample_values,
];

/** A part that is made outside, as it stands in the list. */
export interface OutsideLine extends NamedId {
  readonly kind: string;
  readonly revision: string;
  readonly material: string;
  readonly thicknessMm: number | null;
  readonly finish: string;
  /** Drawings of the present revision, and of others. */
  readonly drawings: number;
  readonly oldDrawings: number;
  readonly dimensions: number;
  readonly sample: SampleState;
  readonly blocked: LotBlock | null;
}

/** Every part that is made outside, by id. */
export const outsideLines = view<null, OutsideLine>({
  uses: usesOf,
  entries: (model) => {
    const machine = machineNow(model);
    return new Map(
      outsidePartIds(machine).flatMap((id): [string, OutsideLine][] => {
        const part = outsidePart(machine, id, null);
        if (part === null) return [];
        const { row, drawings, dimensions, sample, blocked } = part;
        const line = {
          id,
          label: row.label,
          labelZh: row.label_zh,
          kind: row.kind,
          revision: row.revision,
          material: row.material,
          thicknessMm: row.thickness_mm,
          finish: row.finish,
          drawings: drawings.present.length,
          oldDrawings: drawings.others.length,
          dimensions,
          sample,
          blocked,
        };
        return [[id, line]];
      }),
    );
  },
  restsInPreview: true,
  early: true,
});

/** A file of a part as the table of drawings has it. */
interface OutsideDrawing {
  readonly revision: string;
  readonly file: string;
  readonly kind: "drawing" | "outline" | "model";
  /** Hash of the bytes that were meant; blank: nobody said. */
  readonly sha256: string;
  readonly remark: string;
}

/** One part with everything that its page shows. */
export interface OutsideDetail extends OutsideLine {
  /** Files of all revisions: those of the present one first, then by revision and name. */
  readonly files: readonly OutsideDrawing[];
  readonly marked: readonly CheckedDimension[];
  /** Samples as they were asked for, first first. */
  readonly samples: readonly JudgedSample[];
  readonly findings: readonly Finding[];
}

/** One part that is made outside; no entry when the book has no such part. */
export const outsideDetail = view<string, OutsideDetail>({
  uses: (model) => [...usesOf(model), model.line.findings],
  entries: (model, id) => {
    const machine = machineNow(model);
    const part = outsidePart(machine, id, null);
    if (part === null) return new Map();
    const { row, drawings, dimensions, sample, blocked } = part;
    const files = [...drawings.present, ...drawings.others].map(({ row: drawing }) => ({
      revision: drawing.revision,
      file: drawing.file,
      kind: drawing.kind,
      sha256: drawing.sha256,
      remark: drawing.remark,
    }));
    const isOwn = ({ rule, subjects }: Finding): boolean =>
      subjects[0] === id && /^(?:drawing|sample|dimension|made)-/.test(rule);
    const detail: OutsideDetail = {
      id,
      label: row.label,
      labelZh: row.label_zh,
      kind: row.kind,
      revision: row.revision,
      material: row.material,
      thicknessMm: row.thickness_mm,
      finish: row.finish,
      drawings: drawings.present.length,
      oldDrawings: drawings.others.length,
      dimensions,
      sample,
      blocked,
      files,
      marked: dimensionsOf(machine, id),
      samples: samplesOf(machine, id).flatMap(({ id: sampleId }) => judgeSample(machine, sampleId) ?? []),
      findings: [...model.line.findings, ...outsideFindings(machine, null)].filter(isOwn),
    };
    return new Map([[id, detail]]);
  },
  restsInPreview: true,
});

/** Suppliers of the shop, for choosing one. */
export const outsideSuppliers = view<null, NamedId>({
  uses: ({ shop }) => [shop.tables.suppliers],
  entries: ({ shop }) =>
    new Map(shop.tables.suppliers.map(({ id, label, label_zh }) => [id, { id, label, labelZh: label_zh }])),
  restsInPreview: true,
  early: true,
});
