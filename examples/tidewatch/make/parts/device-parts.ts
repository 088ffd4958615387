import { LAMP_PARTS } from "./lamp-parts.ts";
import { bought, haveMade, type Item, made, moulded, spring, turned, wears } from "./part-kit.ts";
import { SWITCH_PARTS } from "./switch-parts.ts";

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
  bought(
    ["dev.motor-shaker", "Shaker motor, 12 V", "12 伏振动电机"],
    "bought-in",
    [
      ["power", 8.8, 1, 28],
      ["components-b", 9.9, 1],
    ],
    {
      mass_g: 340,
      ...wears(0.02),
    },
  ),
  bought(["el.hall", "Hall switch", "霍尔开关"], "electronic", [
    ["components", 0.46, 20],
    ["components-b", 0.42, 100],
  ]),
  bought(["el.ir-tx", "Infrared LED", "红外发射管"], "electronic", [
    ["components", 0.12, 50],
    ["components-b", 0.1, 200],
  ]),
  bought(["el.ir-rx", "Infrared transistor", "红外接收管"], "electronic", [
    ["components", 0.15, 50],
    ["components-b", 0.13, 200],
  ]),
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
      "el.res-10k": 1,
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
    { mass_g: 54 },
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
  made(["dev.plunger-tip", "Plunger fork", "发球拨叉"], "mechanism", {
    "md.plunger-fork": 1,
    "hw.pin-roll-2x12": 1,
  }),
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

export const DEVICE_PARTS: readonly Item[] = [...SWITCH_PARTS, ...LAMP_PARTS, ...MOTORS_SENSORS, ...ABOVE];
