import { bought, haveMade, type Item, made, moulded } from "./part-kit.ts";

const film = (
  id: string,
  label: string,
  zh: string,
  price: number,
  [material, thickness, finish]: readonly [string, number, string] = ["vinyl film", 0.2, "printed, matt"],
): Item => haveMade([id, label, zh], "consumable", [material, thickness, finish], ["print", price]);

/** Art, labels, books, packing and what lies in the bag of spares. */
export const PRINT_PARTS: readonly Item[] = [
  film("ar.side-left", "Art of the left side", "左侧贴画", 9.8),
  film("ar.side-right", "Art of the right side", "右侧贴画", 9.8),
  film("ar.front", "Art of the front", "前板贴画", 4.1),
  film("ar.bb-sides", "Art of the backbox sides, pair", "背箱侧贴画（一对）", 6.6),
  film("ar.backglass", "Art of the backglass", "背玻璃贴画", 12.4, ["backlit film", 0.25, "printed, gloss"]),
  film("ar.dmd-panel", "Art around the dot panels", "点阵屏面板贴画", 3.2),
  ...(
    [
      ["en", "English", "英文"],
      ["zh", "Chinese", "中文"],
    ] as const
  ).flatMap(([lang, name, zh]) => [
    film(`lb.cards-${lang}`, `Instruction cards, ${name}`, `说明卡（${zh}）`, 0.9, [
      "card",
      0.4,
      "printed, laminated",
    ]),
    film(`lb.warnings-${lang}`, `Warning labels, set, ${name}`, `警告标签套（${zh}）`, 0.75, [
      "polyester film",
      0.1,
      "printed",
    ]),
    film(`lb.fuses-${lang}`, `Fuse and service labels, set, ${name}`, `保险丝与维修标签套（${zh}）`, 0.6, [
      "polyester film",
      0.1,
      "printed",
    ]),
    film(`bk.service-${lang}`, `Service book, ${name}`, `维修手册（${zh}）`, 7.4, [
      "paper",
      9,
      "bound with wire",
    ]),
  ]),
  ...(
    [
      ["230", "230 V"],
      ["115", "115 V"],
    ] as const
  ).flatMap(([volts, name]) => [
    film(`label.plate-${volts}`, `Rating plate ${name}`, `${name} 铭牌`, 0.48, [
      "polyester film",
      0.1,
      "printed, silver",
    ]),
    bought(
      [`cord.${volts}`, `Mains cord, ${name} plug`, `${name} 电源线`],
      "cable",
      [
        ["components", 2.6, 10],
        ["components-b", 2.4, 50],
      ],
      { mass_g: 260 },
    ),
  ]),
  film("lb.mains", "Label: mains under this cover", "标签：盖下有市电", 0.09, [
    "polyester film",
    0.1,
    "printed",
  ]),
  film("lb.earth", "Label: earth", "接地标签", 0.03, ["polyester film", 0.1, "printed"]),
  film("lb.serial", "Serial number plate", "序列号铭牌", 0.35, ["polyester film", 0.1, "printed, silver"]),
  haveMade(
    ["pk.carton", "Carton of the machine, double wall", "整机纸箱（双层）"],
    "consumable",
    ["cardboard", 7, "printed in one colour"],
    ["packing", 12.6],
  ),
  haveMade(
    ["pk.pallet", "Pallet 800 × 1450", "托盘 800 × 1450"],
    "wood",
    ["pine, heat-treated", 22, ""],
    ["packing", 9.4],
  ),
  haveMade(
    ["pk.foam-cab", "Corner of foam, cabinet", "机箱泡沫角"],
    "consumable",
    ["polyethylene foam", 50, ""],
    ["packing", 0.75],
  ),
  haveMade(
    ["pk.foam-bb", "Block of foam, backbox", "背箱泡沫块"],
    "consumable",
    ["polyethylene foam", 50, ""],
    ["packing", 0.95],
  ),
  haveMade(
    ["pk.leg-box", "Box of the legs", "机腿纸盒"],
    "consumable",
    ["cardboard", 4, ""],
    ["packing", 1.5],
  ),
  bought(
    ["pk.strap", "Strap 16 mm", "打包带 16 mm"],
    "consumable",
    [
      ["packing", 0.06, 500],
      ["hardware", 0.072, 500],
    ],
    { unit: "m" },
  ),
  bought(
    ["pk.film", "Stretch film", "缠绕膜"],
    "consumable",
    [
      ["packing", 2.9, 2],
      ["hardware", 3.48, 2],
    ],
    { unit: "kg" },
  ),
  bought(["pk.silica", "Drying bag 50 g", "干燥剂 50 g"], "consumable", [
    ["packing", 0.18, 100],
    ["hardware", 0.216, 100],
  ]),
  bought(["pk.bag-zip", "Bag with zip 200 × 300", "自封袋 200 × 300"], "consumable", [
    ["packing", 0.07, 100],
    ["hardware", 0.084, 100],
  ]),
  made(["asm.spares-bag", "Bag of first spares", "随机备件包"], "mechanism", {
    "pk.bag-zip": 1,
    "rubber.flipper": 3,
    "rubber.ring-sling": 2,
    "rubber.ring-wing": 2,
    "md.sleeve-54": 1,
    "md.sleeve-46": 2,
    "md.link": 2,
    "sp.flipper-return": 1,
    "dev.micro": 1,
    "fuse.t-6-3-h": 1,
    "fuse.t-3-15": 2,
    "fuse.t-4": 1,
    "el.led-warm": 3,
  }),
  moulded(["md.key-hook", "Hook of the keys", "钥匙挂钩"], "nylon, black", 0.11, { mass_g: 2 }),
];

type Line = readonly [part: string, quantity: number, options?: readonly string[]];

export const PRINT_BOM: readonly Line[] = [
  ["ar.side-left", 1],
  ["ar.side-right", 1],
  ["ar.front", 1],
  ["ar.bb-sides", 1],
  ["ar.backglass", 1],
  ["ar.dmd-panel", 1],
  ...(["en", "zh"] as const).flatMap((lang): Line[] =>
    ["lb.cards", "lb.warnings", "lb.fuses", "bk.service"].map((id) => [
      `${id}-${lang}`,
      1,
      [`language-${lang}`],
    ]),
  ),
  ...(["230", "115"] as const).flatMap((volts): Line[] =>
    ["label.plate", "cord"].map((id) => [
      `${id}.${volts}`.replace("plate.", "plate-"),
      1,
      [`mains-${volts}`],
    ]),
  ),
  ["lb.serial", 1],
  ["pk.carton", 1],
  ["pk.pallet", 1],
  ["pk.foam-cab", 8],
  ["pk.foam-bb", 4],
  ["pk.leg-box", 1],
  ["pk.strap", 14],
  ["pk.film", 0.35],
  ["pk.silica", 2],
  ["md.key-hook", 1],
  ["asm.spares-bag", 1],
];
