import { type CellTables, rawShopOf, readRawShop, type ShopRow } from "@pinwright/book";
import type { InstrumentInfo } from "@pinwright/contract";
import type { InstrumentAddress } from "./transports.ts";

/** A question that an instrument is asked, and what its answer means. */
interface Measure {
  readonly unit: string;
  readonly query: string;
  readonly factor: number;
  readonly min: number | null;
  readonly max: number | null;
}

/** An instrument of the shop. */
export interface Instrument extends Omit<InstrumentInfo, "measures"> {
  /** null: the shop says nothing that leads to it. */
  readonly address: InstrumentAddress | null;
  readonly timeoutMs: number;
  readonly measures: readonly Measure[];
}

const TABLES = ["instruments", "instrument_measures"];
const MS = 1000;

/**
 * Instruments of the shop, in the order of their rows. A row with a fault is there as far as it could be read.
 * @param tables tables of the shop
 */
export function instrumentsOf(tables: CellTables): readonly Instrument[] {
  const own = new Map([...tables].filter(([name]) => TABLES.includes(name)));
  const { shop } = readRawShop(rawShopOf(own).raw, new Set());
  return shop.tables.instruments.map(
    (row): Instrument => ({
      id: row.id,
      label: row.label,
      labelZh: row.label_zh,
      kind: row.kind,
      station: row.station,
      calibratedUntil: row.calibrated_until,
      address: addressOf(row),
      timeoutMs: row.wait_s * MS,
      measures: shop.tables.instrument_measures
        .filter(({ instrument }) => instrument === row.id)
        .map(({ unit, query, factor, min, max }) => ({ unit, query, factor, min, max })),
    }),
  );
}

function addressOf({ host, port, device, baud }: ShopRow<"instruments">): InstrumentAddress | null {
  if (host !== "") return port === null ? null : { kind: "tcp", host, port };
  return device === "" ? null : { kind: "serial", path: device, baud };
}
