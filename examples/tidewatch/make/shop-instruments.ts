import { SHOP_TABLES, type ShopRow, type ShopTableName, type ShopTables } from "@pinwright/book";
import { fillRows } from "./author.ts";

const rows = <N extends ShopTableName>(name: N, written: readonly Partial<ShopRow<N>>[]): ShopRow<N>[] =>
  fillRows<ShopRow<N>>(SHOP_TABLES[name], written);

/**
 * What the shop measures with. Invented, as everything here: `.example` leads nowhere (RFC 2606). Insulation and earth
 * bonds have testers of their own, whose readings are typed.
 */
export const instrumentShop: Partial<ShopTables> = {
  instruments: rows("instruments", [
    {
      id: "meter-bench",
      label: "Bench meter",
      label_zh: "台式万用表",
      kind: "scpi",
      host: "meter-bench.example",
      port: 5025,
      calibrated_until: "2027-09-30",
    },
    {
      id: "meter-test",
      label: "Test meter, guarded leads",
      label_zh: "测试工位万用表",
      kind: "scpi",
      station: "stn.test",
      host: "meter-test.example",
      port: 5025,
      calibrated_until: "2027-09-30",
    },
    {
      id: "tester-harness",
      label: "Continuity tester, 512 points",
      label_zh: "通断测试仪（512 点）",
      kind: "continuity",
      host: "tester-harness.example",
      port: 4300,
      wait_s: 20,
    },
  ]),
  instrument_measures: rows("instrument_measures", [
    ...["meter-bench", "meter-test"].flatMap((instrument) => [
      { instrument, measure: "volts-dc", unit: "V", query: "MEAS:VOLT:DC?", min: 0, max: 60 },
      {
        ...{ instrument, measure: "milliamps-dc", unit: "mA", query: "MEAS:CURR:DC?" },
        ...{ factor: 1000, min: 0, max: 3000 },
      },
    ]),
    {
      instrument: "meter-bench",
      measure: "ohms-four-wire",
      unit: "Ω",
      query: "MEAS:FRES?",
      min: 0,
      max: 1e6,
    },
    {
      ...{ instrument: "meter-test", measure: "volts-ac", unit: "V", query: "MEAS:VOLT:AC?" },
      ...{ min: 90, max: 260 },
    },
  ]),
};
