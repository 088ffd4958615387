import { view } from "./view.ts";

/** A step of testing a kind of board. */
export interface BoardTest {
  readonly id: string;
  readonly typeId: string;
  readonly type: string;
  readonly typeZh: string;
  readonly label: string;
  readonly labelZh: string;
  readonly order: number;
  readonly kind: "visual" | "yes-no" | "measure" | "sequence";
  readonly purpose: string;
  readonly unit: string;
  readonly nominal: number | null;
  readonly min: number | null;
  readonly max: number | null;
  readonly do: string;
  readonly doZh: string;
  readonly caution: string;
  readonly cautionZh: string;
}

/** Every step of testing a kind of board, kind after kind in the order of the book, each in its order. */
export const boardTests = view<null, BoardTest>({
  uses: ({ book }) => [book.tables.tests, book.tables.board_types],
  entries: ({ book }) =>
    new Map(
      book.tables.board_types.flatMap((type) =>
        book.tables.tests
          .filter(({ scope, board_type }) => scope === "board" && board_type === type.id)
          .toSorted((a, b) => a.order - b.order)
          .map((row) => [
            row.id,
            {
              id: row.id,
              typeId: type.id,
              type: type.label,
              typeZh: type.label_zh,
              label: row.label,
              labelZh: row.label_zh,
              order: row.order,
              kind: row.kind,
              purpose: row.purpose,
              unit: row.unit,
              nominal: row.nominal,
              min: row.min,
              max: row.max,
              do: row.do,
              doZh: row.do_zh,
              caution: row.caution,
              cautionZh: row.caution_zh,
            },
          ]),
      ),
    ),
  restsInPreview: true,
});
