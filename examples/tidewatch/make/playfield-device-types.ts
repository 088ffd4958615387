import type { BookRow } from "@pinwright/book";
import { rows, type Topic } from "./author.ts";

/** What a device type is on the outside, and what its terminals and insides are. */
interface Kind {
  readonly id: string;
  readonly label: string;
  readonly label_zh: string;
  readonly class: BookRow<"device_types">["class"];
  readonly letter: string;
  /** Width, depth, height off its side, and reach through the panel, in mm. */
  readonly size: readonly [number, number, number, number?];
  /** Name, connector family, place in the device's own frame. */
  readonly terminals: readonly (readonly [name: string, family: string, x: number, y: number])[];
  readonly elements: readonly Partial<BookRow<"elements">>[];
}

const contact = (control: string, normally: "open" | "closed" = "open"): Partial<BookRow<"elements">> => ({
  kind: "contact",
  from: "com",
  to: normally === "open" ? "no" : "nc",
  control,
  normally,
  ohm: 0.05,
});

/** Two tabs or lugs beside each other at the rear end of the device. */
const pair = (first: string, second: string, family: string, dx: number, y: number) =>
  [
    [first, family, -dx, y],
    [second, family, dx, y],
  ] as const;

/** A coil of one winding; its diode is fitted across the lugs, cathode at the supply side. */
const coil = (
  id: string,
  label: string,
  label_zh: string,
  size: Kind["size"],
  ohm: number,
  mh: number,
  family = "lug",
): Kind => ({
  id,
  label,
  label_zh,
  class: "coil",
  letter: "M",
  size,
  terminals: pair("pos", "neg", family, 6, -size[1] / 2),
  elements: [
    { kind: "coil", from: "pos", to: "neg", ohm, mh },
    { kind: "diode", from: "neg", to: "pos", volt: 0.9, control: "flyback" },
  ],
});

const lamp = (
  id: string,
  label: string,
  label_zh: string,
  size: Kind["size"],
  family: string,
  volt: number,
  amp: number,
  ohm: number,
): Kind => ({
  id,
  label,
  label_zh,
  class: "lamp",
  letter: "E",
  size,
  terminals: pair("a", "k", family, 5, -size[1] / 2),
  elements: [{ kind: "led", from: "a", to: "k", volt, amp, ohm }],
});

const switchOf = (
  id: string,
  label: string,
  label_zh: string,
  size: Kind["size"],
  family: string,
  control: string,
): Kind => ({
  id,
  label,
  label_zh,
  class: "switch",
  letter: "B",
  size,
  terminals: pair("com", "no", family, 4, -size[1] / 2),
  elements: [contact(control)],
});

const motor = (
  id: string,
  label: string,
  label_zh: string,
  size: Kind["size"],
  amp: number,
  ohm: number,
  mh: number,
): Kind => ({
  id,
  label,
  label_zh,
  class: "motor",
  letter: "M",
  size,
  terminals: pair("a", "b", "tab-28", 6, -size[1] / 2),
  elements: [{ kind: "motor", from: "a", to: "b", volt: 12, amp, ohm, mh }],
});

const KINDS: readonly Kind[] = [
  switchOf(
    "dt.rollover",
    "Rollover switch, wire lever",
    "滚道微动开关",
    [20, 44, 24, 4],
    "tab-28",
    "ball on the wire",
  ),
  switchOf("dt.star-rollover", "Star rollover", "星形滚压开关", [22, 36, 26, 3], "lug", "ball on the star"),
  switchOf(
    "dt.standup",
    "Stand-up target, narrow",
    "立式靶（窄）",
    [26, 14, 30, 42],
    "lug",
    "ball hits the face",
  ),
  switchOf(
    "dt.rebound-leaf",
    "Rebound leaf switch",
    "橡皮回弹簧片开关",
    [12, 40, 12, 22],
    "lug",
    "ball hits the rubber",
  ),
  switchOf(
    "dt.sling-leaf",
    "Slingshot leaf switch",
    "弹弓簧片开关",
    [10, 34, 12, 22],
    "lug",
    "ball hits the rubber",
  ),
  switchOf(
    "dt.eos",
    "Flipper end-of-stroke switch",
    "拨板行程末端开关",
    [12, 40, 14],
    "lug",
    "flipper is up",
  ),
  switchOf("dt.spoon", "Pop bumper spoon switch", "弹跳柱勺形开关", [12, 42, 22], "lug", "ball on the skirt"),
  switchOf("dt.drop-switch", "Drop target switch", "落靶开关", [10, 20, 16], "tab-28", "target is down"),
  switchOf("dt.micro", "Microswitch, short lever", "短柄微动开关", [20, 12, 12], "tab-28", "lever pressed"),
  switchOf("dt.gate-micro", "Gate microswitch", "闸门微动开关", [20, 12, 14], "tab-28", "gate is pushed"),
  switchOf(
    "dt.captive-leaf",
    "Captive ball leaf switch",
    "被困球簧片开关",
    [12, 34, 14, 22],
    "lug",
    "captive ball moves",
  ),
  lamp(
    "dt.lamp-insert",
    "Insert lamp, LED on bracket",
    "光孔灯（LED 支架）",
    [16, 18, 22],
    "tab-28",
    6.3,
    0.03,
    110,
  ),
  lamp(
    "dt.lamp-gi",
    "General light, LED in lug socket",
    "照明灯（焊片灯座）",
    [14, 18, 20, 24],
    "lug",
    6.3,
    0.04,
    82,
  ),
  lamp(
    "dt.flasher",
    "Flasher, high-power LED",
    "闪光灯（大功率 LED）",
    [24, 24, 20, 26],
    "tab-28",
    12,
    0.35,
    8.2,
  ),
  lamp("dt.lamp-bumper", "Pop bumper lamp", "弹跳柱灯", [12, 12, 8], "lug", 6.3, 0.06, 56),
  lamp("dt.lamp-beacon", "Beacon lamp", "灯塔旋转灯", [14, 14, 16], "tab-28", 12, 0.25, 10),
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
      { kind: "diode", from: "power", to: "com", volt: 0.9, control: "flyback" },
      { kind: "diode", from: "hold", to: "com", volt: 0.9, control: "flyback" },
    ],
  },
  coil("dt.coil-sling", "Slingshot coil", "弹弓线圈", [38, 52, 38], 10.4, 30),
  coil("dt.coil-bumper", "Pop bumper coil", "弹跳柱线圈", [38, 38, 58], 8.6, 26),
  coil("dt.coil-reset", "Drop target reset coil", "落靶复位线圈", [38, 60, 38], 5.4, 20),
  coil("dt.coil-trip", "Drop target trip coil", "落靶释放线圈", [22, 30, 22], 36, 60),
  coil("dt.coil-kick", "Kicker coil", "踢球线圈", [38, 56, 38], 7.4, 24),
  coil("dt.coil-vuk", "Up-kicker coil", "上踢线圈", [38, 38, 62], 6.2, 21),
  coil("dt.coil-plunger", "Auto-plunger coil", "自动发球线圈", [42, 66, 42], 4.6, 17),
  coil("dt.coil-diverter", "Diverter coil, long duty", "分道器线圈（长时通电）", [36, 54, 36], 52, 120),
  coil("dt.coil-gate", "Gate coil, long duty", "闸门线圈（长时通电）", [24, 34, 24], 88, 140),
  coil("dt.coil-post", "Up-post coil", "升降柱线圈", [30, 30, 52], 28, 75),
  coil("dt.coil-magnet", "Playfield magnet", "台面电磁铁", [60, 60, 52], 8.0, 95, "tab-63"),
  coil("dt.coil-knocker", "Knocker and bell coil", "敲击器线圈", [38, 56, 38], 9.2, 28),
  motor("dt.motor-gear", "Gear motor, 12 V", "12 伏减速电机", [38, 46, 52], 0.35, 9.5, 6),
  motor("dt.motor-crank", "Crank gear motor, 12 V", "12 伏曲柄减速电机", [44, 58, 40], 0.5, 7.2, 6),
  motor("dt.motor-shaker", "Shaker motor, 12 V", "12 伏振动电机", [46, 96, 46], 1.8, 1.6, 2),
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
  {
    id: "dt.opto-tx",
    label: "Infrared emitter",
    label_zh: "红外发射管",
    class: "sensor",
    letter: "E",
    size: [10, 14, 14, 20],
    terminals: pair("a", "k", "lug", 3, -7),
    elements: [{ kind: "led", from: "a", to: "k", volt: 1.3, amp: 0.02 }],
  },
  {
    id: "dt.opto-rx",
    label: "Infrared receiver",
    label_zh: "红外接收管",
    class: "sensor",
    letter: "B",
    size: [10, 14, 14, 20],
    terminals: pair("c", "e", "lug", 3, -7),
    elements: [
      { kind: "contact", from: "c", to: "e", control: "beam falls on it", normally: "closed", ohm: 100 },
    ],
  },
];

export const playfieldDeviceTypes: Topic = {
  tables: {
    device_types: rows(
      "device_types",
      KINDS.map((kind) => ({
        id: kind.id,
        label: kind.label,
        label_zh: kind.label_zh,
        class: kind.class,
        letter: kind.letter,
        width_mm: kind.size[0],
        depth_mm: kind.size[1],
        height_mm: kind.size[2],
        reach_mm: kind.size[3] ?? 0,
      })),
    ),
    terminals: rows(
      "terminals",
      KINDS.flatMap((kind) =>
        kind.terminals.map(([terminal, family, x_mm, y_mm]) => ({
          device_type: kind.id,
          terminal,
          family,
          x_mm,
          y_mm,
        })),
      ),
    ),
    elements: rows(
      "elements",
      KINDS.flatMap((kind) =>
        kind.elements.map((element, i) => ({
          id: `el.${kind.id.slice(3)}-${i + 1}`,
          device_type: kind.id,
          ...element,
        })),
      ),
    ),
  },
};
