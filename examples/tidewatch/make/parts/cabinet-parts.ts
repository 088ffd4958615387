import { bought, haveMade, type Item, made, moulded, sheetMetal, turned, wears } from "./part-kit.ts";

const BLACK = ["steel sheet, cold rolled", "powder-coated, black"] as const;
const BRUSHED = ["stainless sheet", "brushed"] as const;

/** Supplies, mains parts, earth, buttons, speakers: what the cabinet's devices are. */
const DEVICES: readonly Item[] = [
  bought(
    ["dev.inlet", "Mains inlet", "电源插座（输入）"],
    "bought-in",
    [
      ["components", 1.45, 10],
      ["components-b", 1.38, 50],
    ],
    { mass_g: 22 },
  ),
  bought(
    ["dev.mains-switch", "Mains switch, two poles", "双极电源开关"],
    "bought-in",
    [
      ["components", 2.1, 10],
      ["components-b", 2.25, 20],
    ],
    { mass_g: 26, ...wears(0.004) },
  ),
  bought(
    ["dev.mains-filter", "Mains filter, 10 A", "电源滤波器 10 A"],
    "bought-in",
    [
      ["components", 9.6, 1],
      ["power", 9.9, 1],
    ],
    { mass_g: 290 },
  ),
  made(
    ["dev.mains-duct", "Mains duct with cover", "带盖电源线槽"],
    "mechanism",
    { "bi.duct-36": 0.34, "lb.mains": 1 },
    { mass_g: 150 },
  ),
  bought(
    ["bi.duct-36", "Duct 36 × 40 with cover", "36 × 40 线槽（带盖）"],
    "bought-in",
    [["components", 3.2, 2]],
    { unit: "m" },
  ),
  bought(["dev.psu-48", "Supply unit 48 V 12 A", "48 V 12 A 电源"], "bought-in", [["power", 62, 1, 49]], {
    mass_g: 1250,
    ...wears(0.02),
  }),
  bought(
    ["dev.psu-12-150", "Supply unit 12 V 12 A", "12 V 12 A 电源"],
    "bought-in",
    [
      ["power", 18.5, 1],
      ["components-b", 20.8, 1],
    ],
    { mass_g: 560, ...wears(0.015) },
  ),
  bought(
    ["dev.psu-12-100", "Supply unit 12 V 8 A", "12 V 8 A 电源"],
    "bought-in",
    [
      ["power", 13.9, 1],
      ["components-b", 15.2, 1],
    ],
    { mass_g: 420, ...wears(0.015) },
  ),
  made(
    ["dev.earth-bar", "Earth bar, twelve studs", "十二柱接地排"],
    "mechanism",
    {
      "br.earth-bar": 1,
      "tu.earth-stud": 12,
      "hw.washer-toothed-m4": 12,
      "hw.nut-m4": 12,
      "lb.earth": 1,
    },
    { mass_g: 118 },
  ),
  sheetMetal(["br.earth-bar", "Earth bar, bare", "接地排裸件"], 3, 2.6, { mass_g: 64 }, [
    "copper strip",
    "tinned",
  ]),
  turned(["tu.earth-stud", "Earth stud M4 × 16", "接地螺柱 M4 × 16"], "steel 8 mm", "nickel", 0.38, {
    mass_g: 4,
  }),
  made(
    ["dev.earth-stud", "Earth stud with washers and nuts", "接地螺柱（带垫圈螺母）"],
    "mechanism",
    {
      "tu.earth-stud": 1,
      "hw.nut-m4": 2,
      "hw.washer-m4": 1,
      "lb.earth": 1,
    },
    { mass_g: 8 },
  ),
  made(
    ["dev.button-lit", "Lit push-button", "带灯按钮"],
    "mechanism",
    {
      "bi.button-28": 1,
      "sw.micro-body": 1,
      "el.led-warm": 1,
      "el.res-025": 1,
      "ar.button": 1,
    },
    { mass_g: 31, ...wears(0.02) },
  ),
  bought(["bi.button-28", "Push-button 28 mm, clear, with nut", "28 mm 透明按钮（带螺母）"], "bought-in", [
    ["switches", 1.65, 10],
  ]),
  haveMade(
    ["ar.button", "Disc of a button, printed", "按钮印片"],
    "consumable",
    ["polycarbonate film", 0.25, "printed"],
    ["print", 0.1],
  ),
  made(
    ["dev.flip-button", "Flipper button with leaf switch", "拨板按钮（簧片）"],
    "mechanism",
    {
      "md.flip-button": 1,
      "md.flip-bezel": 1,
      "sw.blade-tungsten": 2,
      "sw.stack-spacer": 3,
      "br.leaf": 1,
      "hw.m3x8": 2,
    },
    { mass_g: 29, ...wears(0.04) },
  ),
  moulded(["md.flip-button", "Plunger of the flipper button", "拨板按钮芯"], "acetal, red", 0.29, {
    mass_g: 6,
    ...wears(0.02),
  }),
  moulded(["md.flip-bezel", "Bezel of the flipper button, with nut", "拨板按钮座"], "ABS, black", 0.41, {
    mass_g: 11,
  }),
  bought(["dev.service-button", "Service button", "维修按钮"], "bought-in", [
    ["switches", 0.66, 20],
    ["components", 0.74, 10],
  ]),
  made(
    ["dev.tilt-bob", "Tilt bob in its ring", "倾斜摆"],
    "mechanism",
    {
      "tu.tilt-bob": 1,
      "wf.tilt-rod": 1,
      "br.tilt-ring": 1,
      "sp.tilt": 1,
      "hw.m3x8": 2,
    },
    { mass_g: 78 },
  ),
  turned(["tu.tilt-bob", "Bob with thumb screw", "倾斜摆锤"], "brass 22 mm", "", 1.5, { mass_g: 52 }),
  sheetMetal(["br.tilt-ring", "Ring and bracket of the tilt bob", "倾斜摆环支架"], 1.5, 0.9, { mass_g: 18 }),
  haveMade(
    ["wf.tilt-rod", "Rod of the tilt bob", "倾斜摆杆"],
    "hardware",
    ["stainless wire", 2, ""],
    ["springs", 0.22, 10],
  ),
  made(
    ["dev.coin-micro", "Coin microswitch", "投币微动开关"],
    "mechanism",
    { "sw.micro-body": 1, "wf.coin": 1 },
    wears(0.03),
  ),
  haveMade(
    ["wf.coin", "Wire lever of a coin switch", "投币开关线柄"],
    "hardware",
    ["stainless wire", 0.6, ""],
    ["springs", 0.14, 10],
  ),
  made(
    ["dev.door-micro", "Door microswitch", "门微动开关"],
    "mechanism",
    {
      "sw.micro-door": 1,
      "br.door-micro": 1,
      "hw.m3x8": 2,
    },
    { mass_g: 24, ...wears(0.01) },
  ),
  bought(
    ["sw.micro-door", "Microswitch body, 10 A, with pull-out plunger", "微动开关本体 10 A（可拉出）"],
    "bought-in",
    [["switches", 2.2, 10]],
  ),
  sheetMetal(["br.door-micro", "Bracket of the door switch", "门开关支架"], 1.5, 0.4, { mass_g: 12 }),
  bought(["dev.speaker-100", "Speaker, 100 mm, 4 Ω", "扬声器 100 mm 4 Ω"], "bought-in", [["power", 3.4, 4]], {
    mass_g: 310,
    ...wears(0.006),
  }),
  bought(
    ["dev.speaker-165", "Bass speaker, 165 mm, 8 Ω", "低音扬声器 165 mm 8 Ω"],
    "bought-in",
    [["power", 9.2, 2]],
    { mass_g: 980, ...wears(0.006) },
  ),
];

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
    [["hardware", 0.62, 25]],
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
  bought(["wood.batten-20", "Batten 20 × 20, pine", "松木条 20 × 20"], "wood", [["timber", 0.85, 20]], {
    unit: "m",
  }),
  bought(["wood.corner", "Corner block, beech", "榉木角块"], "wood", [["timber", 0.55, 50]]),
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
  bought(["pa.primer", "Primer, water-based", "水性底漆"], "consumable", [["paint", 9.2, 5]], { unit: "l" }),
  bought(["pa.black", "Top coat, black, water-based", "水性黑色面漆"], "consumable", [["paint", 14.5, 5]], {
    unit: "l",
  }),
  bought(["pa.lacquer", "Clear lacquer, water-based", "水性清漆"], "consumable", [["paint", 13.2, 5]], {
    unit: "l",
  }),
  bought(["cs.wood-glue", "Wood glue D3", "木工胶 D3"], "consumable", [["paint", 5.4, 5]], { unit: "kg" }),
  bought(["cs.filler", "Wood filler", "木腻子"], "consumable", [["paint", 7.1, 1]], { unit: "kg" }),
  bought(["cs.abrasive", "Abrasive disc 150 mm", "砂纸片 150 mm"], "consumable", [["paint", 0.38, 50]]),
  bought(
    ["cs.threadlocker", "Threadlocker, medium", "中强度螺纹胶"],
    "consumable",
    [["hardware", 310, 0.05]],
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

export const CABINET_PARTS: readonly Item[] = [...DEVICES, ...CABINET];

/** What the machine contains besides what geometry and wiring tell. */
export const CABINET_BOM: Readonly<Record<string, number>> = {
  "hw.ball": 4,
  "hw.leg": 4,
  "hw.leveller": 4,
  "hw.leg-bolt": 8,
  "br.leg-plate": 4,
  "hw.t-nut-m10": 8,
  "hw.lockbar": 1,
  "asm.receiver": 1,
  "hw.side-rail": 2,
  "hw.rail-tape": 5.2,
  "md.glass-channel": 2,
  "md.glass-rear": 1,
  "asm.door-fittings": 1,
  "br.bb-hinge": 2,
  "bi.bb-latch": 1,
  "asm.pf-prop": 1,
  "br.pf-pivot": 2,
  "br.pf-hanger": 2,
  "br.grille-100": 2,
  "br.grille-165": 1,
  "br.vent": 2,
  "br.mains-cover": 1,
  "wood.batten-20": 6.5,
  "wood.corner": 12,
  "bi.backglass": 1,
  "md.bb-trim": 1,
  "bi.bb-lock": 1,
  "pa.primer": 0.9,
  "pa.black": 1.1,
  "cs.wood-glue": 0.45,
  "cs.filler": 0.12,
  "cs.abrasive": 7,
  "cs.threadlocker": 0.004,
  "cs.solder": 0.12,
  "ar.playfield": 1,
  "md.ball-guide-clip": 6,
};
