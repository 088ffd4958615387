import { type BookRow, SHOP_TABLES, type ShopRow } from "@pinwright/book";
import { fillRows, rows } from "../author.ts";
import { COIL_NAMES } from "./coil-parts.ts";
import type { Item, Way } from "./part-kit.ts";
import { WOOD_PARTS } from "./top-parts.ts";

type Tool = Partial<BookRow<"tooling">> & { readonly id: string };

const tool = (
  id: string,
  label: string,
  label_zh: string,
  part: string,
  cost: number,
  life: number | null,
  lead_days: number,
  replaces: string,
): Tool => ({ id, label, label_zh, part, cost, life, lead_days, replaces });

const TOOLS: readonly Tool[] = [
  tool(
    "tl.insert-mould-16",
    "Mould for inserts of 16 mm, eight cavities",
    "16 mm 嵌件模具八腔",
    "insert.round-16",
    9800,
    400000,
    45,
    "bought in packs",
  ),
  tool(
    "tl.insert-mould-22",
    "Mould for inserts of 22 mm, two cavities",
    "22 mm 嵌件模具两腔",
    "insert.round-22",
    4200,
    200000,
    45,
    "bought in packs",
  ),
  tool(
    "tl.bat-mould",
    "Mould for flipper bats",
    "拨板模具",
    "md.flipper-bat",
    2600,
    100000,
    45,
    "cast by hand",
  ),
  tool(
    "tl.target-mould",
    "Mould for drop targets",
    "落靶片模具",
    "md.drop-target",
    2900,
    150000,
    45,
    "milled from bar",
  ),
  tool(
    "tl.tower-mould",
    "Mould for the tower's half shells",
    "塔身半壳模具",
    "md.tower",
    6800,
    80000,
    50,
    "printed in layers",
  ),
  tool(
    "tl.hull-mould",
    "Mould for the ship's hull",
    "船体模具",
    "md.ship-hull",
    5400,
    80000,
    50,
    "printed in layers",
  ),
  tool(
    "tl.cap-mould",
    "Mould for pop bumper caps",
    "弹跳柱顶盖模具",
    "md.bumper-cap",
    4200,
    100000,
    45,
    "vacuum-formed",
  ),
  tool(
    "tl.lockbar-jig",
    "Bending jig for the lock bar",
    "锁条折弯治具",
    "br.lockbar",
    420,
    null,
    14,
    "bent on the brake by eye",
  ),
  tool(
    "tl.ramp-left-form",
    "Form for the left ramp",
    "左坡道吸塑模",
    "top.ramp-left-deck",
    680,
    3000,
    18,
    "bent from sheet",
  ),
  tool(
    "tl.ramp-right-form",
    "Form for the right ramp",
    "右坡道吸塑模",
    "top.ramp-right-deck",
    740,
    3000,
    18,
    "bent from sheet",
  ),
  tool(
    "tl.fork-form",
    "Form for the ramp fork",
    "坡道分岔吸塑模",
    "top.ramp-right-fork",
    460,
    3000,
    18,
    "bent from sheet",
  ),
  tool(
    "tl.lamp-stamp",
    "Stamping tool for lamp brackets",
    "灯支架冲模",
    "br.lamp-insert",
    3400,
    500000,
    35,
    "laser-cut",
  ),
  tool(
    "tl.rollover-stamp",
    "Stamping tool for rollover brackets",
    "滚道支架冲模",
    "br.rollover",
    1900,
    300000,
    35,
    "laser-cut",
  ),
  tool(
    "tl.coil-stop-stamp",
    "Stamping tool for small coil brackets",
    "小线圈支架冲模",
    "br.coil-stop-b",
    2400,
    300000,
    35,
    "laser-cut",
  ),
  tool("tl.leg-press", "Press tool for legs", "机腿压模", "hw.leg", 8500, 100000, 60, "bent on the brake"),
  tool(
    "tl.wireform-jig",
    "Welding jig for the harbour wireform",
    "港湾线轨焊接治具",
    "top.wireform-harbour",
    260,
    null,
    10,
    "have made",
  ),
];

type Row = readonly [
  part: string,
  way: string,
  kind: Way["kind"],
  label: string,
  label_zh: string,
  cells: Partial<ShopRow<"ways">>,
];

const moulding = (part: string, tooling: string): Row => [
  part,
  "moulded",
  "have-made",
  "Moulded in our mould",
  "自备模具注塑",
  { supplier: "moulder", tooling },
];
const formed = (part: string, tooling: string): Row => [
  part,
  "formed",
  "have-made",
  "Vacuum-formed over our form",
  "自备模吸塑",
  { supplier: "plastics", tooling },
];
const bent = (part: string, unit_cost: number, minutes: number): Row => [
  part,
  "bent",
  "make",
  "Bent from sheet and glued",
  "板材热弯粘接",
  { unit_cost, minutes, setup_minutes: 40, lead_days: 5 },
];
const stamped = (part: string, tooling: string, unit_cost: number): Row => [
  part,
  "stamped",
  "have-made",
  "Stamped with our tool",
  "自备冲模冲压",
  { supplier: "metalwork", tooling, unit_cost, setup_cost: 90, lead_days: 25 },
];

const ROWS: readonly Row[] = [
  [
    "insert.round-16",
    "moulded",
    "have-made",
    "Moulded in our mould",
    "自备模具注塑",
    { tooling: "tl.insert-mould-16", unit_cost: 0.21, setup_cost: 120, lead_days: 28 },
  ],
  [
    "insert.round-16",
    "turned",
    "make",
    "Turned from rod and polished",
    "棒料车削抛光",
    { unit_cost: 0.34, minutes: 1.4, setup_minutes: 25, lead_days: 6 },
  ],
  [
    "insert.round-22",
    "moulded",
    "have-made",
    "Moulded in our mould",
    "自备模具注塑",
    { tooling: "tl.insert-mould-22", unit_cost: 0.3, setup_cost: 120, lead_days: 28 },
  ],
  [
    "insert.round-22",
    "turned",
    "make",
    "Turned from rod and polished",
    "棒料车削抛光",
    { unit_cost: 0.52, minutes: 1.7, setup_minutes: 25, lead_days: 6 },
  ],
  moulding("md.flipper-bat", "tl.bat-mould"),
  [
    "md.flipper-bat",
    "cast",
    "make",
    "Cast by hand in silicone",
    "硅胶模手工浇注",
    { unit_cost: 1.1, minutes: 6, setup_minutes: 30, lead_days: 8 },
  ],
  moulding("md.drop-target", "tl.target-mould"),
  [
    "md.drop-target",
    "milled",
    "make",
    "Milled from bar",
    "棒料铣削",
    { unit_cost: 0.5, minutes: 3.5, setup_minutes: 30, lead_days: 6 },
  ],
  moulding("md.tower", "tl.tower-mould"),
  [
    "md.tower",
    "printed",
    "make",
    "Printed in layers",
    "增材打印",
    { unit_cost: 3.6, minutes: 5, setup_minutes: 5, lead_days: 10 },
  ],
  moulding("md.ship-hull", "tl.hull-mould"),
  [
    "md.ship-hull",
    "printed",
    "make",
    "Printed in layers",
    "增材打印",
    { unit_cost: 2.9, minutes: 5, setup_minutes: 5, lead_days: 8 },
  ],
  moulding("md.bumper-cap", "tl.cap-mould"),
  [
    "md.bumper-cap",
    "formed",
    "have-made",
    "Vacuum-formed over a wooden form",
    "木模吸塑",
    { supplier: "plastics", unit_cost: 2.1, setup_cost: 45, lead_days: 15 },
  ],
  [
    "br.lockbar",
    "have-bent",
    "have-made",
    "Bent by the metal workshop",
    "外协折弯",
    { supplier: "metalwork" },
  ],
  [
    "br.lockbar",
    "brake",
    "make",
    "Bent on the brake by eye",
    "折弯机目测折弯",
    { unit_cost: 5.2, minutes: 9, setup_minutes: 15, lead_days: 6 },
  ],
  [
    "br.lockbar",
    "jig",
    "make",
    "Bent in our jig",
    "治具折弯",
    { unit_cost: 5.2, minutes: 2, setup_minutes: 15, tooling: "tl.lockbar-jig", lead_days: 6 },
  ],
  formed("top.ramp-left-deck", "tl.ramp-left-form"),
  bent("top.ramp-left-deck", 4.1, 22),
  formed("top.ramp-right-deck", "tl.ramp-right-form"),
  bent("top.ramp-right-deck", 4.9, 25),
  formed("top.ramp-right-fork", "tl.fork-form"),
  bent("top.ramp-right-fork", 2.2, 16),
  [
    "br.lamp-insert",
    "laser",
    "have-made",
    "Cut by laser and bent",
    "激光切割折弯",
    { supplier: "metalwork" },
  ],
  stamped("br.lamp-insert", "tl.lamp-stamp", 0.045),
  ["br.rollover", "laser", "have-made", "Cut by laser and bent", "激光切割折弯", { supplier: "metalwork" }],
  stamped("br.rollover", "tl.rollover-stamp", 0.11),
  [
    "br.coil-stop-b",
    "laser",
    "have-made",
    "Cut by laser and bent",
    "激光切割折弯",
    { supplier: "metalwork" },
  ],
  stamped("br.coil-stop-b", "tl.coil-stop-stamp", 0.24),
  ["hw.leg", "bent", "have-made", "Cut by laser and bent", "激光切割折弯", { supplier: "metalwork" }],
  [
    "hw.leg",
    "pressed",
    "have-made",
    "Pressed with our tool",
    "自备压模冲压",
    { supplier: "metalwork", tooling: "tl.leg-press", unit_cost: 4.6, setup_cost: 160, lead_days: 30 },
  ],
  [
    "tu.plunger-12x50",
    "have-turned",
    "have-made",
    "Turned by the turning shop",
    "外协车削",
    { supplier: "turner" },
  ],
  [
    "tu.plunger-12x50",
    "own-lathe",
    "make",
    "Turned on our own lathe",
    "自有车床车削",
    { unit_cost: 0.24, minutes: 2.2, setup_minutes: 20, lead_days: 5 },
  ],
  [
    "top.wireform-harbour",
    "have-bent",
    "have-made",
    "Bent and welded by the wire works",
    "外协弯焊",
    { supplier: "springs" },
  ],
  [
    "top.wireform-harbour",
    "own",
    "make",
    "Bent and welded here in a jig",
    "治具内自弯自焊",
    { unit_cost: 3.4, minutes: 32, setup_minutes: 20, tooling: "tl.wireform-jig", lead_days: 6 },
  ],
  [
    "ar.playfield",
    "have-printed",
    "have-made",
    "Printed by the printing house",
    "外协印刷",
    { supplier: "print" },
  ],
  [
    "ar.playfield",
    "screen",
    "make",
    "Screen-printed here",
    "自行丝印",
    { unit_cost: 11, minutes: 66, setup_cost: 140, setup_minutes: 240, lead_days: 8 },
  ],
];

/** Minutes on the winding machine, with leads soldered and taped. */
const WIND_MINUTES: Readonly<Record<string, number>> = { flipper: 7, magnet: 8, diverter: 6, gate: 5 };

const COILS: readonly Row[] = COIL_NAMES.flatMap((coil): readonly Row[] => [
  [
    `coil.${coil}`,
    "own",
    "make",
    "Wound here",
    "自行绕制",
    { minutes: WIND_MINUTES[coil] ?? 4.5, setup_minutes: 25, lead_days: 4 },
  ],
  [`coil.${coil}`, "winder", "have-made", "Wound by the coil winder", "外协绕制", { supplier: "coils" }],
]);

const WOOD: readonly Row[] = WOOD_PARTS.map((part) => [
  part,
  "own",
  "make",
  "Sawn, routed to a template and lacquered",
  "锯切、仿形铣、上漆",
  { minutes: 7, setup_minutes: 25, lead_days: 4 },
]);

/** Putting one piece to another, and a bench set up for it: common practice, no source. */
const PIECE_MIN = 0.28;
const BENCH_SETUP_MIN = 8;

function assembled(items: readonly Item[]): readonly Row[] {
  const planned = new Set([...ROWS, ...COILS, ...WOOD].map(([part]) => part));
  return items.flatMap(({ part, contains }): readonly Row[] => {
    if (part.source !== "make" || planned.has(part.id)) return [];
    const pieces = Object.values(contains).reduce((sum, n) => sum + Math.max(1, Math.round(n)), 0);
    const minutes = Math.round(pieces * PIECE_MIN * 10) / 10;
    return [
      [
        part.id,
        "own",
        "make",
        "Put together here",
        "自行组装",
        { minutes, setup_minutes: BENCH_SETUP_MIN, lead_days: 2 },
      ],
    ];
  });
}

export const tooling = rows("tooling", TOOLS);

/** Ways of making, having made and buying, for what can be got in more than one way or takes our time. */
export const waysOf = (items: readonly Item[]): ShopRow<"ways">[] =>
  fillRows<ShopRow<"ways">>(
    SHOP_TABLES.ways,
    [...ROWS, ...COILS, ...WOOD, ...assembled(items)].map(([part, way, kind, label, label_zh, cells]) => ({
      part,
      way,
      kind,
      label,
      label_zh,
      ...cells,
    })),
  );
