import type { Book, BookRow, Shop } from "@pinwright/book";
import { resolveMachine } from "@pinwright/engine";
import { rows, type Topic } from "./author.ts";
import { bonds } from "./production-bonds.ts";
import { boardFixings, STANDOFFS } from "./production-fixings.ts";
import { ELECTRONICS, placements } from "./production-placements.ts";
import { stepRules } from "./production-rules.ts";
import { STATIONS, stationChoices, steps } from "./production-steps.ts";
import { tests } from "./production-tests.ts";
import { HOLDERS, pricesOf } from "./shop.ts";

type Part = Partial<BookRow<"parts">> & Pick<BookRow<"parts">, "id" | "label" | "label_zh" | "kind">;

const OPTIONS: readonly Partial<BookRow<"options">>[] = [
  { id: "mains-230", label: "Mains 230 V", label_zh: "市电 230 V", kind: "mains", usual: "yes" },
  { id: "mains-115", label: "Mains 115 V", label_zh: "市电 115 V", kind: "mains" },
  {
    id: "language-en",
    label: "English labels and book",
    label_zh: "英文标签与手册",
    kind: "language",
    usual: "yes",
  },
  { id: "language-zh", label: "Chinese labels and book", label_zh: "中文标签与手册", kind: "language" },
];

/** Parts that neither wiring nor mechanisms name by themselves. */
const LOOSE: readonly Part[] = [
  { id: "hw.ring-m4", label: "Ring terminal M4", label_zh: "M4 圆环端子", kind: "contact" },
  { id: "hw.washer-toothed-m4", label: "Toothed washer M4", label_zh: "M4 齿形垫圈", kind: "hardware" },
  {
    id: "hw.ball",
    label: "Ball, 27 mm, steel",
    label_zh: "27 mm 钢球",
    kind: "turned",
    source: "have-made",
    mass_g: 80.9,
    wear: true,
  },
  {
    id: "hw.glass",
    label: "Playfield glass, tempered",
    label_zh: "台面钢化玻璃",
    kind: "bought-in",
    source: "have-made",
  },
  {
    id: "hw.leg",
    label: "Leg with leveller",
    label_zh: "机腿带调脚",
    kind: "laser-cut",
    source: "have-made",
  },
  { id: "hw.leg-bolt", label: "Leg bolt M10 × 65", label_zh: "机腿螺栓 M10 × 65", kind: "screw" },
  { id: "hw.lockbar", label: "Lock bar", label_zh: "锁条", kind: "laser-cut", source: "have-made" },
  { id: "hw.side-rail", label: "Side rail", label_zh: "侧边条", kind: "laser-cut", source: "have-made" },
  { id: "cord.230", label: "Mains cord, 230 V plug", label_zh: "230 V 电源线", kind: "cable" },
  { id: "cord.115", label: "Mains cord, 115 V plug", label_zh: "115 V 电源线", kind: "cable" },
  { id: "label.plate-230", label: "Rating plate 230 V", label_zh: "230 V 铭牌", kind: "consumable" },
  { id: "label.plate-115", label: "Rating plate 115 V", label_zh: "115 V 铭牌", kind: "consumable" },
  {
    id: "insert.round",
    label: "Insert, round, clear",
    label_zh: "圆形透明嵌件",
    kind: "moulded",
    source: "have-made",
  },
  {
    id: "plastic.flipper-bat",
    label: "Flipper bat",
    label_zh: "拨板",
    kind: "moulded",
    source: "have-made",
    wear: true,
  },
  { id: "rubber.flipper", label: "Flipper rubber", label_zh: "拨板橡皮", kind: "moulded", wear: true },
  ...[18, 13, 12, 9].map(
    (mm): Part => ({
      id: `sheet.ply-${mm}`,
      label: `Birch plywood ${mm} mm`,
      label_zh: `桦木胶合板 ${mm} mm`,
      kind: "sheet",
      unit: "m2",
    }),
  ),
];

const TOOLING: readonly Partial<BookRow<"tooling">>[] = [
  {
    id: "tl.insert-mould",
    label: "Mould for round inserts, four cavities",
    label_zh: "圆嵌件模具四腔",
    part: "insert.round",
    cost: 3800,
    life: 200000,
    lead_days: 45,
    replaces: "turned from rod",
  },
  {
    id: "tl.bat-mould",
    label: "Mould for flipper bats",
    label_zh: "拨板模具",
    part: "plastic.flipper-bat",
    cost: 2600,
    life: 100000,
    lead_days: 45,
    replaces: "cast by hand",
  },
  {
    id: "tl.lockbar-jig",
    label: "Bending jig for the lock bar",
    label_zh: "锁条折弯治具",
    part: "hw.lockbar",
    cost: 420,
    lead_days: 14,
    replaces: "bent on the brake by eye",
  },
];

const BOM: readonly Partial<BookRow<"bom">>[] = [
  { part: "hw.ball", quantity: 4, remark: "trough" },
  { part: "hw.glass", quantity: 1 },
  { part: "hw.leg", quantity: 4 },
  { part: "hw.leg-bolt", quantity: 8 },
  { part: "hw.lockbar", quantity: 1 },
  { part: "hw.side-rail", quantity: 2 },
  { part: "plastic.flipper-bat", quantity: 3 },
  { part: "rubber.flipper", quantity: 3 },
  { part: "cord.230", quantity: 1, options: ["mains-230"] },
  { part: "cord.115", quantity: 1, options: ["mains-115"] },
  { part: "label.plate-230", quantity: 1, options: ["mains-230"] },
  { part: "label.plate-115", quantity: 1, options: ["mains-115"] },
];

/** What the floor and the buyer need, made from the machine as the other topics have placed and wired it. */
export function production(book: Book, shop: Shop): Topic {
  const t = book.tables;
  const known = new Set(t.parts.map((part) => part.id));
  const parts = rows("parts", [
    ...LOOSE,
    ...ELECTRONICS.map(
      ({ part, label, labelZh }): Part => ({ id: part, label, label_zh: labelZh, kind: "electronic" }),
    ),
    ...HOLDERS.map(({ part, label, label_zh }): Part => ({ id: part, label, label_zh, kind: "hardware" })),
    ...[...t.fastener_types, ...STANDOFFS].flatMap(({ part, label, label_zh }): Part[] =>
      part === undefined || part === null
        ? []
        : [{ id: part, label: label ?? part, label_zh: label_zh ?? "", kind: "screw" }],
    ),
  ]).filter((part, i, all) => !known.has(part.id) && all.findIndex((other) => other.id === part.id) === i);
  return {
    tables: {
      options: rows("options", OPTIONS),
      bonds,
      fastener_types: rows("fastener_types", STANDOFFS),
      fasteners: [...boardFixings(resolveMachine(book, shop))],
      placements: [...placements(t.board_types, t.connectors, t.elements)],
      stations: rows("stations", STATIONS),
      steps: [...steps(book)],
      step_rules: [...stepRules(book)],
      choices: [...stationChoices()],
      tests: [...tests(t.board_types, t.elements, t.harnesses, bonds, t.supplies)],
      parts,
      tooling: rows("tooling", TOOLING),
      bom: rows("bom", BOM),
    },
    shop: pricesOf([...t.parts, ...parts]),
  };
}
