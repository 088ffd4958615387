import { bought, type Item, made, moulded, sheetMetal, wears } from "./part-kit.ts";

/** Lamps: LEDs with their resistor on brackets and in sockets. */
export const LAMP_PARTS: readonly Item[] = [
  bought(["el.led-warm", "LED, warm white, 5 mm, wide angle", "暖白 LED 5 mm 广角"], "electronic", [
    ["components", 0.062, 100],
    ["components-b", 0.055, 500],
  ]),
  bought(["el.led-power", "LED, 1 A, on a star of aluminium", "大功率 LED（铝基星板）"], "electronic", [
    ["components", 0.74, 20],
    ["components-b", 0.7, 100],
  ]),
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
      "el.res-180r": 1,
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
      "el.res-150r": 1,
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
      "el.res-150r": 1,
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
      "el.res-150r": 1,
      "md.lamp-holder": 1,
      "br.lamp-insert": 1,
    },
    { mass_g: 7, ...wears(0.002) },
  ),
];
