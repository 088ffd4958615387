import { onPlayfield, rows, type Topic } from "./author.ts";
import { underPlayfield } from "./board-places.ts";
import { KEPT } from "./electrics-boards.ts";
import { mechanisms } from "./mechanisms.ts";

/** Mechanisms with a metal frame that hands can touch when the playfield is lifted. */
const BONDED: readonly (readonly [mechanism: string, label: string, labelZh: string])[] = [
  ["flip-left", "left flipper", "左拨板"],
  ["flip-right", "right flipper", "右拨板"],
  ["flip-upper", "upper flipper", "右上拨板"],
  ["sling-left", "left slingshot", "左弹弓"],
  ["sling-right", "right slingshot", "右弹弓"],
  ["bumper-left", "left pop bumper", "左弹跳柱"],
  ["bumper-right", "right pop bumper", "右弹跳柱"],
  ["bumper-low", "lower pop bumper", "下弹跳柱"],
  ["drops", "drop target bank", "四联落靶"],
  ["drop-cave", "cave drop target", "洞口落靶"],
  ["saucer", "saucer", "球碗"],
  ["wreck", "wreck up-kicker", "沉船上踢"],
  ["trough", "ball trough", "收球槽"],
  ["plunger", "auto-plunger", "自动发球器"],
  ["diverter", "ramp diverter and right ramp", "分道器与右坡道"],
  ["magnet", "magnet core", "电磁铁铁芯"],
  ["lock", "harbour lock and left ramp", "锁球器与左坡道"],
  ["lifter", "ramp flap lifter", "翻板提升器"],
  ["kickback", "kickback", "回踢器"],
  ["beacon", "lighthouse beacon", "灯塔"],
  ["ship", "ship drive", "船驱动"],
];

const STUD_MM = 9;

const wanted = BONDED.map(([name]) => {
  const mechanism = mechanisms.tables.mechanisms?.find((m) => m.id === `mech.${name}`);
  if (mechanism === undefined) throw new Error(`Mechanism mech.${name} is not there.`);
  return {
    id: `pe.${name}`,
    widthMm: STUD_MM,
    depthMm: STUD_MM,
    standoffMm: 0,
    x: mechanism.x_mm,
    y: mechanism.y_mm,
    rotations: [0 as const],
  };
});

/** Studs of the playfield's metal parts, and its earth bar that all of them are wired to, one by one. */
export const earthDevices: Topic = {
  tables: {
    devices: rows("devices", [
      {
        id: "pe.pf-bar",
        type: "dt.earth-bar",
        label: "Playfield earth bar",
        label_zh: "台面接地排",
        ...onPlayfield("under", 340, 14),
      },
      ...underPlayfield(wanted, KEPT).map((place, i) => ({
        id: place.id,
        type: "dt.earth-stud",
        label: `Earth: ${BONDED[i]?.[1] ?? ""}`,
        label_zh: `接地：${BONDED[i]?.[2] ?? ""}`,
        ...onPlayfield("under", place.xMm + STUD_MM / 2, place.yMm + STUD_MM / 2),
      })),
    ]),
  },
};

export const PLAYFIELD_STUDS: readonly string[] = wanted.map((w) => w.id);
