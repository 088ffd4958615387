import type { BookRow } from "@pinwright/book";
import { rows, type Topic } from "./author.ts";

type Terminal = readonly [name: string, family: string, x: number, y: number];
interface Kind {
  readonly id: string;
  readonly label: string;
  readonly labelZh: string;
  readonly class: BookRow<"device_types">["class"];
  readonly letter: string;
  readonly size: readonly [width: number, depth: number, height: number, reach?: number];
  readonly terminals: readonly Terminal[];
  readonly elements: readonly Partial<BookRow<"elements">>[];
}

const contact = (control: string, normally: "open" | "closed" = "open"): Partial<BookRow<"elements">> => ({
  kind: "contact",
  from: "com",
  to: "no",
  control,
  normally,
  ohm: 0.05,
});
const switchPair = (family: string, y: number): readonly Terminal[] => [
  ["com", family, -4, y],
  ["no", family, 4, y],
];

const supply = (
  id: string,
  label: string,
  labelZh: string,
  size: Kind["size"],
  volt: number,
  amp: number,
  mainsA: number,
): Kind => ({
  id,
  label,
  labelZh,
  class: "supply",
  letter: "T",
  size,
  terminals: [
    ["l", "screw", -size[0] / 2 + 10, -size[1] / 2],
    ["n", "screw", -size[0] / 2 + 20, -size[1] / 2],
    ["pe", "screw", -size[0] / 2 + 30, -size[1] / 2],
    ["vn", "screw", size[0] / 2 - 30, -size[1] / 2],
    ["vp", "screw", size[0] / 2 - 15, -size[1] / 2],
  ],
  elements: [
    { kind: "load", from: "l", to: "n", volt: 230, amp: mainsA },
    { kind: "source", from: "vp", to: "vn", volt, amp },
  ],
});

/** Studs of the earth bar. */
const EARTH_BAR_STUDS = 12;

const KINDS: readonly Kind[] = [
  {
    id: "dt.inlet",
    label: "Mains inlet",
    labelZh: "电源插座（输入）",
    class: "inlet",
    letter: "X",
    size: [50, 30, 32, 8],
    terminals: [
      ["l", "tab-63", -7, -15],
      ["pe", "tab-63", 0, -15],
      ["n", "tab-63", 7, -15],
    ],
    elements: [{ kind: "source", from: "l", to: "n", volt: 230, amp: 10, control: "mains" }],
  },
  {
    id: "dt.mains-switch",
    label: "Mains switch, two poles",
    labelZh: "双极电源开关",
    class: "other",
    letter: "Q",
    size: [34, 30, 30, 8],
    terminals: [
      ["l-in", "tab-63", -8, -15],
      ["n-in", "tab-63", 8, -15],
      ["l-out", "tab-63", -8, 15],
      ["n-out", "tab-63", 8, 15],
    ],
    elements: [
      { kind: "contact", from: "l-in", to: "l-out", control: "mains switch", normally: "open", ohm: 0.01 },
      { kind: "contact", from: "n-in", to: "n-out", control: "mains switch", normally: "open", ohm: 0.01 },
    ],
  },
  {
    id: "dt.mains-filter",
    label: "Mains filter, 10 A",
    labelZh: "电源滤波器 10 A",
    class: "filter",
    letter: "R",
    size: [100, 56, 42],
    terminals: [
      ["l-in", "tab-63", -46, -10],
      ["n-in", "tab-63", -46, 10],
      ["pe", "ring-m4", 0, -28],
      ["l-out", "tab-63", 46, -10],
      ["n-out", "tab-63", 46, 10],
    ],
    elements: [
      { kind: "resistor", from: "l-in", to: "l-out", ohm: 0.03, mh: 0.6, control: "choke" },
      { kind: "resistor", from: "n-in", to: "n-out", ohm: 0.03, mh: 0.6, control: "choke" },
      { kind: "capacitor", from: "l-in", to: "n-in", uf: 0.22 },
      { kind: "capacitor", from: "l-out", to: "pe", uf: 0.0022 },
      { kind: "capacitor", from: "n-out", to: "pe", uf: 0.0022 },
    ],
  },
  {
    id: "dt.mains-duct",
    label: "Mains duct with cover",
    labelZh: "带盖电源线槽",
    class: "other",
    letter: "U",
    size: [36, 330, 40],
    terminals: [],
    elements: [],
  },
  supply("dt.psu-48", "Supply unit 48 V 12 A", "48 V 12 A 电源", [240, 126, 60], 48, 12, 3),
  supply("dt.psu-12-150", "Supply unit 12 V 12 A", "12 V 12 A 电源", [190, 98, 45], 12, 12, 0.8),
  supply("dt.psu-12-100", "Supply unit 12 V 8 A", "12 V 8 A 电源", [160, 98, 40], 12, 8, 0.6),
  {
    id: "dt.earth-bar",
    label: "Earth bar, twelve studs",
    labelZh: "十二柱接地排",
    class: "earth",
    letter: "X",
    size: [200, 18, 22],
    terminals: Array.from(
      { length: EARTH_BAR_STUDS },
      (_, i): Terminal => [`t${i + 1}`, "ring-m4", -88 + 16 * i, 0],
    ),
    elements: Array.from({ length: EARTH_BAR_STUDS - 1 }, (_, i) => ({
      kind: "link" as const,
      from: `t${i + 1}`,
      to: `t${i + 2}`,
    })),
  },
  {
    id: "dt.earth-stud",
    label: "Earth stud",
    labelZh: "接地螺柱",
    class: "earth",
    letter: "X",
    size: [9, 9, 14],
    terminals: [["pe", "ring-m4", 0, 0]],
    elements: [],
  },
  {
    id: "dt.button-lit",
    label: "Lit push-button",
    labelZh: "带灯按钮",
    class: "button",
    letter: "S",
    size: [34, 34, 60, 10],
    terminals: [...switchPair("tab-28", -17), ["a", "tab-28", -4, 17], ["k", "tab-28", 4, 17]],
    elements: [
      contact("button pressed"),
      { kind: "led", from: "a", to: "k", volt: 6.3, amp: 0.03, ohm: 180 },
    ],
  },
  {
    id: "dt.flip-button",
    label: "Flipper button with leaf switch",
    labelZh: "拨板按钮（簧片）",
    class: "button",
    letter: "S",
    size: [30, 40, 46, 12],
    terminals: switchPair("lug", -20),
    elements: [contact("button pressed")],
  },
  {
    id: "dt.service-button",
    label: "Service button",
    labelZh: "维修按钮",
    class: "button",
    letter: "S",
    size: [14, 14, 24, 6],
    terminals: switchPair("tab-28", -7),
    elements: [contact("button pressed")],
  },
  {
    id: "dt.tilt-bob",
    label: "Tilt bob in its ring",
    labelZh: "倾斜摆",
    class: "switch",
    letter: "B",
    size: [40, 24, 90],
    terminals: switchPair("lug", -12),
    elements: [contact("bob touches the ring")],
  },
  {
    id: "dt.slam-leaf",
    label: "Slam leaf switch",
    labelZh: "撞击簧片开关",
    class: "switch",
    letter: "B",
    size: [12, 60, 16],
    terminals: switchPair("lug", -30),
    elements: [contact("door is struck")],
  },
  {
    id: "dt.coin-micro",
    label: "Coin microswitch",
    labelZh: "投币微动开关",
    class: "switch",
    letter: "B",
    size: [20, 12, 24],
    terminals: switchPair("tab-28", -6),
    elements: [contact("coin passes")],
  },
  {
    id: "dt.door-micro",
    label: "Door microswitch, closed while the door is shut",
    labelZh: "门微动开关（关门闭合）",
    class: "switch",
    letter: "B",
    size: [28, 16, 28],
    terminals: switchPair("tab-28", -8),
    elements: [contact("door is shut")],
  },
  {
    id: "dt.lamp-bb",
    label: "Backglass lamp",
    labelZh: "背玻璃灯",
    class: "lamp",
    letter: "E",
    size: [16, 18, 20, 10],
    terminals: [
      ["a", "lug", -5, -9],
      ["k", "lug", 5, -9],
    ],
    elements: [{ kind: "led", from: "a", to: "k", volt: 6.3, amp: 0.04, ohm: 150 }],
  },
  {
    id: "dt.speaker-100",
    label: "Speaker, 100 mm, 4 Ω",
    labelZh: "扬声器 100 mm 4 Ω",
    class: "speaker",
    letter: "P",
    size: [104, 104, 48],
    terminals: [
      ["pos", "tab-28", -6, -40],
      ["neg", "tab-28", 6, -40],
    ],
    elements: [{ kind: "speaker", from: "pos", to: "neg", ohm: 4 }],
  },
  {
    id: "dt.speaker-165",
    label: "Bass speaker, 165 mm, 8 Ω",
    labelZh: "低音扬声器 165 mm 8 Ω",
    class: "speaker",
    letter: "P",
    size: [168, 168, 76],
    terminals: [
      ["pos", "tab-28", -6, -60],
      ["neg", "tab-28", 6, -60],
    ],
    elements: [{ kind: "speaker", from: "pos", to: "neg", ohm: 8 }],
  },
];

type Placed = readonly [
  id: string,
  type: string,
  label: string,
  labelZh: string,
  panel: string,
  x: number,
  y: number,
  rotation?: number,
  side?: "under",
];

/** Lamps behind the backglass, on the rear of the lamp panel, in four rows of five. */
const backboxLamps: readonly Placed[] = Array.from(
  { length: 20 },
  (_, i): Placed => [
    `lp.bb-${i + 1}`,
    "dt.lamp-bb",
    `Backglass lamp ${i + 1}`,
    `背玻璃灯 ${i + 1}`,
    "bb.lamp",
    60 + (i % 5) * 135,
    250 + Math.floor(i / 5) * 90,
    0,
    "under",
  ],
);

const DEVICES: readonly Placed[] = [
  ["ml.inlet", "dt.inlet", "Mains inlet", "电源输入插座", "cab.back", 90, 110],
  ["ml.switch", "dt.mains-switch", "Mains switch", "电源总开关", "cab.back", 170, 110],
  ["ml.filter", "dt.mains-filter", "Mains filter", "电源滤波器", "cab.back", 290, 110],
  ["ml.duct", "dt.mains-duct", "Mains duct", "电源线槽", "cab.bottom", 300, 1090],
  ["psu.48", "dt.psu-48", "Coil supply", "线圈电源", "cab.bottom", 154, 1163, 180],
  ["psu.lamp", "dt.psu-12-150", "Lamp supply", "灯电源", "cab.bottom", 421, 1209],
  ["psu.motor", "dt.psu-12-100", "Motor supply", "电机电源", "cab.bottom", 406, 1059],
  ["psu.logic", "dt.psu-12-100", "Logic supply", "逻辑电源", "cab.bottom", 194, 989, 180],
  ["pe.bar", "dt.earth-bar", "Main earth bar", "总接地排", "cab.bottom", 430, 960],
  ["sw.start", "dt.button-lit", "Start button", "开始按钮", "cab.front", 470, 300],
  ["sw.action", "dt.button-lit", "Launch button", "发射按钮", "cab.front", 90, 300],
  ["sw.flip-left", "dt.flip-button", "Left flipper button", "左拨板按钮", "cab.left", 140, 330],
  ["sw.flip-right", "dt.flip-button", "Right flipper button", "右拨板按钮", "cab.right", 1160, 330],
  ["sw.tilt", "dt.tilt-bob", "Tilt bob", "倾斜摆", "cab.left", 300, 200],
  ["sw.slam", "dt.slam-leaf", "Slam switch", "撞击开关", "cab.door", 225, 200],
  ["sw.coin-1", "dt.coin-micro", "Coin chute 1", "投币口一", "cab.door", 80, 160],
  ["sw.coin-2", "dt.coin-micro", "Coin chute 2", "投币口二", "cab.door", 170, 160],
  ["sw.service-back", "dt.service-button", "Service: back", "维修：返回", "cab.door", 60, 60],
  ["sw.service-down", "dt.service-button", "Service: down", "维修：下", "cab.door", 100, 60],
  ["sw.service-up", "dt.service-button", "Service: up", "维修：上", "cab.door", 140, 60],
  ["sw.service-enter", "dt.service-button", "Service: enter", "维修：确认", "cab.door", 180, 60],
  ["sw.door", "dt.door-micro", "Coin door shut", "投币门关闭", "cab.front", 130, 200],
  [
    "sw.interlock",
    "dt.door-micro",
    "Coil interlock at the coin door",
    "投币门线圈联锁",
    "cab.front",
    130,
    150,
  ],
  ["lp.coin-1", "dt.lamp-bb", "Coin chute 1 light", "投币口一灯", "cab.door", 80, 110],
  ["lp.coin-2", "dt.lamp-bb", "Coin chute 2 light", "投币口二灯", "cab.door", 170, 110],
  ["sp.left", "dt.speaker-100", "Left speaker", "左扬声器", "bb.left", 120, 150],
  ["sp.right", "dt.speaker-100", "Right speaker", "右扬声器", "bb.right", 120, 150],
  ["sp.bass", "dt.speaker-165", "Bass speaker", "低音扬声器", "cab.bottom", 280, 300],
  ["pe.door", "dt.earth-stud", "Earth: coin door", "接地：投币门", "cab.door", 30, 110],
  ["pe.lockbar", "dt.earth-stud", "Earth: lock bar", "接地：锁条", "cab.front", 280, 330],
  ["pe.rail-left", "dt.earth-stud", "Earth: left side rail", "接地：左侧边条", "cab.left", 700, 380],
  ["pe.rail-right", "dt.earth-stud", "Earth: right side rail", "接地：右侧边条", "cab.right", 600, 380],
  ["pe.leg-front-left", "dt.earth-stud", "Earth: front left leg plate", "接地：左前腿板", "cab.left", 60, 60],
  [
    "pe.leg-front-right",
    "dt.earth-stud",
    "Earth: front right leg plate",
    "接地：右前腿板",
    "cab.right",
    60,
    60,
  ],
  ["pe.leg-back-left", "dt.earth-stud", "Earth: rear left leg plate", "接地：左后腿板", "cab.left", 1240, 60],
  [
    "pe.leg-back-right",
    "dt.earth-stud",
    "Earth: rear right leg plate",
    "接地：右后腿板",
    "cab.right",
    1240,
    60,
  ],
  ["pe.hinge", "dt.earth-stud", "Earth: backbox hinge", "接地：背箱铰链", "bb.bottom", 350, 60],
  ["pe.bb-lock", "dt.earth-stud", "Earth: backbox lock plate", "接地：背箱锁板", "bb.top", 350, 60],
  ...backboxLamps,
];

const MECHANISMS: readonly Placed[] = [
  ["mech.knocker", "mt.knocker", "Knocker", "敲击器", "cab.bottom", 420, 420],
  ["mech.bell", "mt.bell", "Fog bell", "雾钟", "cab.bottom", 490, 480],
  ["mech.shaker", "mt.shaker", "Storm shaker", "风暴振动器", "cab.bottom", 290, 490],
  ["mech.tide-clock", "mt.tide-clock", "Tide clock", "潮汐钟", "bb.lamp", 330, 625, 0, "under"],
];

const place = ([id, type, label, label_zh, panel, x_mm, y_mm, rotation_deg, side]: Placed) => ({
  id,
  type,
  label,
  label_zh,
  panel,
  side: side ?? ("top" as const),
  x_mm,
  y_mm,
  rotation_deg: rotation_deg ?? 0,
});

/** Devices of the cabinet and the backbox, and the mechanisms that stand there. `top` is each panel's inside. */
export const cabinetDevices: Topic = {
  tables: {
    device_types: rows(
      "device_types",
      KINDS.map((kind) => ({
        id: kind.id,
        label: kind.label,
        label_zh: kind.labelZh,
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
    devices: rows("devices", DEVICES.map(place)),
    mechanisms: rows("mechanisms", MECHANISMS.map(place)),
  },
};
