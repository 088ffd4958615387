import type { BookRow } from "@pinwright/book";
import { boardsInMachine } from "@pinwright/engine";
import type { SolderTime } from "../asks/soldering.ts";
import { view } from "./view.ts";

/** What soldering and stuffing hang on: the shop's times and the boards that are stuffed here. */
export interface SolderBasis {
  readonly times: Readonly<Record<SolderTime, number>>;
  /** Further times, so that what hangs on them is worked out anew. */
  readonly others: readonly number[];
  readonly kinds: readonly { readonly typeId: string; readonly perMachine: number }[];
  /** What is placed on the boards; it is only told apart. */
  readonly placements: readonly string[];
  /** People at the benches where boards are stuffed. */
  readonly people: number;
}

export const solderBasis = view<null, SolderBasis>({
  uses: ({ line, book, shop }) => [
    line.boards,
    book.tables.placements,
    book.tables.boards,
    book.tables.board_types,
    shop.numbers,
    shop.tables.benches,
    shop.tables.prices,
    book.tables.parts,
  ],
  entries: ({ line, book, shop }) => {
    const { numbers } = shop;
    const placed = new Set(book.tables.placements.map((row) => row.board_type));
    const {
      hand_joint_s,
      hand_setup_min,
      bath_setup_min,
      bath_kind_min,
      bath_dip_min,
      bath_mask_s,
      bath_wash_min,
      bath_touch_up_pct,
      bath_hidden_s,
      bath_people,
    } = numbers;
    const basis: SolderBasis = {
      times: {
        hand_joint_s,
        hand_setup_min,
        bath_setup_min,
        bath_kind_min,
        bath_dip_min,
        bath_mask_s,
        bath_wash_min,
        bath_touch_up_pct,
        bath_hidden_s,
        bath_people,
      },
      others: [
        numbers.pick_part_s,
        numbers.form_part_s,
        numbers.clip_joint_s,
        numbers.rest_pct,
        numbers.part_attrition_pct,
        numbers.part_attrition_each,
        numbers.scrap_pct,
      ],
      kinds: [...boardsInMachine(line.machine)]
        .filter(([typeId]) => placed.has(typeId))
        .map(([typeId, perMachine]) => ({ typeId, perMachine })),
      placements: [
        ...book.tables.placements.map((row) => [row.board_type, row.reference, ...madeOf(row)].join(" ")),
        ...book.tables.board_types.map(({ id, carrier }) => `${id} ${carrier}`),
      ],
      people: shop.tables.benches
        .filter(({ kind }) => kind === "board")
        .reduce((sum, { people }) => sum + people, 0),
    };
    return new Map([["", basis]]);
  },
  restsInPreview: true,
});

/** Everything of a placement that stuffing and soldering hang on. */
const madeOf = ({
  part,
  x_mm,
  y_mm,
  height_mm,
  joints,
  after_wash,
  masks,
  hidden,
}: BookRow<"placements">): readonly (string | number | boolean)[] => [
  part,
  x_mm,
  y_mm,
  height_mm,
  joints,
  after_wash,
  masks,
  hidden,
];
