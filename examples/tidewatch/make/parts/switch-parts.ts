import { bought, haveMade, type Item, made, moulded, sheetMetal, wears, wireForm } from "./part-kit.ts";

/** Switches: contacts are bought or built here from blades; levers, brackets and faces are made to drawing. */
export const SWITCH_PARTS: readonly Item[] = [
  bought(
    ["sw.micro-body", "Microswitch body, 0.1 A, gold contacts", "微动开关本体 0.1 A 镀金"],
    "bought-in",
    [
      ["switches", 0.72, 50],
      ["components-b", 0.84, 100],
    ],
    { mass_g: 2.1 },
  ),
  bought(["sw.blade-long", "Contact blade, 44 mm, gold spot", "触点簧片 44 mm"], "contact", [
    ["switches", 0.19, 100],
    ["components-b", 0.209, 100],
  ]),
  bought(["sw.blade-short", "Contact blade, 30 mm, gold spot", "触点簧片 30 mm"], "contact", [
    ["switches", 0.17, 100],
    ["components-b", 0.187, 100],
  ]),
  bought(["sw.blade-tungsten", "Contact blade, 40 mm, tungsten", "钨触点簧片 40 mm"], "contact", [
    ["switches", 0.36, 50],
    ["components-b", 0.396, 50],
  ]),
  bought(["sw.stack-spacer", "Spacer of a blade stack", "簧片绝缘垫"], "contact", [
    ["switches", 0.04, 200],
    ["components-b", 0.044, 200],
  ]),
  wireForm(["wf.rollover", "Wire lever of a rollover", "滚道开关线柄"], 1.2, "", 0.21),
  wireForm(["wf.lever-ramp", "Wire lever of a ramp switch", "坡道开关线柄"], 1, "", 0.19),
  sheetMetal(["br.rollover", "Bracket of a rollover", "滚道开关支架"], 1.2, 0.34, { mass_g: 11 }),
  sheetMetal(["br.star", "Bracket of a star rollover", "星形开关支架"], 1.2, 0.36, { mass_g: 10 }),
  sheetMetal(["br.standup", "Bracket of a stand-up target", "立式靶支架"], 1.5, 0.44, { mass_g: 17 }),
  sheetMetal(["br.leaf", "Bracket of a leaf switch", "簧片开关支架"], 1.2, 0.24, { mass_g: 6 }),
  sheetMetal(["br.micro-lever", "Short lever of a microswitch", "微动开关短柄"], 0.4, 0.16, { mass_g: 0.5 }, [
    "stainless sheet",
    "",
  ]),
  sheetMetal(["br.drop-switch", "Bracket of a drop target switch", "落靶开关支架"], 1.2, 0.27, { mass_g: 5 }),
  moulded(["md.star", "Star of a rollover", "星形滚压片"], "acetal, yellow", 0.19, {
    mass_g: 1.7,
  }),
  moulded(["md.star-well", "Well of a star rollover", "星形开关井"], "acetal, white", 0.21, { mass_g: 2.4 }),
  moulded(["md.standup-face", "Face of a stand-up target", "立式靶面"], "nylon, white", 0.24, {
    mass_g: 4.1,
  }),
  haveMade(
    ["ar.standup", "Printed face of a stand-up target", "立式靶面贴"],
    "consumable",
    ["polycarbonate film", 0.25, "printed"],
    ["print", 0.12],
  ),
  bought(["hw.foam-target", "Foam pad behind a target", "靶背泡棉"], "hardware", [
    ["rubber", 0.05, 200],
    ["hardware-b", 0.055, 200],
  ]),
  made(
    ["dev.micro", "Microswitch, short lever", "短柄微动开关"],
    "bought-in",
    { "sw.micro-body": 1, "br.micro-lever": 1 },
    wears(0.01),
  ),
  made(
    ["dev.gate-micro", "Gate microswitch", "闸门微动开关"],
    "bought-in",
    { "sw.micro-body": 1, "wf.lever-ramp": 1 },
    wears(0.02),
  ),
  made(
    ["dev.rollover", "Rollover switch, wire lever", "滚道微动开关"],
    "mechanism",
    {
      "sw.micro-body": 1,
      "wf.rollover": 1,
      "br.rollover": 1,
      "hw.m2x12": 2,
      "hw.nut-m2": 2,
    },
    { mass_g: 19, ...wears(0.02) },
  ),
  made(
    ["dev.star-rollover", "Star rollover", "星形滚压开关"],
    "mechanism",
    {
      "md.star": 1,
      "md.star-well": 1,
      "br.star": 1,
      "sw.blade-long": 1,
      "sw.blade-short": 1,
      "sw.stack-spacer": 3,
      "hw.m3x8": 2,
    },
    { mass_g: 24, ...wears(0.03) },
  ),
  made(
    ["dev.standup", "Stand-up target, narrow", "立式靶（窄）"],
    "mechanism",
    {
      "md.standup-face": 1,
      "ar.standup": 1,
      "hw.foam-target": 1,
      "br.standup": 1,
      "sw.blade-long": 1,
      "sw.blade-short": 1,
      "sw.stack-spacer": 3,
      "hw.m3x8": 2,
      "hw.rivet-3x6": 1,
    },
    { mass_g: 36, ...wears(0.04) },
  ),
  ...(
    [
      ["dev.rebound-leaf", "Rebound leaf switch", "橡皮回弹簧片开关", "sw.blade-short", 0.02],
      ["dev.sling-leaf", "Slingshot leaf switch", "弹弓簧片开关", "sw.blade-short", 0.04],
      ["dev.captive-leaf", "Captive ball leaf switch", "被困球簧片开关", "sw.blade-short", 0.01],
      ["dev.slam-leaf", "Slam leaf switch", "撞击簧片开关", "sw.blade-long", 0.005],
    ] as const
  ).map(([id, label, zh, second, fails]) =>
    made(
      [id, label, zh],
      "mechanism",
      {
        "sw.blade-long": second === "sw.blade-long" ? 2 : 1,
        ...(second === "sw.blade-short" ? { "sw.blade-short": 1 } : {}),
        "sw.stack-spacer": 3,
        "br.leaf": 1,
        "hw.m3x8": 2,
      },
      { mass_g: 12, ...wears(fails) },
    ),
  ),
  made(
    ["dev.eos", "Flipper end-of-stroke switch", "拨板行程末端开关"],
    "mechanism",
    {
      "sw.blade-tungsten": 2,
      "sw.stack-spacer": 3,
      "hw.m3x8": 2,
    },
    { mass_g: 9, ...wears(0.06) },
  ),
  made(
    ["dev.spoon", "Pop bumper spoon switch", "弹跳柱勺形开关"],
    "mechanism",
    {
      "md.bumper-spoon": 1,
      "sw.blade-long": 1,
      "sw.blade-short": 1,
      "sw.stack-spacer": 3,
      "br.leaf": 1,
      "hw.m3x8": 2,
    },
    { mass_g: 13, ...wears(0.05) },
  ),
  made(
    ["dev.drop-switch", "Drop target switch", "落靶开关"],
    "mechanism",
    {
      "sw.micro-body": 1,
      "br.drop-switch": 1,
    },
    { mass_g: 8, ...wears(0.02) },
  ),
];
