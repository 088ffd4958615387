import { type NamedId, namedType } from "../steps/named.ts";
import { view } from "./view.ts";

/** A coat of the shop. */
interface Coat extends NamedId {
  readonly minutes: number;
  readonly dryHours: number;
}

/** What the painting of cabinets hangs on: coats in their order. */
export interface PaintBasis {
  readonly coats: readonly Coat[];
  readonly rackCabinets: number;
  /** Hours a day and people of the benches where it is painted. */
  readonly benches: readonly { readonly hoursDay: number; readonly people: number }[];
}

export const paintBasis = view<null, PaintBasis>({
  uses: ({ shop }) => [shop.tables.coats, shop.tables.benches, shop.numbers],
  entries: ({ shop }) =>
    new Map([
      [
        "",
        {
          coats: shop.tables.coats
            .toSorted((a, b) => a.order - b.order)
            .map((row) => ({ ...namedType(row), minutes: row.minutes, dryHours: row.dry_hours })),
          rackCabinets: shop.numbers.rack_cabinets,
          benches: shop.tables.benches
            .filter(({ kind }) => kind === "paint")
            .map(({ hours_day, people }) => ({ hoursDay: hours_day, people })),
        },
      ],
    ]),
  restsInPreview: true,
});
