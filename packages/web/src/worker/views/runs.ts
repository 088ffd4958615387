import type { ShopRow } from "@pinwright/book";
import type { NamedId } from "../steps/named.ts";
import { view } from "./view.ts";

/** A run as somebody wrote it. */
export interface RunRow extends NamedId {
  readonly machines: number;
  readonly ship: string;
  readonly begin: string;
  readonly state: ShopRow<"runs">["state"];
  readonly confidencePct: number;
  readonly spareYears: number;
  readonly remark: string;
  /** Machine that it builds: another book's runs are listed, but not planned here. */
  readonly bookId: string;
  readonly isOfBook: boolean;
  readonly mix: readonly { readonly options: string; readonly machines: number }[];
  /** Rows of prices that were frozen for it. */
  readonly frozenPrices: number;
}

/** Every run of the shop, those of this book first, by ship day. */
export const runs = view<null, RunRow>({
  uses: ({ book, shop: { tables } }) => [book.machine, tables.runs, tables.run_mix, tables.run_prices],
  entries: ({ book, shop: { tables } }) =>
    new Map(
      tables.runs
        .map(
          (row): RunRow => ({
            id: row.id,
            label: row.label,
            labelZh: row.label_zh,
            machines: row.machines,
            ship: row.ship,
            begin: row.begin,
            state: row.state,
            confidencePct: row.confidence_pct,
            spareYears: row.spare_years,
            remark: row.remark,
            bookId: row.book,
            isOfBook: row.book === book.machine.id,
            mix: tables.run_mix
              .filter(({ run }) => run === row.id)
              .map(({ options, machines }) => ({ options, machines })),
            frozenPrices: tables.run_prices.filter(({ run }) => run === row.id).length,
          }),
        )
        .sort(
          (a, b) =>
            Number(b.isOfBook) - Number(a.isOfBook) || (a.ship < b.ship ? -1 : a.ship > b.ship ? 1 : 0),
        )
        .map((row) => [row.id, row]),
    ),
  restsInPreview: true,
});

/** An option that machines can be built with. */
interface OptionRow extends NamedId {
  /** Of one kind, a machine has one; blank: it stands by itself. */
  readonly kind: string;
  readonly isUsual: boolean;
}

/** What runs are planned with: the book's options and what the shop has said. */
export interface PlanGround {
  readonly machineId: string;
  readonly currency: string;
  readonly options: readonly OptionRow[];
  readonly stages: number;
  readonly suppliers: number;
  /** Days of a week on which is worked. */
  readonly workDays: number;
  /** Days on which is not, of any site. */
  readonly holidays: readonly string[];
}

export const planGround = view<null, PlanGround>({
  uses: ({ book, shop: { tables, numbers } }) => [
    book.machine,
    book.tables.options,
    tables.currencies,
    tables.stages,
    tables.suppliers,
    tables.calendars,
    numbers,
  ],
  entries: ({ book, shop: { tables, numbers } }) =>
    new Map([
      [
        "",
        {
          machineId: book.machine.id,
          currency: tables.currencies.find(({ own }) => own === "yes")?.id ?? "",
          options: book.tables.options.map(({ id, label, label_zh, kind, usual }) => ({
            id,
            label,
            labelZh: label_zh,
            kind,
            isUsual: usual === "yes",
          })),
          stages: tables.stages.length,
          suppliers: tables.suppliers.length,
          workDays: numbers.work_days,
          holidays: [...new Set(tables.calendars.filter(({ hours }) => hours === 0).map(({ day }) => day))],
        },
      ],
    ]),
  restsInPreview: true,
});
