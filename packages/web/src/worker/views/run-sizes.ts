import { type NamedId, namedType } from "../steps/named.ts";
import { view } from "./view.ts";

/** A run of this machine that is still to be built. */
export interface RunSize extends NamedId {
  readonly machines: number;
}

/** The open runs of this machine, in the order of the shop: numbers of machines worth asking for. */
export const runSizes = view<null, RunSize>({
  uses: ({ book, shop }) => [book.machine.id, shop.tables.runs],
  entries: ({ book, shop }) =>
    new Map(
      shop.tables.runs
        .filter((row) => row.book === book.machine.id && row.state !== "done" && row.machines > 0)
        .map((row) => [row.id, { ...namedType(row), machines: row.machines }]),
    ),
  restsInPreview: true,
});
