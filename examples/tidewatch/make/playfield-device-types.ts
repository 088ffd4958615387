import {
  coilKind,
  type DeviceKind,
  deviceKinds,
  flyback,
  lampKind,
  motorKind,
  plainKind,
  switchKind,
} from "./device-kind.ts";
import { box, disc, outlineAbout, rubber, type Shape } from "./shape.ts";

const about = (shape: Shape) => outlineAbout([0, 0], shape);

/** A lamp's bulb is at its origin; its bracket reaches away from it to the screw. */
const bracket = about(box(-8, -9, 8, 22));
const narrowBracket = about(box(-7, -9, 7, 22));

const SWITCHES: readonly DeviceKind[] = [
  switchKind(
    ["dt.rollover", "Rollover switch, wire lever", "滚道微动开关"],
    [20, 58, 24, 4],
    "tab-28",
    "ball on the wire",
  ),
  switchKind(
    ["dt.star-rollover", "Star rollover", "星形滚压开关"],
    [22, 44, 26, 3],
    "lug",
    "ball on the star",
  ),
  {
    ...switchKind(
      ["dt.standup", "Stand-up target, narrow", "立式靶（窄）"],
      [26, 22, 34, 30],
      "lug",
      "ball hits the face",
    ),
    outline: about(box(-13, -4, 13, 18)),
  },
  switchKind(
    ["dt.rebound-leaf", "Rebound leaf switch", "橡皮回弹簧片开关"],
    [12, 36, 12, 22],
    "lug",
    "ball hits the rubber",
  ),
  switchKind(
    ["dt.sling-leaf", "Slingshot leaf switch", "弹弓簧片开关"],
    [10, 34, 12, 22],
    "lug",
    "ball hits the rubber",
  ),
  switchKind(
    ["dt.eos", "Flipper end-of-stroke switch", "拨板行程末端开关"],
    [12, 40, 14],
    "lug",
    "flipper is up",
  ),
  switchKind(
    ["dt.spoon", "Pop bumper spoon switch", "弹跳柱勺形开关"],
    [12, 42, 22],
    "lug",
    "ball on the skirt",
  ),
  switchKind(["dt.drop-switch", "Drop target switch", "落靶开关"], [10, 20, 16], "tab-28", "target is down"),
  switchKind(
    ["dt.micro", "Microswitch, short lever", "短柄微动开关"],
    [20, 12, 12],
    "tab-28",
    "lever pressed",
  ),
  switchKind(["dt.gate-micro", "Gate microswitch", "闸门微动开关"], [20, 12, 14], "tab-28", "gate is pushed"),
  switchKind(
    ["dt.captive-leaf", "Captive ball leaf switch", "被困球簧片开关"],
    [12, 34, 14],
    "lug",
    "captive ball moves",
  ),
];

const LAMPS: readonly DeviceKind[] = [
  {
    ...lampKind(
      ["dt.lamp-insert", "Insert lamp, LED on bracket", "光孔灯（LED 支架）"],
      [16, 31, 22],
      "tab-28",
      { volt: 6.3, amp: 0.03, ohm: 180 },
    ),
    outline: bracket,
  },
  {
    ...lampKind(
      ["dt.lamp-gi", "General light, LED in lug socket", "照明灯（焊片灯座）"],
      [14, 31, 20, 24],
      "lug",
      { volt: 6.3, amp: 0.04, ohm: 150 },
    ),
    outline: narrowBracket,
  },
  lampKind(["dt.lamp-spot", "General light on a plastic", "塑料板上照明灯"], [14, 18, 18], "lug", {
    volt: 6.3,
    amp: 0.04,
    ohm: 150,
  }),
  lampKind(
    ["dt.flasher", "Flasher, high-power LED under a dome", "闪光灯（大功率 LED，罩内）"],
    [24, 34, 20, 26],
    "tab-28",
    { volt: 9.3, amp: 0.33, ohm: 8.2 },
  ),
  lampKind(
    ["dt.flasher-insert", "Flasher, high-power LED under an insert", "闪光灯（大功率 LED，光孔下）"],
    [24, 38, 20],
    "tab-28",
    { volt: 9.3, amp: 0.33, ohm: 8.2 },
  ),
  lampKind(["dt.lamp-bumper", "Pop bumper lamp", "弹跳柱灯"], [12, 12, 8], "lug", {
    volt: 6.3,
    amp: 0.06,
    ohm: 100,
  }),
  lampKind(["dt.lamp-beacon", "Beacon lamp", "灯塔旋转灯"], [14, 14, 16], "tab-28", {
    volt: 9.3,
    amp: 0.25,
    ohm: 10,
  }),
];

const COILS: readonly DeviceKind[] = [
  {
    id: "dt.coil-flipper",
    label: "Flipper coil, power and hold winding",
    label_zh: "拨板线圈（强力与保持绕组）",
    class: "coil",
    letter: "M",
    size: [44, 68, 44],
    terminals: [
      ["com", "lug", -8, -34],
      ["power", "lug", 0, -34],
      ["hold", "lug", 8, -34],
    ],
    elements: [
      { kind: "coil", from: "com", to: "power", control: "power winding", ohm: 4.2, mh: 11 },
      { kind: "coil", from: "com", to: "hold", control: "hold winding", ohm: 128, mh: 380 },
      flyback("power", "com"),
      flyback("hold", "com"),
    ],
  },
  coilKind(["dt.coil-sling", "Slingshot coil", "弹弓线圈"], [34, 52, 36], 10.4, 30),
  coilKind(["dt.coil-bumper", "Pop bumper coil", "弹跳柱线圈"], [38, 38, 58], 8.6, 26),
  coilKind(["dt.coil-reset", "Drop target reset coil", "落靶复位线圈"], [38, 60, 38], 5.4, 20),
  coilKind(
    ["dt.coil-reset-small", "Drop target reset coil, single", "单落靶复位线圈"],
    [30, 30, 46],
    9.8,
    24,
  ),
  coilKind(["dt.coil-trip", "Drop target trip coil", "落靶释放线圈"], [22, 30, 22], 36, 60),
  coilKind(["dt.coil-kick", "Kicker coil", "踢球线圈"], [36, 56, 36], 7.4, 24),
  coilKind(["dt.coil-vuk", "Up-kicker coil", "上踢线圈"], [38, 38, 62], 6.2, 21),
  coilKind(["dt.coil-plunger", "Auto-plunger coil", "自动发球线圈"], [40, 66, 42], 4.6, 17),
  coilKind(["dt.coil-diverter", "Diverter coil, long duty", "分道器线圈（长时通电）"], [36, 54, 36], 52, 120),
  coilKind(["dt.coil-gate", "Gate coil, long duty", "闸门线圈（长时通电）"], [24, 30, 24], 88, 140),
  coilKind(["dt.coil-post", "Up-post coil", "升降柱线圈"], [30, 30, 52], 28, 75),
  coilKind(["dt.coil-magnet", "Playfield magnet", "台面电磁铁"], [60, 60, 52], 8.0, 95, "tab-63"),
  coilKind(["dt.coil-knocker", "Knocker and bell coil", "敲击器线圈"], [38, 56, 38], 9.2, 28),
];

const MOTORS: readonly DeviceKind[] = [
  motorKind(["dt.motor-gear", "Gear motor, 12 V", "12 伏减速电机"], [38, 46, 52], {
    volt: 12,
    amp: 0.35,
    ohm: 9.5,
    mh: 6,
  }),
  motorKind(["dt.motor-crank", "Crank gear motor, 12 V", "12 伏曲柄减速电机"], [44, 58, 40], {
    volt: 12,
    amp: 0.5,
    ohm: 7.2,
    mh: 6,
  }),
  motorKind(["dt.motor-shaker", "Shaker motor, 12 V", "12 伏振动电机"], [46, 96, 46], {
    volt: 12,
    amp: 1.8,
    ohm: 1.6,
    mh: 2,
  }),
];

/** Infrared parts: flush below the playfield, and on a post that stands in a wall beside the ball's way. */
const INFRARED = [
  ["", "", "", [6, 12, 12, 0]],
  ["-post", " on a post", "（立柱）", [6, 12, 12, 20]],
] as const;

const emitters = INFRARED.map(
  ([id, label, label_zh, size]): DeviceKind => ({
    id: `dt.opto-tx${id}`,
    label: `Infrared emitter${label}`,
    label_zh: `红外发射管${label_zh}`,
    class: "sensor",
    letter: "E",
    size,
    terminals: [
      ["a", "lug", -2, -6],
      ["k", "lug", 2, -6],
    ],
    elements: [{ kind: "led", from: "a", to: "k", volt: 1.3, amp: 0.02 }],
  }),
);

const receivers = INFRARED.map(
  ([id, label, label_zh, size]): DeviceKind => ({
    id: `dt.opto-rx${id}`,
    label: `Infrared receiver${label}`,
    label_zh: `红外接收管${label_zh}`,
    class: "sensor",
    letter: "B",
    size,
    terminals: [
      ["c", "lug", -2, -6],
      ["e", "lug", 2, -6],
    ],
    elements: [
      { kind: "contact", from: "c", to: "e", control: "beam falls on it", normally: "closed", ohm: 100 },
    ],
  }),
);

const SENSORS: readonly DeviceKind[] = [
  {
    id: "dt.hall",
    label: "Magnetic ball sensor",
    label_zh: "磁感应球传感器",
    class: "sensor",
    letter: "B",
    size: [14, 22, 10],
    terminals: [
      ["vcc", "tab-28", -5, -11],
      ["out", "tab-28", 0, -11],
      ["gnd", "tab-28", 5, -11],
    ],
    elements: [
      { kind: "load", from: "vcc", to: "gnd", volt: 5, amp: 0.008 },
      { kind: "contact", from: "out", to: "gnd", control: "steel ball near", normally: "open", ohm: 20 },
    ],
  },
  ...emitters,
  ...receivers,
];

/** What mechanisms show above the playfield, and what hangs or swings there. Own y is the way it points. */
const ABOVE: readonly DeviceKind[] = [
  plainKind(
    ["dt.bat", "Flipper bat with rubber", "拨板（带胶圈）"],
    [20, 82, 24],
    about(tapered([0, 0], 10, [0, 66], 6)),
  ),
  plainKind(
    ["dt.bumper-body", "Pop bumper body and skirt", "弹跳柱柱身"],
    [64, 64, 50],
    about(disc([0, 0], 32)),
  ),
  plainKind(["dt.bumper-cap", "Pop bumper cap", "弹跳柱顶盖"], [84, 84, 12], about(disc([0, 0], 42))),
  plainKind(["dt.drop-face", "Drop target", "落靶片"], [22, 5, 38]),
  plainKind(["dt.lighthouse", "Lighthouse tower", "灯塔塔身"], [64, 64, 88], about(disc([0, 0], 32))),
  plainKind(["dt.lantern", "Lighthouse lantern", "灯塔灯室"], [44, 44, 20], about(disc([0, 0], 22))),
  plainKind(["dt.ship", "Ship model", "船模"], [34, 74, 70], about(tapered([0, -14], 17, [0, 34], 6))),
  plainKind(["dt.plunger-tip", "Plunger fork", "发球拨叉"], [12, 32, 24]),
  plainKind(["dt.swing-plate", "Spinner plate", "旋转片"], [40, 3, 40]),
  plainKind(["dt.swing-wire", "Gate wire", "闸门线"], [34, 3, 30]),
  plainKind(["dt.blade", "Diverter blade", "分道片"], [6, 56, 26], about(box(-3, -6, 3, 50))),
];

/** The hull of two discs. */
function tapered(
  a: readonly [number, number],
  radiusA: number,
  b: readonly [number, number],
  radiusB: number,
): Shape {
  return rubber(0, ...[...disc(a, radiusA), ...disc(b, radiusB)].map((p) => [p.xMm, p.yMm] as const));
}

export const playfieldDeviceTypes = deviceKinds([
  ...SWITCHES,
  ...LAMPS,
  ...COILS,
  ...MOTORS,
  ...SENSORS,
  ...ABOVE,
]);
