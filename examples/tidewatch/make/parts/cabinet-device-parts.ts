import { bought, haveMade, type Item, made, moulded, sheetMetal, turned, wears } from "./part-kit.ts";

/** Supplies, mains parts, earth, buttons, speakers: what the cabinet's devices are. */
export const CABINET_DEVICES: readonly Item[] = [
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
    [
      ["components", 3.2, 2],
      ["components-b", 3.49, 2],
    ],
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
      "el.res-180r": 1,
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
  bought(
    ["dev.speaker-100", "Speaker, 100 mm, 4 Ω", "扬声器 100 mm 4 Ω"],
    "bought-in",
    [
      ["power", 3.4, 4],
      ["components-b", 3.71, 4],
    ],
    {
      mass_g: 310,
      ...wears(0.006),
    },
  ),
  bought(
    ["dev.speaker-165", "Bass speaker, 165 mm, 8 Ω", "低音扬声器 165 mm 8 Ω"],
    "bought-in",
    [
      ["power", 9.2, 2],
      ["components-b", 10, 2],
    ],
    { mass_g: 980, ...wears(0.006) },
  ),
];
