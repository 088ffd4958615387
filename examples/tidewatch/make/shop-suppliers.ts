import { SHOP_TABLES, type ShopRow } from "@pinwright/book";
import { fillRows } from "./author.ts";
import { CNY_EUR } from "./parts/part-kit.ts";

type Supplier = readonly [
  id: string,
  label: string,
  label_zh: string,
  lead_days: number,
  terms: Partial<ShopRow<"suppliers">>,
];

const SUPPLIERS: readonly Supplier[] = [
  ["components", "Components trade", "元件商", 5, { shipping: 9, least_order: 25 }],
  ["components-b", "Components trade, second", "元件商二", 8, { shipping: 12, least_order: 50 }],
  ["wire", "Wire works", "电线厂", 10, { shipping: 28, least_order: 150 }],
  ["wire-b", "Wire trade, second", "电线商二", 6, { shipping: 16, least_order: 80 }],
  ["hardware", "Hardware trade", "五金商", 3, { shipping: 8, least_order: 20 }],
  ["hardware-b", "Screw wholesaler", "螺钉批发商", 9, { shipping: 22, least_order: 100 }],
  [
    "boards",
    "Board maker",
    "电路板厂",
    15,
    { shipping: 35, order_cost: 25, least_order: 80, deposit_pct: 50 },
  ],
  ["timber", "Timber yard", "木材行", 7, { shipping: 60, least_order: 200 }],
  ["timber-b", "Timber trade, second", "木材商二", 5, { shipping: 85, least_order: 150 }],
  ["metalwork", "Metal workshop", "金属加工", 20, { shipping: 35, order_cost: 30, least_order: 150 }],
  ["stamper", "Stamping works", "冲压厂", 25, { shipping: 40, order_cost: 30, least_order: 250 }],
  ["turner", "Turning shop", "车削加工", 18, { shipping: 14, order_cost: 25, least_order: 100 }],
  [
    "moulder",
    "Moulder",
    "注塑厂",
    28,
    { currency: "CNY", shipping: 900, order_cost: 45, least_order: 2000, payment_days: 0, deposit_pct: 30 },
  ],
  ["springs", "Spring and wire works", "弹簧厂", 15, { shipping: 10, order_cost: 20, least_order: 60 }],
  ["coils", "Coil winder", "绕线厂", 21, { shipping: 25, order_cost: 25, least_order: 200 }],
  ["switches", "Switch and lamp trade", "开关灯具商", 12, { shipping: 15, least_order: 100 }],
  ["power", "Trade in supplies and motors", "电源电机商", 14, { shipping: 30, least_order: 100 }],
  ["rubber", "Rubber goods", "橡胶制品", 20, { shipping: 10, least_order: 50 }],
  ["plastics", "Sheet plastics shop", "板材加工", 15, { shipping: 18, order_cost: 25, least_order: 100 }],
  ["glass", "Glazier", "玻璃厂", 12, { shipping: 75, order_cost: 25, least_order: 250 }],
  ["print", "Printing house", "印刷厂", 10, { shipping: 15, order_cost: 25, least_order: 50 }],
  ["paint", "Paint trade", "涂料商", 4, { shipping: 18, least_order: 50 }],
  ["packing", "Packaging works", "包装厂", 9, { shipping: 45, least_order: 150 }],
];

/** Who sells to the shop. All of them, their terms and their prices are invented. */
export const suppliers = fillRows<ShopRow<"suppliers">>(
  SHOP_TABLES.suppliers,
  SUPPLIERS.map(([id, label, label_zh, lead_days, terms]) => ({
    id,
    label,
    label_zh,
    currency: "EUR",
    lead_days,
    contact: "Sales desk",
    ...terms,
  })),
);

/** What the moulder's currency is worth is invented, too. */
export const currencies = fillRows<ShopRow<"currencies">>(SHOP_TABLES.currencies, [
  { id: "EUR", own: "yes", rate: 1 },
  { id: "CNY", rate: CNY_EUR },
]);
