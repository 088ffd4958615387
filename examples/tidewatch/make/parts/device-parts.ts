import {
  bought,
  haveMade,
  type Item,
  made,
  moulded,
  sheetMetal,
  spring,
  turned,
  wears,
  wireForm,
} from "./part-kit.ts";

/** Switches: contacts are bought or built here from blades; levers, brackets and faces are made to drawing. */
const SWITCHES: readonly Item[] = [
  bought(
    ["sw.micro-body", "Microswitch body, 0.1 A, gold contacts", "微动开关本体 0.1 A 镀金"],
    "bought-in",
    [
      ["switches", 0.72, 50],
      ["components-b", 0.84, 100],
    ],
    { mass_g: 2.1, ...wears(0.01) },
  ),
  bought(
    ["sw.blade-long", "Contact blade, 44 mm, gold spot", "触点簧片 44 mm"],
    "contact",
    [["switches", 0.19, 100]],
    wears(0.02),
  ),
  bought(
    ["sw.blade-short", "Contact blade, 30 mm, gold spot", "触点簧片 30 mm"],
    "contact",
    [["switches", 0.17, 100]],
    wears(0.02),
  ),
  bought(
    ["sw.blade-tungsten", "Contact blade, 40 mm, tungsten", "钨触点簧片 40 mm"],
    "contact",
    [["switches", 0.36, 50]],
    wears(0.05),
  ),
  bought(["sw.stack-spacer", "Spacer of a blade stack", "簧片绝缘垫"], "contact", [["switches", 0.04, 200]]),
  wireForm(["wf.rollover", "Wire lever of a rollover", "滚道开关线柄"], 1.2, "", 0.21, wears(0.03)),
  wireForm(["wf.lever-ramp", "Wire lever of a ramp switch", "坡道开关线柄"], 1, "", 0.19, wears(0.03)),
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
    ...wears(0.03),
  }),
  moulded(["md.star-well", "Well of a star rollover", "星形开关井"], "acetal, white", 0.21, { mass_g: 2.4 }),
  moulded(["md.standup-face", "Face of a stand-up target", "立式靶面"], "nylon, white", 0.24, {
    mass_g: 4.1,
    ...wears(0.06),
  }),
  haveMade(
    ["ar.standup", "Printed face of a stand-up target", "立式靶面贴"],
    "consumable",
    ["polycarbonate film", 0.25, "printed"],
    ["print", 0.12],
  ),
  bought(
    ["hw.foam-target", "Foam pad behind a target", "靶背泡棉"],
    "hardware",
    [["rubber", 0.05, 200]],
    wears(0.08),
  ),
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

/** Lamps: LEDs with their resistor on brackets and in sockets. */
const LAMPS: readonly Item[] = [
  bought(
    ["el.led-warm", "LED, warm white, 5 mm, wide angle", "暖白 LED 5 mm 广角"],
    "electronic",
    [
      ["components", 0.062, 100],
      ["components-b", 0.055, 500],
    ],
    wears(0.002),
  ),
  bought(
    ["el.led-power", "LED, 1 A, on a star of aluminium", "大功率 LED（铝基星板）"],
    "electronic",
    [
      ["components", 0.74, 20],
      ["components-b", 0.7, 100],
    ],
    wears(0.004),
  ),
  bought(["el.res-05", "Resistor 0.5 W", "电阻 0.5 W"], "electronic", [
    ["components", 0.014, 100],
    ["components-b", 0.011, 1000],
  ]),
  bought(["el.res-1", "Resistor 1 W", "电阻 1 W"], "electronic", [
    ["components", 0.032, 100],
    ["components-b", 0.027, 1000],
  ]),
  bought(["bi.lug-socket", "Lug socket for an LED", "LED 焊片灯座"], "bought-in", [
    ["switches", 0.21, 100],
    ["components-b", 0.24, 200],
  ]),
  sheetMetal(["br.lamp-insert", "Bracket of an insert lamp", "光孔灯支架"], 0.8, 0.13, { mass_g: 4 }),
  sheetMetal(["br.lamp-gi", "Bracket of a general light", "照明灯支架"], 0.8, 0.14, { mass_g: 4.5 }),
  sheetMetal(
    ["br.flasher", "Bracket and heat sink of a flasher", "闪光灯散热支架"],
    2,
    0.62,
    { mass_g: 21 },
    ["aluminium sheet", "plain"],
  ),
  moulded(["md.lamp-holder", "Holder with two tabs for an LED", "LED 插片座"], "nylon, white", 0.11, {
    mass_g: 1.4,
  }),
  moulded(
    ["md.flasher-dome", "Dome of a flasher, amber", "闪光灯罩（琥珀色）"],
    "polycarbonate, amber",
    0.38,
    { mass_g: 8 },
  ),
  moulded(["md.lamp-plug", "Plug of an LED on a plastic", "塑料板灯插座"], "nylon, white", 0.14, {
    mass_g: 1.6,
  }),
  made(
    ["dev.lamp-insert", "Insert lamp, LED on bracket", "光孔灯（LED 支架）"],
    "mechanism",
    {
      "el.led-warm": 1,
      "el.res-025": 1,
      "md.lamp-holder": 1,
      "br.lamp-insert": 1,
    },
    { mass_g: 7, ...wears(0.002) },
  ),
  made(
    ["dev.lamp-gi", "General light, LED in lug socket", "照明灯（焊片灯座）"],
    "mechanism",
    {
      "el.led-warm": 1,
      "el.res-025": 1,
      "bi.lug-socket": 1,
      "br.lamp-gi": 1,
    },
    { mass_g: 8, ...wears(0.004) },
  ),
  made(
    ["dev.lamp-spot", "General light on a plastic", "塑料板上照明灯"],
    "mechanism",
    {
      "el.led-warm": 1,
      "el.res-025": 1,
      "md.lamp-plug": 1,
    },
    { mass_g: 3, ...wears(0.004) },
  ),
  made(
    ["dev.flasher", "Flasher under a dome", "闪光灯（罩内）"],
    "mechanism",
    {
      "el.led-power": 1,
      "el.res-1": 1,
      "br.flasher": 1,
      "md.flasher-dome": 1,
      "hw.m3x6": 2,
    },
    { mass_g: 33, ...wears(0.006) },
  ),
  made(
    ["dev.flasher-insert", "Flasher under an insert", "闪光灯（光孔下）"],
    "mechanism",
    {
      "el.led-power": 1,
      "el.res-1": 1,
      "br.flasher": 1,
      "hw.m3x6": 2,
    },
    { mass_g: 25, ...wears(0.006) },
  ),
  made(
    ["dev.lamp-bumper", "Pop bumper lamp", "弹跳柱灯"],
    "mechanism",
    {
      "el.led-warm": 1,
      "el.res-05": 1,
      "bi.lug-socket": 1,
    },
    { mass_g: 4, ...wears(0.01) },
  ),
  made(
    ["dev.lamp-beacon", "Beacon lamp", "灯塔旋转灯"],
    "mechanism",
    {
      "el.led-power": 1,
      "el.res-1": 1,
      "md.lamp-holder": 1,
    },
    { mass_g: 6, ...wears(0.008) },
  ),
  made(
    ["dev.lamp-bb", "Backglass lamp", "背玻璃灯"],
    "mechanism",
    {
      "el.led-warm": 1,
      "el.res-025": 1,
      "md.lamp-holder": 1,
      "br.lamp-insert": 1,
    },
    { mass_g: 7, ...wears(0.002) },
  ),
];

/** Motors and sensors. */
const MOTORS_SENSORS: readonly Item[] = [
  bought(["dev.motor-gear", "Gear motor, 12 V", "12 伏减速电机"], "bought-in", [["power", 7.9, 1, 42]], {
    mass_g: 168,
    ...wears(0.03),
  }),
  bought(
    ["dev.motor-crank", "Crank gear motor, 12 V", "12 伏曲柄减速电机"],
    "bought-in",
    [["power", 9.6, 1, 42]],
    { mass_g: 215, ...wears(0.03) },
  ),
  bought(["dev.motor-shaker", "Shaker motor, 12 V", "12 伏振动电机"], "bought-in", [["power", 8.8, 1, 28]], {
    mass_g: 340,
    ...wears(0.02),
  }),
  bought(["el.hall", "Hall switch", "霍尔开关"], "electronic", [
    ["components", 0.46, 20],
    ["components-b", 0.42, 100],
  ]),
  bought(
    ["el.ir-tx", "Infrared LED", "红外发射管"],
    "electronic",
    [
      ["components", 0.12, 50],
      ["components-b", 0.1, 200],
    ],
    wears(0.004),
  ),
  bought(
    ["el.ir-rx", "Infrared transistor", "红外接收管"],
    "electronic",
    [
      ["components", 0.15, 50],
      ["components-b", 0.13, 200],
    ],
    wears(0.004),
  ),
  haveMade(
    ["pcb.hall-head", "Head board of the magnetic sensor, bare", "磁感应头裸板"],
    "board",
    ["FR4", 1.6, "tin, green"],
    ["boards", 0.34, 20],
  ),
  moulded(["md.hall-case", "Case of the magnetic sensor", "磁感应器外壳"], "ABS, black", 0.3, { mass_g: 3 }),
  moulded(["md.opto-holder", "Holder of an infrared part", "红外管座"], "ABS, black", 0.16, { mass_g: 1.1 }),
  turned(["tu.opto-post", "Post of an infrared part", "红外管立柱"], "aluminium 6 mm", "black", 0.66, {
    mass_g: 3,
  }),
  made(
    ["dev.hall", "Magnetic ball sensor", "磁感应球传感器"],
    "mechanism",
    {
      "el.hall": 1,
      "el.cap-100n": 1,
      "el.res-025": 1,
      "pcb.hall-head": 1,
      "md.hall-case": 1,
    },
    { mass_g: 6, ...wears(0.005) },
  ),
  ...(
    [
      ["tx", "emitter", "发射管"],
      ["rx", "receiver", "接收管"],
    ] as const
  ).flatMap(([way, label, zh]) => [
    made(
      [`dev.opto-${way}`, `Infrared ${label}`, `红外${zh}`],
      "mechanism",
      { [`el.ir-${way}`]: 1, "md.opto-holder": 1 },
      wears(0.005),
    ),
    made(
      [`dev.opto-${way}-post`, `Infrared ${label} on a post`, `红外${zh}（立柱）`],
      "mechanism",
      {
        [`el.ir-${way}`]: 1,
        "md.opto-holder": 1,
        "tu.opto-post": 1,
      },
      wears(0.005),
    ),
  ]),
];

/** What mechanisms show above the playfield. */
const ABOVE: readonly Item[] = [
  made(
    ["dev.bat", "Flipper bat with rubber", "拨板（带胶圈）"],
    "mechanism",
    {
      "md.flipper-bat": 1,
      "tu.flipper-shaft": 1,
      "hw.pin-roll-2x12": 1,
      "rubber.flipper": 1,
    },
    { mass_g: 54, ...wears(0.04) },
  ),
  made(
    ["dev.bumper-body", "Pop bumper body and skirt", "弹跳柱柱身"],
    "mechanism",
    {
      "md.bumper-base": 1,
      "md.bumper-body": 1,
      "md.bumper-skirt": 1,
    },
    { mass_g: 67 },
  ),
  made(
    ["dev.bumper-cap", "Pop bumper cap", "弹跳柱顶盖"],
    "mechanism",
    { "md.bumper-cap": 1, "hw.m3x8": 2 },
    { mass_g: 27 },
  ),
  made(
    ["dev.drop-face", "Drop target", "落靶片"],
    "mechanism",
    { "md.drop-target": 1, "ar.standup": 1 },
    wears(0.1),
  ),
  made(
    ["dev.lighthouse", "Lighthouse tower", "灯塔塔身"],
    "mechanism",
    {
      "md.tower": 2,
      "md.tower-door": 1,
      "ar.tower-wrap": 1,
      "hw.m3x8": 4,
    },
    { mass_g: 94 },
  ),
  made(
    ["dev.lantern", "Lighthouse lantern", "灯塔灯室"],
    "mechanism",
    { "md.lantern-dome": 1, "md.lantern-glass": 1 },
    { mass_g: 17 },
  ),
  made(
    ["dev.ship", "Ship model", "船模"],
    "mechanism",
    {
      "md.ship-hull": 1,
      "md.ship-deck": 1,
      "ar.ship-decals": 1,
      "hw.m3x8": 3,
    },
    { mass_g: 53 },
  ),
  made(
    ["dev.plunger-tip", "Plunger fork", "发球拨叉"],
    "mechanism",
    { "md.plunger-fork": 1, "hw.pin-roll-2x12": 1 },
    wears(0.05),
  ),
  haveMade(
    ["dev.swing-plate", "Spinner plate, printed", "旋转片（印刷）"],
    "laser-cut",
    ["aluminium sheet", 0.8, "printed both sides"],
    ["plastics", 1.3],
    wears(0.02),
  ),
  made(["dev.swing-wire", "Gate wire", "闸门线"], "mechanism", { "wf.gate": 1, "hw.clip-e-4": 1 }),
  made(["dev.blade", "Diverter blade", "分道片"], "mechanism", { "br.diverter-blade": 1, "hw.set-m4x5": 1 }),
  spring(["sp.tilt", "Spring of the tilt bob", "倾斜摆簧"], 0.4, 0.1),
];

export const DEVICE_PARTS: readonly Item[] = [...SWITCHES, ...LAMPS, ...MOTORS_SENSORS, ...ABOVE];
