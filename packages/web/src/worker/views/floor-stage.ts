import { stuffingPlan } from "@pinwright/engine";
import { boardPage, pageSvg } from "@pinwright/sheets";
import { view } from "./view.ts";

/** A part that goes in during a stage. */
interface StagePart {
  readonly reference: string;
  /** Number of its box. */
  readonly box: number;
  readonly part: string;
  readonly partZh: string;
  readonly value: string;
  /** What marks the right way round. */
  readonly polarity: string;
}

/** One stage of stuffing a kind of board: its picture and what goes in, in order. */
export interface FloorStage {
  readonly picture: { readonly widthMm: number; readonly heightMm: number; readonly svg: string } | null;
  readonly when: "before-bath" | "after-wash";
  readonly upToMm: number | null;
  /** Of one board. */
  readonly seconds: number;
  readonly parts: readonly StagePart[];
}

/** A stage of stuffing by hand; nothing when there is no such stage. */
export const floorStage = view<{ readonly typeId: string; readonly stage: number }, FloorStage>({
  uses: ({ line, book }, { typeId }) => [
    book.tables.placements,
    book.tables.parts,
    book.tables.board_types.find(({ id }) => id === typeId),
    line.machine.book.tables.placements,
  ],
  entries: ({ line, book }, { typeId, stage }) => {
    if (!book.tables.placements.some((row) => row.board_type === typeId)) return new Map();
    const plan = stuffingPlan(line.machine, typeId, 1, "hand");
    const found = plan.stages.find(({ number }) => number === stage);
    if (found === undefined) return new Map();
    const page = boardPage(line.machine, plan, stage);
    const rows = new Map(
      book.tables.placements
        .filter((row) => row.board_type === typeId)
        .map((row) => [row.reference, row] as const),
    );
    const parts = new Map(book.tables.parts.map((row) => [row.id, row]));
    const boxes = new Map(plan.boxes.map((id, i) => [id, i + 1]));
    return new Map([
      [
        "",
        {
          picture:
            page === null
              ? null
              : { widthMm: page.widthMm, heightMm: page.heightMm, svg: pageSvg(page, typeId) },
          when: found.when,
          upToMm: found.upToMm,
          seconds: found.seconds,
          parts: found.references.flatMap((reference): readonly StagePart[] => {
            const row = rows.get(reference);
            const part = parts.get(row?.part ?? "");
            if (row === undefined) return [];
            return [
              {
                reference,
                box: boxes.get(row.part) ?? 0,
                part: part?.label ?? row.part,
                partZh: part?.label_zh ?? "",
                value: part?.value ?? "",
                polarity: row.polarity,
              },
            ];
          }),
        },
      ],
    ]);
  },
  restsInPreview: true,
});
