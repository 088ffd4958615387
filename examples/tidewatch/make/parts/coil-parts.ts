import { windings } from "../windings.ts";
import { bought, type Item, made, moulded, turned, wears } from "./part-kit.ts";

const DENSITY_COPPER_G_MM3 = 8.96e-3;
/** From the bore to the copper: the wall of the bobbin and its slip. */
const BOBBIN_MM = 1.5;

/** Kilograms of wire in a winding: turns of the mean diameter, in as many layers as the window asks for. */
function wireKg(turns: number, wireMm: number, enamelMm: number, boreMm: number, windowMm: number): number {
  const buildMm = Math.ceil((turns * enamelMm) / windowMm) * enamelMm;
  const lengthMm = Math.PI * (boreMm + 2 * BOBBIN_MM + buildMm) * turns;
  return Math.round(lengthMm * (Math.PI / 4) * wireMm ** 2 * DENSITY_COPPER_G_MM3) / 1000;
}

const wound = (windings.tables.windings ?? []).map((row) => {
  const mm = row.wire_mm ?? 0;
  return {
    coil: row.element.replace(/^el\.coil-|-\d$/g, ""),
    wire: `wire.enamel-${String(Math.round(mm * 1000)).padStart(4, "0")}`,
    kg: wireKg(row.turns ?? 0, mm, row.enamel_mm ?? mm, row.bore_mm ?? 0, row.window_mm ?? 1),
    mm,
  };
});

const enamelled = [...new Map(wound.map(({ wire, mm }) => [wire, mm])).entries()].map(([id, mm]) =>
  bought(
    [id, `Enamelled wire ${mm} mm, class F`, `漆包线 ${mm} mm F 级`],
    "wire",
    [
      ["wire", Math.round((13.5 + 1.1 / mm) * 100) / 100, 5],
      ["components-b", Math.round((15.2 + 1.2 / mm) * 100) / 100, 2],
    ],
    { unit: "kg" },
  ),
);

/** Coil, its bobbin's price, the sleeve that its plunger runs in, failures a year. */
const COILS: readonly (readonly [
  coil: string,
  label: string,
  zh: string,
  bobbin: number,
  sleeve: string,
  fails: number,
  wound: number,
])[] = [
  ["flipper", "Flipper coil", "拨板线圈", 0.38, "md.sleeve-54", 0.04, 11.2],
  ["sling", "Slingshot coil", "弹弓线圈", 0.3, "md.sleeve-42", 0.03, 4.2],
  ["bumper", "Pop bumper coil", "弹跳柱线圈", 0.31, "md.sleeve-46", 0.03, 4.6],
  ["reset", "Drop target reset coil", "落靶复位线圈", 0.33, "md.sleeve-54", 0.02, 4.9],
  ["reset-small", "Drop target reset coil, single", "单落靶复位线圈", 0.26, "md.sleeve-36", 0.02, 3.6],
  ["trip", "Drop target trip coil", "落靶释放线圈", 0.2, "md.sleeve-22", 0.01, 2.9],
  ["kick", "Kicker coil", "踢球线圈", 0.31, "md.sleeve-46", 0.02, 4.5],
  ["vuk", "Up-kicker coil", "上踢线圈", 0.32, "md.sleeve-46", 0.02, 5.1],
  ["plunger", "Auto-plunger coil", "自动发球线圈", 0.34, "md.sleeve-54", 0.02, 5.6],
  ["diverter", "Diverter coil, long duty", "分道器线圈（长时通电）", 0.31, "md.sleeve-46", 0.02, 5.4],
  ["gate", "Gate coil, long duty", "闸门线圈（长时通电）", 0.2, "md.sleeve-22", 0.01, 3.1],
  ["post", "Up-post coil", "升降柱线圈", 0.27, "md.sleeve-42", 0.01, 3.9],
  ["magnet", "Playfield magnet coil", "台面电磁铁线圈", 0.42, "", 0.01, 8.2],
  ["knocker", "Knocker and bell coil", "敲击器线圈", 0.31, "md.sleeve-46", 0.01, 4.6],
];

const SLEEVES = [22, 36, 42, 46, 54].map((mm) =>
  moulded([`md.sleeve-${mm}`, `Coil sleeve ${mm} mm`, `线圈套管 ${mm} mm`], "nylon, natural", 0.13, {
    mass_g: Math.round(mm / 12),
    ...wears(0.05),
  }),
);

/** Coils are wound here on bobbins that are moulded for us; a winder would do it, too. */
export const COIL_PARTS: readonly Item[] = [
  ...enamelled,
  ...SLEEVES,
  bought(["el.diode-3a", "Diode 3 A, 200 V", "二极管 3 A 200 V"], "electronic", [
    ["components", 0.11, 50],
    ["components-b", 0.095, 500],
  ]),
  bought(["el.lug-coil", "Solder lug for bobbins", "线圈焊片"], "contact", [
    ["components", 0.03, 100],
    ["components-b", 0.026, 1000],
  ]),
  bought(
    ["cs.tape-coil", "Coil tape 25 mm, polyester", "线圈胶带 25 mm"],
    "consumable",
    [
      ["wire", 0.11, 66],
      ["wire-b", 0.116, 66],
    ],
    { unit: "m" },
  ),
  turned(
    ["tu.core-shell", "Steel bush in the coil's end", "线圈端钢套"],
    "free-cutting steel 18 mm",
    "nickel",
    0.42,
    { mass_g: 9 },
  ),
  ...COILS.map(([coil, label, zh, bobbin]) =>
    moulded(
      [`md.bobbin-${coil}`, `Bobbin: ${label.toLowerCase()}`, `${zh}骨架`],
      "nylon with glass fibre, class F",
      bobbin,
      {
        mass_g: Math.round(bobbin * 30),
      },
    ),
  ),
  ...COILS.map(([coil, label, zh, , sleeve, fails, price]): Item => {
    const windingsOf = wound.filter((winding) => winding.coil === coil);
    const coilItem = made(
      [`coil.${coil}`, label, zh],
      "bought-in",
      {
        [`md.bobbin-${coil}`]: 1,
        ...Object.fromEntries(windingsOf.map(({ wire, kg }) => [wire, kg])),
        ...(sleeve === "" ? {} : { [sleeve]: 1 }),
        "el.diode-3a": windingsOf.length,
        "el.lug-coil": windingsOf.length + 1,
        "cs.tape-coil": 0.4,
        ...(coil === "flipper" ? { "tu.core-shell": 1 } : {}),
      },
      {
        mass_g: Math.round(windingsOf.reduce((sum, { kg }) => sum + kg * 1000, bobbin0(coil))),
        material: "copper on nylon bobbin",
        ...wears(fails),
      },
    );
    return { ...coilItem, offers: [["coils", Math.round(price * 130) / 100, 5]] };
  }),
];

/** Bobbin, lugs and diode weigh about this, in grams. */
function bobbin0(coil: string): number {
  return coil === "magnet" || coil === "flipper" ? 24 : 16;
}

/** Coils and how long one is on the winding machine, for the way of making it. */
export const COIL_NAMES: readonly string[] = COILS.map(([coil]) => coil);
