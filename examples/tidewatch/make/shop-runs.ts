import { SHOP_TABLES, type ShopRow, type ShopTableName, type ShopTables } from "@pinwright/book";
import { fillRows } from "./author.ts";

const rows = <N extends ShopTableName>(name: N, written: readonly Partial<ShopRow<N>>[]): ShopRow<N>[] =>
  fillRows<ShopRow<N>>(SHOP_TABLES[name], written);

/** What every machine goes through: cabinets at the joinery, all else at the works. Invented, as everything here. */
const stages = rows("stages", [
  {
    id: "st.panels",
    label: "Panels sawn, routed and boxed",
    label_zh: "锯板、铣削、组箱",
    kind: "panels",
    batch: 3,
  },
  {
    id: "st.paint",
    label: "Cabinets painted",
    label_zh: "机箱喷漆",
    kind: "paint",
    after: ["st.panels"],
    batch: 9,
    wait_hours: 24,
    most_per_day: 9,
  },
  {
    id: "st.bring",
    label: "Cabinets brought to the works",
    label_zh: "机箱运到总厂",
    kind: "transport",
    after: ["st.paint"],
    batch: 9,
    most_per_day: 18,
  },
  {
    id: "st.boards",
    label: "Boards stuffed and tested",
    label_zh: "插装与测试电路板",
    kind: "boards",
    batch: 5,
  },
  { id: "st.harness", label: "Harnesses laid and tested", label_zh: "敷设与测试线束", kind: "harness" },
  {
    id: "st.mechanisms",
    label: "Mechanisms built and cycled",
    label_zh: "装配与试动机构",
    kind: "mechanisms",
    benches: ["mechanisms-1"],
  },
  {
    id: "st.assembly",
    label: "Playfield and cabinet assembled",
    label_zh: "台面与机箱装配",
    kind: "assembly",
    after: ["st.bring", "st.boards", "st.harness", "st.mechanisms"],
    benches: ["playfield-1", "playfield-2", "final"],
  },
  {
    id: "st.test",
    label: "Tested, burned in, tested again",
    label_zh: "测试、老化、复测",
    kind: "test",
    after: ["st.assembly"],
    minutes: 150,
    wait_hours: 16,
  },
  { id: "st.pack", label: "Packed", label_zh: "包装", kind: "pack", after: ["st.test"], minutes: 40 },
]);

const runs = rows("runs", [
  {
    id: "run.first",
    label: "First five",
    label_zh: "首批五台",
    book: "tidewatch",
    machines: 5,
    ship: "2026-10-30",
    state: "done",
    remark: "Built from what there was, to try the drawings.",
  },
  {
    id: "run.spring",
    label: "Spring run",
    label_zh: "春季批次",
    book: "tidewatch",
    machines: 25,
    ship: "2027-05-28",
  },
  {
    id: "run.autumn",
    label: "Autumn run",
    label_zh: "秋季批次",
    book: "tidewatch",
    machines: 100,
    ship: "2027-11-26",
  },
]);

const run_mix = rows("run_mix", [
  { run: "run.spring", options: "mains-115", machines: 6 },
  { run: "run.spring", options: "language-zh", machines: 4 },
  { run: "run.autumn", options: "mains-115", machines: 25 },
  { run: "run.autumn", options: "language-zh", machines: 15 },
]);

/** Days off: both sites on public holidays, and two weeks of summer in which the works is closed. */
const holidays = ["2026-12-24", "2026-12-31", "2027-01-01", "2027-03-26", "2027-03-29", "2027-05-06"];
const summer = ["02", "03", "04", "05", "06", "09", "10", "11", "12", "13"].map((day) => `2027-08-${day}`);
const calendars = rows("calendars", [
  ...["works", "joinery"].flatMap((site) => holidays.map((day) => ({ site, day }))),
  ...summer.map((day) => ({ site: "works", day })),
]);

/** What was left over of the first five, as counted; what came since; what was spoilt. */
const movements = rows("movements", [
  { id: "mv.0001", day: "2026-11-02", part: "hw.tie-80", kind: "counted", quantity: 420, by: "stores" },
  { id: "mv.0002", day: "2026-11-02", part: "hw.tie-100", kind: "counted", quantity: 1310, by: "stores" },
  { id: "mv.0003", day: "2026-11-02", part: "hw.tie-150", kind: "counted", quantity: 95, by: "stores" },
  { id: "mv.0004", day: "2026-11-02", part: "dev.psu-48", kind: "counted", quantity: 2, by: "stores" },
  { id: "mv.0005", day: "2026-11-03", part: "fuse.t-6-3", kind: "counted", quantity: 60, by: "stores" },
  {
    id: "mv.0006",
    day: "2026-11-16",
    part: "dev.psu-48",
    kind: "received",
    quantity: 10,
    order: "po.0007",
    by: "stores",
  },
  {
    id: "mv.0007",
    day: "2026-11-17",
    part: "dev.psu-48",
    kind: "scrapped",
    quantity: 1,
    reason: "Dropped; case bent.",
    by: "stores",
  },
]);

const orders = rows("orders", [
  {
    id: "po.0007",
    supplier: "power",
    day: "2026-11-02",
    due: "2026-12-14",
    run: "run.spring",
    state: "confirmed",
    remark: "Ten came early, the rest follows.",
  },
]);
const order_lines = rows("order_lines", [
  { order: "po.0007", part: "dev.psu-48", quantity: 24, price: 58.9 },
]);

/** Runs, stages, days off, and what there is in stock and on order. */
export const runShop: Partial<ShopTables> = {
  stages,
  runs,
  run_mix,
  calendars,
  movements,
  orders,
  order_lines,
};
