import type { UnitKind } from "@pinwright/contract";
import type { NamedId } from "../steps/named.ts";
import { view } from "./view.ts";

/** A kind of thing that is built and gets serial numbers. */
export interface FloorType extends NamedId {
  readonly what: UnitKind;
}

/** Everything of the book that units can be of, by `what type`; the machine by `machine`. */
export const floorTypes = view<null, FloorType>({
  early: true,
  uses: ({ book }) => [
    book.tables.board_types,
    book.tables.harnesses,
    book.tables.mechanism_types,
    book.machine,
  ],
  entries: ({ book: { tables, machine } }) => {
    const kinds = [
      ["board", tables.board_types],
      ["harness", tables.harnesses],
      ["mechanism", tables.mechanism_types],
      ["machine", [{ id: machine.id, label: machine.label, label_zh: machine.label_zh }]],
    ] as const;
    return new Map(
      kinds.flatMap(([what, rows]) =>
        rows.map(({ id, label, label_zh }): [string, FloorType] => [
          what === "machine" ? what : `${what} ${id}`,
          { what, id, label, labelZh: label_zh },
        ]),
      ),
    );
  },
  restsInPreview: true,
});

/** A stage that things are handed over to. */
export interface FloorStageOfShop extends NamedId {
  readonly kind: string;
  /** Stages that come before it. */
  readonly after: readonly string[];
}

/** A workshop of the shop. */
export const floorSites = view<null, NamedId>({
  early: true,
  uses: ({ shop }) => [shop.tables.sites],
  entries: ({ shop }) =>
    new Map(shop.tables.sites.map(({ id, label, label_zh }) => [id, { id, label, labelZh: label_zh }])),
  restsInPreview: true,
});

/** Stages of the shop, in its order. */
export const floorStages = view<null, FloorStageOfShop>({
  early: true,
  uses: ({ shop }) => [shop.tables.stages],
  entries: ({ shop }) =>
    new Map(
      shop.tables.stages.map(({ id, label, label_zh, kind, after }) => [
        id,
        { id, label, labelZh: label_zh, kind, after },
      ]),
    ),
  restsInPreview: true,
});
