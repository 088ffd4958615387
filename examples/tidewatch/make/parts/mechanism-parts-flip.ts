import { type Item, moulded, sheetMetal, spring, turned, wears } from "./part-kit.ts";

/** Parts of flippers, slingshots and pop bumpers. */
export const FLIP_PARTS: readonly Item[] = [
  ...(["left", "right"] as const).flatMap((hand) => {
    const zh = hand === "left" ? "左" : "右";
    return [
      sheetMetal([`br.flipper-plate-${hand}`, `Flipper plate, ${hand}`, `${zh}拨板底板`], 2, 2.65, {
        mass_g: 142,
      }),
      sheetMetal([`br.sling-plate-${hand}`, `Slingshot plate, ${hand}`, `${zh}弹弓底板`], 2, 1.35, {
        mass_g: 58,
      }),
    ];
  }),
  sheetMetal(["br.flipper-eos", "Bracket of the end-of-stroke switch", "行程末端开关支架"], 1.5, 0.42, {
    mass_g: 9,
  }),
  turned(["tu.flipper-shaft", "Flipper shaft 8 mm", "拨板轴 8 mm"], "ground steel 8 mm", "hardened", 1.15, {
    mass_g: 31,
  }),
  sheetMetal(["br.flipper-crank", "Crank, two cheeks and a clamp", "拨板曲柄"], 3, 1.45, {
    mass_g: 36,
    ...wears(0.02),
  }),
  moulded(["md.flipper-bush", "Flipper bushing with flange", "拨板衬套"], "acetal, white", 0.24, {
    mass_g: 4.2,
    ...wears(0.08),
  }),
  moulded(["md.flipper-bat", "Flipper bat without shaft", "拨板体"], "nylon with glass fibre, ivory", 0.72, {
    mass_g: 17,
    ...wears(0.05),
  }),
  spring(["sp.flipper-return", "Flipper return spring", "拨板复位簧"], 0.9, 0.22, wears(0.06)),
  sheetMetal(["br.sling-arm", "Slingshot arm", "弹弓臂"], 2.5, 0.72, { mass_g: 21, ...wears(0.02) }),
  turned(["tu.sling-pin", "Pin of the slingshot arm, 5 mm", "弹弓臂销 5 mm"], "silver steel 5 mm", "", 0.48, {
    mass_g: 5.8,
  }),
  moulded(["md.sling-tip", "Tip of the slingshot arm", "弹弓臂头"], "nylon, black", 0.18, {
    mass_g: 1.6,
    ...wears(0.05),
  }),
  sheetMetal(["br.bumper-plate", "Pop bumper plate", "弹跳柱底板"], 2, 1.62, { mass_g: 66 }),
  sheetMetal(["br.bumper-yoke", "Coil yoke of the pop bumper", "弹跳柱线圈架"], 2.5, 1.12, { mass_g: 61 }),
  sheetMetal(["br.bumper-armature", "Armature plate of steel", "弹跳柱钢连板"], 2, 0.58, { mass_g: 18 }),
  sheetMetal(
    ["br.bumper-fibre", "Armature plate of laminate", "弹跳柱胶木连板"],
    1.6,
    0.46,
    { mass_g: 4, ...wears(0.08) },
    ["paper laminate", ""],
  ),
  turned(["tu.bumper-ring", "Ring with two rods", "弹跳柱环（双杆）"], "stainless steel", "polished", 3.9, {
    mass_g: 74,
  }),
  moulded(["md.bumper-body", "Pop bumper body", "弹跳柱柱身"], "ABS, white", 0.95, { mass_g: 38 }),
  moulded(["md.bumper-skirt", "Pop bumper skirt with stem", "弹跳柱裙座"], "acetal, sea green", 0.62, {
    mass_g: 14,
    ...wears(0.06),
  }),
  moulded(
    ["md.bumper-cap", "Pop bumper cap, lighthouse lens", "弹跳柱顶盖（灯塔透镜）"],
    "polycarbonate, clear red",
    0.84,
    { mass_g: 26 },
  ),
  moulded(["md.bumper-base", "Base of the pop bumper body", "弹跳柱座"], "ABS, white", 0.48, { mass_g: 15 }),
  moulded(["md.bumper-spoon", "Spoon of the skirt switch", "勺形开关触碗"], "nylon, black", 0.12, {
    mass_g: 0.9,
  }),
  spring(["sp.bumper-skirt", "Skirt spring", "裙座弹簧"], 0.5, 0.14, wears(0.02)),
];

/** What is in one of these mechanisms besides its devices, by mechanism type. */
export const FLIP_CONTENTS: Readonly<Record<string, Readonly<Record<string, number>>>> = {
  ...Object.fromEntries(
    (
      [
        ["mt.flipper-left", "left"],
        ["mt.flipper-right", "right"],
        ["mt.flipper-upper", "right"],
      ] as const
    ).map(([type, hand]) => [
      type,
      {
        [`br.flipper-plate-${hand}`]: 1,
        "br.coil-stop-a": 1,
        "br.coil-back-a": 1,
        "br.flipper-eos": 1,
        "br.flipper-crank": 1,
        "tu.stop-core-12": 1,
        "tu.plunger-12x62": 1,
        "md.link": 1,
        "md.flipper-bush": 1,
        "sp.flipper-return": 1,
        "hw.pin-roll-3x16": 1,
        "hw.bumper-rubber-8": 1,
        "hw.m4x8": 6,
        "hw.m4x12": 1,
        "hw.nut-m4-lock": 1,
        "hw.m3x8": 2,
      },
    ]),
  ),
  ...Object.fromEntries(
    (["left", "right"] as const).map((hand) => [
      `mt.slingshot-${hand}`,
      {
        [`br.sling-plate-${hand}`]: 1,
        "br.coil-stop-b": 1,
        "br.coil-back-b": 1,
        "br.sling-arm": 1,
        "tu.sling-pin": 1,
        "md.sling-tip": 1,
        "md.link": 1,
        "tu.stop-core-12": 1,
        "tu.plunger-12x50": 1,
        "sp.draw-34": 1,
        "hw.clip-e-4": 2,
        "hw.pin-roll-3x16": 1,
        "hw.m4x8": 4,
      },
    ]),
  ),
  "mt.bumper": {
    "br.bumper-plate": 1,
    "br.bumper-yoke": 1,
    "br.bumper-armature": 1,
    "br.bumper-fibre": 1,
    "tu.bumper-ring": 1,
    "tu.stop-core-12": 1,
    "tu.plunger-12x50": 1,
    "sp.plunger-12": 1,
    "sp.bumper-skirt": 1,
    "hw.nut-m4-lock": 2,
    "hw.washer-spring-m4": 2,
    "hw.m4x8": 4,
    "hw.m3x25": 2,
  },
};
