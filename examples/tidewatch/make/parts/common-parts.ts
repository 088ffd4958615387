import { bought, type Item, moulded, sheetMetal, spring, turned, wears } from "./part-kit.ts";

/** Small hardware that several mechanisms share. */
export const COMMON_PARTS: readonly Item[] = [
  ...[
    ["hw.m3x6", "Machine screw M3 × 6, pan head", "机螺钉 M3 × 6 盘头", 0.011],
    ["hw.m3x8", "Machine screw M3 × 8, pan head", "机螺钉 M3 × 8 盘头", 0.012],
    ["hw.m2x12", "Machine screw M2 × 12, for microswitches", "微动开关螺钉 M2 × 12", 0.016],
    ["hw.m4x8", "Machine screw M4 × 8, pan head", "机螺钉 M4 × 8 盘头", 0.015],
    ["hw.m4x12", "Machine screw M4 × 12, hexagon socket", "内六角螺钉 M4 × 12", 0.034],
    ["hw.m5x20", "Machine screw M5 × 20, hexagon socket", "内六角螺钉 M5 × 20", 0.052],
    ["hw.set-m4x5", "Set screw M4 × 5", "紧定螺钉 M4 × 5", 0.028],
    ["hw.nut-m2", "Nut M2", "螺母 M2", 0.012],
    ["hw.nut-m4-lock", "Lock nut M4", "防松螺母 M4", 0.026],
    ["hw.nut-m5-lock", "Lock nut M5", "防松螺母 M5", 0.032],
    ["hw.washer-m5", "Washer M5", "垫圈 M5", 0.009],
    ["hw.washer-spring-m4", "Spring washer M4", "弹簧垫圈 M4", 0.008],
    ["hw.clip-e-4", "E-clip for 4 mm", "E 形卡簧 4 mm", 0.018],
    ["hw.clip-e-6", "E-clip for 6 mm", "E 形卡簧 6 mm", 0.024],
    ["hw.pin-roll-2x12", "Roll pin 2 × 12", "弹性销 2 × 12", 0.021],
    ["hw.pin-roll-3x16", "Roll pin 3 × 16", "弹性销 3 × 16", 0.027],
    ["hw.rivet-3x6", "Blind rivet 3.2 × 6", "抽芯铆钉 3.2 × 6", 0.02],
  ].map(([id, label, zh, price]) =>
    bought([String(id), String(label), String(zh)], "screw", [
      ["hardware", Number(price) * 1.25, 100],
      ["hardware-b", Number(price), 500],
    ]),
  ),
  bought(["hw.bush-8", "Bushing, flanged, 8 mm, sintered bronze", "8 mm 法兰烧结铜套"], "bought-in", [
    ["hardware", 0.52, 20],
    ["hardware-b", 0.46, 100],
  ]),
  bought(["hw.bush-6", "Bushing, flanged, 6 mm, sintered bronze", "6 mm 法兰烧结铜套"], "bought-in", [
    ["hardware", 0.44, 20],
    ["hardware-b", 0.39, 100],
  ]),
  bought(
    ["hw.bumper-rubber-8", "Stop of rubber, 8 mm, M4 stud", "橡胶止挡 8 mm（M4 螺柱）"],
    "hardware",
    [
      ["rubber", 0.28, 50],
      ["hardware-b", 0.308, 50],
    ],
    { ...wears(0.05) },
  ),
  bought(
    ["hw.clamp-strap", "Clamp with strap, two screws, for bundles to 34 mm", "带绑带压线座（至 34 mm）"],
    "hardware",
    [
      ["hardware", 0.31, 50],
      ["hardware-b", 0.27, 200],
    ],
  ),
  bought(["hw.felt-16", "Felt washer 16 mm", "毛毡垫 16 mm"], "hardware", [
    ["rubber", 0.07, 100],
    ["hardware-b", 0.077, 100],
  ]),
  bought(["hw.grommet-6", "Grommet 6 mm", "橡胶护圈 6 mm"], "hardware", [
    ["rubber", 0.06, 100],
    ["hardware-b", 0.066, 100],
  ]),
  bought(
    ["hw.shrink-3", "Shrink sleeve 3 mm", "热缩管 3 mm"],
    "consumable",
    [
      ["components", 0.22, 50],
      ["components-b", 0.2, 100],
    ],
    { unit: "m" },
  ),
  // Coil mechanisms: stops, brackets and what moves in the coil.
  sheetMetal(["br.coil-stop-a", "Coil bracket with stop, large", "大线圈支架（带止挡）"], 2.5, 0.86, {
    mass_g: 46,
  }),
  sheetMetal(["br.coil-stop-b", "Coil bracket with stop, small", "小线圈支架（带止挡）"], 2, 0.62, {
    mass_g: 27,
  }),
  sheetMetal(["br.coil-back-a", "Coil bracket, rear, large", "大线圈后支架"], 2.5, 0.58, { mass_g: 38 }),
  sheetMetal(["br.coil-back-b", "Coil bracket, rear, small", "小线圈后支架"], 2, 0.44, { mass_g: 22 }),
  turned(["tu.stop-core-12", "Stop core 12 mm", "12 mm 止芯"], "free-cutting steel 12 mm", "nickel", 0.74, {
    mass_g: 15,
    ...wears(0.03),
  }),
  turned(
    ["tu.plunger-12x50", "Plunger 12 × 50", "铁芯 12 × 50"],
    "free-cutting steel 12 mm",
    "nickel",
    0.95,
    {
      mass_g: 43,
      ...wears(0.02),
    },
  ),
  turned(
    ["tu.plunger-12x62", "Plunger 12 × 62, with slot", "铁芯 12 × 62（开槽）"],
    "free-cutting steel 12 mm",
    "nickel",
    1.18,
    {
      mass_g: 52,
      ...wears(0.03),
    },
  ),
  turned(
    ["tu.plunger-10x44", "Plunger 10 × 44", "铁芯 10 × 44"],
    "free-cutting steel 10 mm",
    "nickel",
    0.82,
    {
      mass_g: 26,
      ...wears(0.02),
    },
  ),
  turned(["tu.plunger-6x30", "Plunger 6 × 30", "铁芯 6 × 30"], "free-cutting steel 6 mm", "nickel", 0.58, {
    mass_g: 6.5,
  }),
  moulded(["md.link", "Link between plunger and crank", "铁芯连杆"], "nylon with glass fibre, black", 0.34, {
    mass_g: 3.1,
    ...wears(0.06),
  }),
  spring(
    ["sp.plunger-12", "Return spring, conical, for 12 mm plungers", "12 mm 铁芯锥形复位簧"],
    0.9,
    0.16,
    wears(0.03),
  ),
  spring(["sp.plunger-10", "Return spring for 10 mm plungers", "10 mm 铁芯复位簧"], 0.7, 0.14, wears(0.02)),
  spring(["sp.plunger-6", "Return spring for 6 mm plungers", "6 mm 铁芯复位簧"], 0.5, 0.12),
  spring(["sp.draw-20", "Draw spring 20 mm", "拉簧 20 mm"], 0.6, 0.15, wears(0.03)),
  spring(["sp.draw-34", "Draw spring 34 mm", "拉簧 34 mm"], 0.8, 0.19, wears(0.04)),
];
