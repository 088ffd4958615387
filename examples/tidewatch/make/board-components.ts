import type { BookRow } from "@pinwright/book";

type Element = BookRow<"elements">;
type BoardType = BookRow<"board_types">;

/** A part as it is stuffed: size, joints, and what marks its right way round. */
export interface Stuffed {
  readonly letter: string;
  readonly part: string;
  readonly label: string;
  readonly labelZh: string;
  readonly value?: string;
  readonly size: readonly [width: number, depth: number, height: number];
  readonly joints: number;
  readonly polarity?: string;
  readonly afterWash?: boolean;
  /** Its joints lie below its body. */
  readonly hidden?: boolean;
  /** Place of its middle on the board, where it cannot be anywhere. */
  readonly at?: readonly [x: number, y: number];
}

/** A low board takes it lying, with its legs bent. */
interface Standing extends Stuffed {
  readonly lying: readonly [width: number, depth: number, height: number];
}

const CONTROLLER: Stuffed = {
  letter: "U",
  part: "el.controller",
  label: "Controller, 20 legs",
  labelZh: "控制器 20 脚",
  size: [10, 26, 5],
  joints: 20,
  polarity: "notch",
};
const TRANSCEIVER: Stuffed = {
  letter: "U",
  part: "el.transceiver",
  label: "Bus transceiver, 8 legs",
  labelZh: "总线收发器 8 脚",
  size: [10, 10, 5],
  joints: 8,
  polarity: "notch",
};
const POWER_FET: Stuffed = {
  letter: "Q",
  part: "el.fet-power",
  label: "Transistor, 100 V 30 A",
  labelZh: "功率晶体管 100 V 30 A",
  value: "100 V 30 A",
  size: [5, 10, 17],
  joints: 3,
  polarity: "tab to the edge",
};
const SMALL_FET: Stuffed = {
  letter: "Q",
  part: "el.fet-small",
  label: "Transistor, 60 V 1 A",
  labelZh: "晶体管 60 V 1 A",
  value: "60 V 1 A",
  size: [5, 5, 6],
  joints: 3,
  polarity: "flat side",
};
const DIODE: Stuffed = {
  letter: "D",
  part: "el.diode-clamp",
  label: "Diode 1 A, clamp",
  labelZh: "续流二极管 1 A",
  value: "1 A",
  size: [8, 2.8, 2.8],
  joints: 2,
  polarity: "ring",
};
const LED: Stuffed = {
  letter: "D",
  part: "el.led-3",
  label: "LED 3 mm, white",
  labelZh: "发光二极管 3 mm 白",
  value: "white",
  size: [4, 4, 6.5],
  joints: 2,
  polarity: "flat side",
};
const EMITTER: Stuffed = {
  letter: "D",
  part: "el.ir-emitter",
  label: "Infrared emitter, looks sideways",
  labelZh: "红外发射管 侧视",
  value: "940 nm",
  size: [5, 4.5, 6],
  joints: 2,
  polarity: "flat side",
  hidden: true,
};
const RECEIVER: Stuffed = {
  letter: "Q",
  part: "el.ir-receiver",
  label: "Infrared receiver, looks sideways",
  labelZh: "红外接收管 侧视",
  value: "940 nm",
  size: [5, 4.5, 6],
  joints: 2,
  polarity: "flat side",
  hidden: true,
};
const HOLDER: Stuffed = {
  letter: "F",
  part: "el.fuse-holder",
  label: "Fuse clips 5 × 20",
  labelZh: "保险丝夹 5 × 20",
  size: [22, 8, 12],
  joints: 4,
};
const RESETTABLE: Stuffed = {
  letter: "F",
  part: "el.fuse-reset",
  label: "Resettable fuse",
  labelZh: "自恢复保险丝",
  size: [8, 3.5, 11],
  joints: 2,
};
const REGULATOR: Stuffed = {
  letter: "U",
  part: "el.regulator",
  label: "Regulator module",
  labelZh: "稳压模块",
  size: [12, 9, 12],
  joints: 3,
  polarity: "bevel",
  afterWash: true,
};
const ELECTROLYTIC: Standing = {
  letter: "C",
  part: "el.cap-470",
  label: "Electrolytic 470 µF",
  labelZh: "电解电容 470 µF",
  value: "470 µF 25 V",
  size: [10, 10, 17],
  lying: [19, 10, 10.5],
  joints: 2,
  polarity: "minus stripe",
};
const CERAMIC: Stuffed = {
  letter: "C",
  part: "el.cap-100n",
  label: "Ceramic 100 nF",
  labelZh: "陶瓷电容 100 nF",
  value: "100 nF",
  size: [5, 2.5, 4],
  joints: 2,
};
const RELAY: Stuffed = {
  letter: "K",
  part: "el.relay",
  label: "Relay 48 V, 16 A",
  labelZh: "继电器 48 V 16 A",
  value: "48 V 16 A",
  size: [29, 13, 26],
  joints: 8,
  polarity: "mark at leg 1",
  afterWash: true,
};
const LINK: Stuffed = {
  letter: "W",
  part: "el.link",
  label: "Plug-in link, 10 A",
  labelZh: "插拔短接件 10 A",
  value: "10 A",
  size: [8, 2.5, 9],
  joints: 2,
};
const KNOB: Stuffed = {
  letter: "R",
  part: "el.pot-10k",
  label: "Potentiometer 10 kΩ, with shaft",
  labelZh: "电位器 10 kΩ 带轴",
  value: "10 kΩ",
  size: [14, 12, 22],
  joints: 3,
  afterWash: true,
  at: [18, 10],
};
const JACK: Stuffed = {
  letter: "X",
  part: "el.jack-35",
  label: "Headphone socket 3.5 mm",
  labelZh: "3.5 mm 耳机插座",
  size: [12, 14, 6],
  joints: 5,
  afterWash: true,
  at: [46, 10],
};

/** A value as it is printed on a bag: `22 Ω`, `5 mΩ`, `10 kΩ`; and in an id: `22r`, `5m`, `10k`. */
function ohmTexts(ohm: number): readonly [text: string, id: string] {
  if (ohm < 1) return [`${Math.round(ohm * 1000)} mΩ`, `${Math.round(ohm * 1000)}m`];
  return ohm < 1000 ? [`${ohm} Ω`, `${ohm}r`] : [`${ohm / 1000} kΩ`, `${ohm / 1000}k`];
}

function resistor(ohm: number): Stuffed {
  const [value, id] = ohmTexts(ohm);
  return {
    letter: "R",
    part: `el.res-${id}`,
    label: `Resistor 0.25 W, ${value}`,
    labelZh: `电阻 0.25 W ${value}`,
    value,
    size: [8, 2.5, 2.5],
    joints: 2,
  };
}

/** A bent strip that stands free of the board, so that it cools. */
function shunt(ohm: number): Stuffed {
  const [value, id] = ohmTexts(ohm);
  return {
    letter: "R",
    part: `el.shunt-${id}`,
    label: `Shunt 3 W, ${value}`,
    labelZh: `分流器 3 W ${value}`,
    value,
    size: [8, 3, 8],
    joints: 2,
  };
}

const GATE_POWER = resistor(100);
const GATE_SMALL = resistor(1000);
const PULL_UP = resistor(10_000);
/** Above this a resistor is one; below it measures current. */
const LEAST_RESISTOR_OHM = 0.1;

/** What lights and sees where the machine has it: strings of two along a strip, five across the trough. */
const STRIP_PITCH_MM = 25;
const TROUGH_PITCH_MM = 27.5;

const POWER_BOARDS: ReadonlySet<string> = new Set([
  "bt.coil8",
  "bt.coil4",
  "bt.flipper",
  "bt.bumper",
  "bt.sling",
  "bt.magnet",
  "bt.motor",
  "bt.beacon",
]);
const CARTRIDGES: ReadonlySet<string> = new Set([
  "bt.mains",
  "bt.dist48",
  "bt.dist12",
  "bt.distmotor",
  "bt.distlogic",
]);

const five = (part: Stuffed, firstMm: number, yMm: number): readonly Stuffed[] =>
  [0, 1, 2, 3, 4].map((i) => ({ ...part, at: [firstMm + i * TROUGH_PITCH_MM, yMm] }));

/** The nth pair of LEDs of a strip, with the resistor of its string. */
const pairOf = (n: number, ohm: number): readonly Stuffed[] => [
  ...[2 * n, 2 * n + 1].map((i): Stuffed => ({ ...LED, at: [13.5 + i * STRIP_PITCH_MM - i * 0.3, 8] })),
  { ...resistor(ohm), at: [25.5 + 2 * n * STRIP_PITCH_MM - n * 0.6, 4] },
];

function ofResistor(type: BoardType, { ohm, control }: Element): readonly Stuffed[] {
  const value = ohm ?? 0;
  if (control === "board copper") return [];
  if (type.id === "bt.starpoint") return [LINK];
  // Both halves of a knob are one part.
  if (type.id === "bt.volume") return [];
  return [value < LEAST_RESISTOR_OHM ? shunt(value) : resistor(value)];
}

function electrolytic(type: BoardType): Stuffed {
  const { lying, ...part } = ELECTROLYTIC;
  return type.height_mm < part.size[2] ? { ...part, size: lying } : part;
}

/** The parts that an element of a board stands for. */
function ofElement(type: BoardType, element: Element): readonly Stuffed[] {
  switch (element.kind) {
    case "driver":
      return POWER_BOARDS.has(type.id) ? [POWER_FET, DIODE, GATE_POWER] : [SMALL_FET, GATE_SMALL];
    case "input":
      return [PULL_UP, CERAMIC];
    case "resistor":
      return ofResistor(type, element);
    case "diode":
      return [DIODE];
    case "led":
      return type.id === "bt.trough-tx" ? five(EMITTER, 46.5, 7) : [LED];
    case "fuse":
      return [CARTRIDGES.has(type.id) ? HOLDER : RESETTABLE];
    case "source":
      return [REGULATOR, electrolytic(type), CERAMIC];
    case "capacitor":
      return [(element.uf ?? 0) < 1 ? CERAMIC : electrolytic(type)];
    case "coil":
      return [RELAY];
    case "load":
      return [CERAMIC];
    default:
      return [];
  }
}

/** What a board carries that no element of it tells one by one. */
function ofType(type: BoardType, own: readonly Element[]): readonly Stuffed[] {
  switch (type.id) {
    case "bt.trough-rx":
      return five(RECEIVER, 20.5, 12.5);
    case "bt.volume":
      return [KNOB, JACK];
    case "bt.strip":
      return own.filter((e) => e.kind === "led").flatMap((e, n) => pairOf(n, e.ohm ?? 0));
    default:
      return [];
  }
}

/** Everything that is stuffed on a board besides its headers. */
export function componentsOf(type: BoardType, own: readonly Element[]): readonly Stuffed[] {
  const thinks = own.filter((e) => e.kind === "driver" || e.kind === "input").length >= 3;
  const told = type.id === "bt.strip" ? own.filter((e) => e.kind !== "led") : own;
  return [
    ...(thinks ? [CONTROLLER, TRANSCEIVER] : []),
    ...ofType(type, own),
    ...told.flatMap((element) => ofElement(type, element)),
  ];
}
