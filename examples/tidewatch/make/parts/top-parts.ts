import {
  bought,
  haveMade,
  type Item,
  made,
  moulded,
  sheetMetal,
  sheetPlastic,
  wears,
  wireForm,
} from "./part-kit.ts";

const STAINLESS = ["stainless sheet", "brushed"] as const;

/** Guides of stainless strip, bent on edge, with feet that are tapped M3: name, what it is, its price, mass. */
const GUIDES = [
  ["arch", "Ball arch", "顶部弧形导轨", 7.8, 310],
  ["inlane-left", "Left inlane guide", "左内道导轨", 3.4, 96],
  ["inlane-right", "Right inlane guide", "右内道导轨", 3.4, 96],
  ["orbit-left", "Left orbit guide", "左环道导轨", 2.7, 84],
  ["orbit-right", "Right orbit guide", "右环道导轨", 1.6, 38],
  ["wreck", "Wreck slope guide", "沉船斜导轨", 2.2, 54],
  ["bank-side", "Breakwater side guide", "防波堤侧导轨", 1.9, 42],
  ["bank-rear", "Breakwater rear wall", "防波堤后墙", 1.5, 37],
  ["cave", "Sea cave guide", "海蚀洞导轨", 1.8, 36],
  ["storm-1", "Storm wall, piece 1", "风暴墙第 1 段", 1.1, 18],
  ["storm-2", "Storm wall, piece 2", "风暴墙第 2 段", 0.8, 8],
  ["storm-3", "Storm wall, piece 3", "风暴墙第 3 段", 0.7, 5],
  ["storm-4", "Storm wall, piece 4", "风暴墙第 4 段", 1, 14],
  ["upper-flipper", "Upper flipper guide", "右上拨板导轨", 1.4, 20],
  ["captive-lip-left", "Captive ball lip, left", "被困球左挡", 0.7, 5],
  ["captive-lip-right", "Captive ball lip, right", "被困球右挡", 0.8, 7],
] as const;

/** Blocks and rails of maple or plywood: name, label, the wood in it, minutes are in their way of making. */
const WOODS = [
  ["rail-left", "Left rail", "左边木条", { "wood.maple-10x32": 1.1 }, 205],
  ["rail-right", "Right rail", "右边木条", { "wood.maple-10x32": 1.1 }, 205],
  ["rail-rear", "Rear rail", "后边木条", { "wood.maple-10x32": 0.52 }, 95],
  ["divider", "Plunger lane divider", "发球道隔条", { "wood.maple-8x32": 0.68 }, 99],
  ["lane-foot", "Plunger lane foot", "发球道底块", { "wood.maple-48x32": 0.05 }, 41],
  ["apron-left", "Apron, left ball guide", "左裙板导块", { "wood.maple-48x32": 0.34 }, 260],
  ["apron-right", "Apron, right ball guide", "右裙板导块", { "wood.maple-48x32": 0.34 }, 230],
  ["drain-foot", "Drain foot", "落球口底块", { "wood.maple-48x32": 0.07 }, 60],
] as const;

const WIREFORMS = [
  ["wireform-left", "Left wireform", "左线轨", 13.5, 148],
  ["wireform-left-low", "Left wireform, lower end", "左线轨下段", 8.2, 86],
  ["wireform-cross", "Wireform over the top lanes", "顶部横跨线轨", 18.5, 190],
  ["wireform-harbour", "Harbour wireform", "港湾线轨", 21.5, 236],
  ["wireform-right-low", "Right wireform, lower end", "右线轨下段", 8.4, 88],
] as const;

export const WOOD_PARTS: readonly string[] = WOODS.map(([name]) => `top.${name}`);

/** What stands on the playfield: rails, guides, ramps, wireforms, plastics, rubbers. */
export const TOP_PARTS: readonly Item[] = [
  bought(
    ["wood.maple-10x32", "Maple strip 10 × 32, planed", "枫木条 10 × 32"],
    "wood",
    [
      ["timber", 2.4, 10],
      ["timber-b", 2.57, 10],
    ],
    { unit: "m" },
  ),
  bought(
    ["wood.maple-8x32", "Maple strip 8 × 32, planed", "枫木条 8 × 32"],
    "wood",
    [
      ["timber", 2.1, 10],
      ["timber-b", 2.25, 10],
    ],
    {
      unit: "m",
    },
  ),
  bought(
    ["wood.maple-48x32", "Maple bar 48 × 32, planed", "枫木方 48 × 32"],
    "wood",
    [
      ["timber", 7.2, 5],
      ["timber-b", 7.7, 5],
    ],
    {
      unit: "m",
    },
  ),
  ...WOODS.map(([name, label, zh, contains, mass_g]) =>
    made(
      [`top.${name}`, label, zh],
      "wood",
      { ...contains, "pa.lacquer": 0.01 },
      {
        mass_g,
        material: "maple",
        thickness_mm: 32,
        finish: "clear lacquer",
      },
    ),
  ),
  ...GUIDES.map(([name, label, zh, price, mass_g]) =>
    sheetMetal([`top.${name}`, label, zh], 1.5, price, { mass_g }, STAINLESS),
  ),
  ...[1, 2, 3, 4].map((n) =>
    sheetMetal(
      [`top.top-lane-${n}`, `Top lane guide ${n}`, `顶部道导轨 ${n}`],
      1.5,
      0.9,
      { mass_g: 16 },
      STAINLESS,
    ),
  ),
  made(
    ["top.exit-gate", "Plunger lane one-way gate", "发球道单向门"],
    "mechanism",
    {
      "br.exit-gate": 1,
      "wf.gate": 1,
      "hw.clip-e-4": 1,
    },
    { mass_g: 14 },
  ),
  sheetMetal(["br.exit-gate", "Bracket of the one-way gate", "单向门支架"], 1.2, 0.7, { mass_g: 11 }),
  ...(
    [
      ["left", "Left", "左", 6.1, 9.4],
      ["right", "Right", "右", 6.6, 10.8],
    ] as const
  ).flatMap(([hand, label, zh, mouth, deck]) => [
    sheetMetal(
      [`top.ramp-${hand}-mouth`, `${label} ramp mouth`, `${zh}坡道入口段`],
      1,
      mouth,
      { mass_g: 88, ...wears(0.01) },
      STAINLESS,
    ),
    haveMade(
      [`top.ramp-${hand}-deck`, `${label} ramp`, `${zh}坡道`],
      "moulded",
      ["PETG, clear", 3, "vacuum-formed, trimmed"],
      ["plastics", deck],
      {
        mass_g: hand === "left" ? 92 : 118,
        scrap_pct: 4,
        ...wears(0.02),
      },
    ),
  ]),
  haveMade(
    ["top.ramp-right-fork", "Right ramp fork", "右坡道分岔"],
    "moulded",
    ["PETG, clear", 3, "vacuum-formed, trimmed"],
    ["plastics", 6.2],
    {
      mass_g: 41,
      scrap_pct: 4,
      ...wears(0.02),
    },
  ),
  ...WIREFORMS.map(([name, label, zh, price, mass_g]) =>
    wireForm([`top.${name}`, label, zh], 3.5, "welded, bright", price, { mass_g }),
  ),
  sheetPlastic(
    ["top.plastic-sling-left", "Left slingshot plastic", "左弹弓塑料板"],
    3,
    "printed on the rear",
    2.7,
    {
      mass_g: 21,
      scrap_pct: 2,
      ...wears(0.06),
    },
  ),
  sheetPlastic(
    ["top.plastic-sling-right", "Right slingshot plastic", "右弹弓塑料板"],
    3,
    "printed on the rear",
    2.7,
    {
      mass_g: 21,
      scrap_pct: 2,
      ...wears(0.06),
    },
  ),
  made(
    ["top.apron-plate", "Apron", "裙板"],
    "mechanism",
    { "br.apron": 1, "ar.apron": 1, "hw.m3x8": 4 },
    { mass_g: 620 },
  ),
  sheetMetal(["br.apron", "Apron, bare", "裙板钣金"], 1.2, 6.4, { mass_g: 610 }, [
    "steel sheet, cold rolled",
    "powder-coated, black",
  ]),
  haveMade(
    ["ar.apron", "Art of the apron", "裙板贴画"],
    "consumable",
    ["vinyl film", 0.2, "printed, matt"],
    ["print", 3.6],
  ),
  ...(
    [
      ["rubber.ring-sling", "Rubber ring of a slingshot, 90 mm", "弹弓橡皮圈 90 mm", 0.34, 0.5],
      ["rubber.ring-wing", "Rubber ring of a wing, 32 mm", "翼部橡皮圈 32 mm", 0.16, 0.3],
      ["rubber.wall", "Rubber strip of the left wall", "左墙橡皮条", 0.22, 0.3],
      ["rubber.flipper", "Flipper rubber", "拨板橡皮", 0.31, 0.8],
      ["rubber.post-10", "Rubber sleeve of the up-post", "升降柱胶套", 0.18, 0.3],
    ] as const
  ).map(([id, label, zh, price, fails]) =>
    haveMade(
      [id, label, zh],
      "moulded",
      ["rubber, 45 Shore A, black", null, ""],
      ["rubber", price, 20],
      wears(fails),
    ),
  ),
  ...(
    [
      [16, "", 0.8],
      [17, "", 0.84],
      [22, "", 1.05],
    ] as const
  ).map(([mm, , price]) =>
    bought(
      [`insert.round-${mm}`, `Insert, round, ${mm} mm, clear`, `圆形透明嵌件 ${mm} mm`],
      "moulded",
      mm === 17
        ? [
            ["plastics", price, 100],
            ["components-b", price * 1.1, 100],
          ]
        : [["plastics", price, 100]],
      {
        revision: "A",
        material: "acrylic, clear",
        thickness_mm: 6,
        mass_g: Math.round(mm ** 2 * 0.0056 * 10) / 10,
        scrap_pct: 2,
      },
    ),
  ),
  haveMade(
    ["ar.playfield", "Print of the playfield, with clear coat", "台面印刷（含清漆）"],
    "bought-in",
    ["ink and lacquer on our wood", null, "printed, three coats"],
    ["print", 46],
    {
      scrap_pct: 3,
    },
  ),
  moulded(["md.ball-guide-clip", "Clip of a guide's end", "导轨端夹"], "acetal, black", 0.12, {
    mass_g: 0.8,
  }),
];
