import { CABINET_DEVICES } from "./cabinet-device-parts.ts";
import { bought, haveMade, type Item, made, moulded, sheetMetal, wears } from "./part-kit.ts";

const BLACK = ["steel sheet, cold rolled", "powder-coated, black"] as const;
const BRUSHED = ["stainless sheet", "brushed"] as const;

/** Legs, lock bar, rails, door, hinge, prop, glue and paint. */
const CABINET: readonly Item[] = [
  sheetMetal(["hw.leg", "Leg", "机腿"], 3, 7.9, { mass_g: 1850 }, BLACK),
  bought(
    ["hw.leveller", "Leveller M10 with lock nut", "M10 调脚（带锁母）"],
    "hardware",
    [
      ["hardware", 0.86, 20],
      ["hardware-b", 0.79, 100],
    ],
    { mass_g: 68 },
  ),
  bought(
    ["hw.leg-bolt", "Leg bolt M10 × 65", "机腿螺栓 M10 × 65"],
    "screw",
    [
      ["hardware", 0.42, 50],
      ["hardware-b", 0.36, 200],
    ],
    { mass_g: 48 },
  ),
  sheetMetal(["br.leg-plate", "Leg plate with two T-nuts", "机腿角板"], 3, 2.2, { mass_g: 240 }),
  bought(["hw.t-nut-m10", "T-nut M10", "四爪螺母 M10"], "hardware", [
    ["hardware", 0.19, 50],
    ["hardware-b", 0.16, 200],
  ]),
  made(
    ["hw.lockbar", "Lock bar", "锁条"],
    "mechanism",
    { "br.lockbar": 1, "br.lockbar-tongue": 2, "hw.rivet-3x6": 4 },
    { mass_g: 760 },
  ),
  sheetMetal(["br.lockbar", "Lock bar, bent", "锁条钣金"], 2, 8.4, { mass_g: 700 }, BRUSHED),
  sheetMetal(["br.lockbar-tongue", "Tongue of the lock bar", "锁条舌"], 3, 0.8, { mass_g: 28 }),
  made(
    ["asm.receiver", "Receiver of the lock bar", "锁条座"],
    "mechanism",
    {
      "br.receiver": 1,
      "br.receiver-lever": 1,
      "sp.draw-34": 2,
      "hw.bush-8": 2,
      "hw.clip-e-6": 2,
      "hw.m5x20": 4,
      "hw.nut-m5-lock": 4,
    },
    { mass_g: 520 },
  ),
  sheetMetal(["br.receiver", "Receiver plate", "锁条座板"], 2.5, 4.9, { mass_g: 410 }),
  sheetMetal(["br.receiver-lever", "Lever of the receiver", "锁条座拉杆"], 3, 1.6, { mass_g: 85 }),
  sheetMetal(["hw.side-rail", "Side rail", "侧边条"], 1, 6.9, { mass_g: 610, scrap_pct: 2 }, BRUSHED),
  bought(
    ["hw.rail-tape", "Mounting tape of a side rail, 19 mm", "侧边条胶带 19 mm"],
    "consumable",
    [
      ["hardware", 0.62, 25],
      ["hardware-b", 0.583, 100],
    ],
    { unit: "m" },
  ),
  moulded(["md.glass-channel", "Channel of the glass, side", "玻璃侧槽"], "PVC, black, extruded", 1.4, {
    mass_g: 96,
    value: "1180 mm",
  }),
  moulded(["md.glass-rear", "Channel of the glass, rear", "玻璃后槽"], "PVC, black, extruded", 0.9, {
    mass_g: 52,
    value: "552 mm",
  }),
  haveMade(
    ["hw.glass", "Playfield glass, tempered, 552 × 1180 × 5", "台面钢化玻璃 552 × 1180 × 5"],
    "bought-in",
    ["glass, tempered", 5, "edges ground"],
    ["glass", 21.5],
    {
      mass_g: 8140,
      scrap_pct: 1,
      ...wears(0.01),
    },
  ),
  haveMade(
    ["hw.door-plate", "Coin door, plate", "投币门板"],
    "laser-cut",
    ["steel sheet", 2, "powder-coated, black"],
    ["metalwork", 9.6],
    { mass_g: 1010 },
  ),
  made(
    ["asm.door-fittings", "Frame and fittings of the coin door", "投币门框与配件"],
    "mechanism",
    {
      "br.door-frame": 1,
      "bi.door-hinge": 1,
      "bi.door-lock": 1,
      "bi.coin-chute": 2,
      "md.coin-return": 2,
      "br.cash-box": 1,
      "hw.m4x12": 8,
      "hw.nut-m4-lock": 8,
    },
    { mass_g: 1720 },
  ),
  sheetMetal(["br.door-frame", "Frame of the coin door", "投币门框"], 2, 8.8, { mass_g: 690 }, BLACK),
  bought(["bi.door-hinge", "Hinge of the coin door", "投币门铰链"], "bought-in", [
    ["hardware", 1.9, 10],
    ["hardware-b", 1.75, 20],
  ]),
  bought(["bi.door-lock", "Cam lock with two keys", "转舌锁（两把钥匙）"], "bought-in", [
    ["hardware", 1.85, 10],
    ["hardware-b", 1.7, 50],
  ]),
  bought(["bi.coin-chute", "Coin chute, mechanical", "机械投币器"], "bought-in", [["switches", 8.2, 1, 35]], {
    mass_g: 240,
    ...wears(0.05),
  }),
  moulded(["md.coin-return", "Return button of a chute", "退币按钮"], "polycarbonate, clear", 0.33, {
    mass_g: 5,
  }),
  sheetMetal(["br.cash-box", "Cash box with lid", "钱箱"], 1, 6.1, { mass_g: 720 }, BLACK),
  sheetMetal(["br.bb-hinge", "Hinge of the backbox, one side", "背箱铰链"], 4, 4.4, { mass_g: 380 }, BLACK),
  bought(["bi.bb-latch", "Latch of the backbox", "背箱锁扣"], "bought-in", [
    ["hardware", 3.1, 5],
    ["hardware-b", 2.9, 20],
  ]),
  made(
    ["asm.pf-prop", "Prop of the playfield", "台面撑杆"],
    "mechanism",
    { "wf.pf-prop": 1, "hw.bush-8": 2, "hw.clip-e-6": 2 },
    { mass_g: 180 },
  ),
  haveMade(
    ["wf.pf-prop", "Rod of the prop", "撑杆"],
    "hardware",
    ["steel rod", 8, "zinc-plated"],
    ["springs", 1.8, 1],
  ),
  sheetMetal(["br.pf-pivot", "Pivot bracket of the playfield", "台面转轴支架"], 3, 2.3, { mass_g: 150 }),
  sheetMetal(["br.pf-hanger", "Hanger at the playfield's front", "台面前挂钩"], 2.5, 1.3, { mass_g: 88 }),
  sheetMetal(
    ["br.grille-100", "Grille of a speaker, 100 mm", "扬声器网罩 100 mm"],
    1,
    1.3,
    { mass_g: 62 },
    BLACK,
  ),
  sheetMetal(["br.grille-165", "Grille of the bass speaker", "低音网罩"], 1, 1.9, { mass_g: 118 }, BLACK),
  sheetMetal(["br.vent", "Grille of a vent, 90 mm", "通风网罩 90 mm"], 1, 0.9, { mass_g: 40 }, BLACK),
  sheetMetal(["br.mains-cover", "Cover of the mains fuse board", "市电保险板护罩"], 1, 2.6, { mass_g: 190 }),
  bought(
    ["wood.batten-20", "Batten 20 × 20, pine", "松木条 20 × 20"],
    "wood",
    [
      ["timber", 0.85, 20],
      ["timber-b", 0.918, 20],
    ],
    {
      unit: "m",
    },
  ),
  bought(["wood.corner", "Corner block, beech", "榉木角块"], "wood", [
    ["timber", 0.55, 50],
    ["timber-b", 0.594, 50],
  ]),
  bought(["bi.backglass", "Glass of the backbox, 3 mm", "背箱玻璃 3 mm"], "bought-in", [["glass", 11.8, 1]], {
    source: "have-made",
    revision: "A",
    material: "glass, tempered",
    thickness_mm: 3,
    finish: "edges ground",
    mass_g: 3500,
  }),
  moulded(
    ["md.bb-trim", "Trim of the backglass, set of four", "背玻璃边条（四件）"],
    "PVC, black, extruded",
    2.2,
    { mass_g: 210 },
  ),
  bought(["bi.bb-lock", "Lock of the backglass", "背玻璃锁"], "bought-in", [
    ["hardware", 1.6, 10],
    ["hardware-b", 1.5, 50],
  ]),
  bought(
    ["pa.primer", "Primer, water-based", "水性底漆"],
    "consumable",
    [
      ["paint", 9.2, 5],
      ["hardware", 10.6, 5],
    ],
    { unit: "l" },
  ),
  bought(
    ["pa.black", "Top coat, black, water-based", "水性黑色面漆"],
    "consumable",
    [
      ["paint", 14.5, 5],
      ["hardware", 16.7, 5],
    ],
    {
      unit: "l",
    },
  ),
  bought(
    ["pa.lacquer", "Clear lacquer, water-based", "水性清漆"],
    "consumable",
    [
      ["paint", 13.2, 5],
      ["hardware", 15.2, 5],
    ],
    {
      unit: "l",
    },
  ),
  bought(
    ["cs.wood-glue", "Wood glue D3", "木工胶 D3"],
    "consumable",
    [
      ["paint", 5.4, 5],
      ["hardware", 6.21, 5],
    ],
    { unit: "kg" },
  ),
  bought(
    ["cs.filler", "Wood filler", "木腻子"],
    "consumable",
    [
      ["paint", 7.1, 1],
      ["hardware", 8.16, 1],
    ],
    { unit: "kg" },
  ),
  bought(["cs.abrasive", "Abrasive disc 150 mm", "砂纸片 150 mm"], "consumable", [
    ["paint", 0.38, 50],
    ["hardware", 0.437, 50],
  ]),
  bought(
    ["cs.threadlocker", "Threadlocker, medium", "中强度螺纹胶"],
    "consumable",
    [
      ["hardware", 310, 0.05],
      ["components-b", 326, 0.05],
    ],
    { unit: "l" },
  ),
  bought(
    ["cs.solder", "Solder wire, lead-free, 0.8 mm", "无铅焊锡丝 0.8 mm"],
    "consumable",
    [
      ["components", 46, 0.5],
      ["components-b", 43, 1],
    ],
    { unit: "kg" },
  ),
];

export const CABINET_PARTS: readonly Item[] = [...CABINET_DEVICES, ...CABINET];
