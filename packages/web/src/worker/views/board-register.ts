import type { BoardRegisterRow } from "@pinwright/engine";
import { type NamedId, namedItem } from "../steps/named.ts";
import { view } from "./view.ts";

/** A board in the machine: where it is. */
interface BoardAt extends NamedId {
  readonly panelId: string;
  readonly panel: string;
  readonly panelZh: string;
  readonly side: "top" | "under";
  readonly address: number | null;
}

/** A kind of board, with every place that has one. */
export interface RegisteredBoard extends Omit<BoardRegisterRow, "labels" | "boardIds"> {
  readonly label: string;
  readonly labelZh: string;
  readonly widthMm: number;
  readonly depthMm: number;
  readonly heightMm: number;
  readonly tests: number;
  readonly boards: readonly BoardAt[];
}

/** Every kind of board of the machine. */
export const boardRegister = view<null, RegisteredBoard>({
  uses: ({ line, book }) => [
    line.boards,
    line.machine.items,
    book.tables.board_types,
    book.tables.tests,
    book.tables.panels,
  ],
  entries: (model) => {
    const { items, panels } = model.line.machine;
    const types = new Map(model.book.tables.board_types.map((row) => [row.id, row]));
    const boardAt = (id: string): readonly BoardAt[] => {
      const item = items.get(id);
      if (item?.kind !== "board") return [];
      const panel = panels.get(item.place.panelId);
      return [
        {
          ...namedItem(model, id),
          panelId: item.place.panelId,
          panel: panel?.label ?? "",
          panelZh: panel?.label_zh ?? "",
          side: item.place.side,
          address: item.address,
        },
      ];
    };
    return new Map(
      model.line.boards.register.map(({ labels, boardIds, ...row }) => {
        const type = types.get(row.typeId);
        return [
          row.typeId,
          {
            ...row,
            label: labels.en,
            labelZh: labels.zh,
            widthMm: type?.width_mm ?? 0,
            depthMm: type?.depth_mm ?? 0,
            heightMm: type?.height_mm ?? 0,
            tests: model.book.tables.tests.filter(({ board_type }) => board_type === row.typeId).length,
            boards: boardIds.flatMap(boardAt),
          },
        ];
      }),
    );
  },
  restsInPreview: true,
});
