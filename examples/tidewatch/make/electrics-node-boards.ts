import {
  type BoardTypeWritten,
  beside,
  boardTypeTopic,
  busConnectors,
  busElements,
  type ConnectorWritten,
  driver,
  fuse,
  input,
  keyed,
  linkAll,
  load,
  pin,
  pinRow,
  resistor,
} from "./board-kit.ts";

const range = (count: number): number[] => Array.from({ length: count }, (_, i) => i + 1);

/**
 * Where the key of each kind of output or input connector is. Halves of one board differ, and boards of one
 * length differ, so that a plug fits its own header only.
 */
export const KEY_AT = {
  "switch16.j3": 2,
  "switch16.j4": 9,
  "lamp16.j5": 4,
  "lamp16.j6": 7,
  "lamp4.j5": 5,
  "coil8.j5": 2,
  "coil8.j6": 5,
  "coil4.j5": 3,
} as const;

/** Coil supply of a driver board, passed on to the next board of the same fuse group. */
export const coilPower = (x1: number, x2: number, y: number): ConnectorWritten[] =>
  [
    { name: "j3", at: [x1, y] as const },
    { name: "j4", at: [x2, y] as const },
  ].map(({ name, at }) => ({
    name,
    label: "48 V",
    family: "p396",
    at,
    pins: [pin("+48 V", "coil", 7), "key", pin("0 V 48", "coil", 7)],
  }));
export const coilPowerElements = () => [...linkAll("j3", "j4", [1, 3]), load("j3.1", "j3.3", 48, 0.01)];

/** Inputs with one common, which has a resistor so that a short to a supply harms nothing. */
export const inputs = (
  name: string,
  first: number,
  count: number,
  keyAt: number,
  at: readonly [number, number],
): ConnectorWritten => ({
  name,
  label: count === 1 ? `input ${first}` : `inputs ${first}–${first + count - 1}`,
  family: "s250",
  at,
  pins: keyed([pin("common", "switch", 0.2), ...pinRow("input", count, "switch", 0.02, first)], keyAt),
});
export const inputElements = (name: string, first: number, count: number, keyAt: number, zero: string) => [
  resistor(`${name}.${beside(keyAt, 1)}`, zero, 22, "common"),
  ...range(count).map((n) =>
    input(`${name}.${beside(keyAt, n + 1)}`, `${name}.${beside(keyAt, 1)}`, `input ${first + n - 1}`),
  ),
];

const switch16: BoardTypeWritten = {
  name: "switch16",
  label: "Switch board, 16 inputs",
  labelZh: "16 路开关板",
  purpose: "Reads 16 contacts to a common and reports every change on the bus.",
  purposeZh: "读取 16 个对公共端的触点，每次变化都经总线报告。",
  sizeMm: [84, 44, 14],
  standoffMm: 36,
  connectors: [
    ...busConnectors(84),
    inputs("j3", 1, 8, KEY_AT["switch16.j3"], [8, 38]),
    inputs("j4", 9, 8, KEY_AT["switch16.j4"], [50, 38]),
  ],
  elements: [
    ...busElements(),
    ...inputElements("j3", 1, 8, KEY_AT["switch16.j3"], "j1.2"),
    ...inputElements("j4", 9, 8, KEY_AT["switch16.j4"], "j1.2"),
  ],
};

/** Lamp supply: the key comes first, so that no 48 V or motor plug of the same size fits. */
const lampPower = (name: string, at: readonly [number, number]): ConnectorWritten => ({
  name,
  label: "lamp 12 V",
  family: "p396",
  at,
  pins: ["key", pin("+12 V lamp", "lamp", 7), pin("0 V lamp", "lamp", 7)],
});

const lampHalf = (name: "j5" | "j6", first: number, at: readonly [number, number]) => {
  const keyAt = KEY_AT[`lamp16.${name}`];
  return {
    connector: {
      name,
      label: `lamps ${first}–${first + 7}`,
      family: "s250",
      at,
      pins: keyed([pin("lamp feed", "lamp", 1.5), ...pinRow("lamp", 8, "lamp", 0.5, first)], keyAt),
    },
    elements: [
      fuse("j3.2", `${name}.${beside(keyAt, 1)}`, 1.5, `resettable ${name}`),
      ...range(8).map((n) => driver(`${name}.${beside(keyAt, n + 1)}`, "j3.3", 0.5, `lamp ${first + n - 1}`)),
    ],
  };
};
const lampHalves = [lampHalf("j5", 1, [10, 44]), lampHalf("j6", 9, [64, 44])];

const lamp16: BoardTypeWritten = {
  name: "lamp16",
  label: "Lamp board, 16 outputs",
  labelZh: "16 路灯板",
  purpose: "Dims 16 lamps to 0 V; each half has its own resettable fuse. Isolated from the bus.",
  purposeZh: "对 16 只灯向 0 V 侧调光；每半边各有一个自恢复保险。与总线隔离。",
  sizeMm: [100, 50, 14],
  standoffMm: 36,
  connectors: [
    ...busConnectors(100),
    lampPower("j3", [32, 4]),
    lampPower("j4", [56, 4]),
    ...lampHalves.map((half) => half.connector),
  ],
  elements: [
    ...busElements(),
    ...linkAll("j3", "j4", [2, 3]),
    ...lampHalves.flatMap((half) => half.elements),
  ],
};

const lamp4: BoardTypeWritten = {
  name: "lamp4",
  label: "Lamp board, 4 outputs",
  labelZh: "4 路灯板",
  purpose: "Dims the four lamps of the cabinet to 0 V. Isolated from the bus.",
  purposeZh: "对箱体的四只灯向 0 V 侧调光。与总线隔离。",
  sizeMm: [80, 40, 14],
  connectors: [
    ...busConnectors(80),
    lampPower("j3", [32, 4]),
    {
      name: "j5",
      label: "lamps 1–4",
      family: "s250",
      at: [30, 34],
      pins: keyed([pin("lamp feed", "lamp", 1), ...pinRow("lamp", 4, "lamp", 0.5)], KEY_AT["lamp4.j5"]),
    },
  ],
  elements: [
    ...busElements(),
    fuse("j3.2", `j5.${beside(KEY_AT["lamp4.j5"], 1)}`, 1, "resettable j5"),
    ...range(4).map((n) => driver(`j5.${beside(KEY_AT["lamp4.j5"], n + 1)}`, "j3.3", 0.5, `lamp ${n}`)),
  ],
};

/** Most current that a coil output switches, in A. */
const COIL_PEAK_A = 12;

const coilHalf = (
  name: string,
  first: number,
  keyAt: number,
  fuseName: string,
  at: readonly [number, number],
) => ({
  connector: {
    name,
    label: `coils ${first}–${first + 3}`,
    family: "p396",
    at,
    pins: keyed([pin("coil feed", "coil", 7), ...pinRow("coil", 4, "coil", 7, first)], keyAt),
  },
  elements: [
    fuse("j3.1", `${name}.${beside(keyAt, 1)}`, 4, fuseName),
    ...range(4).map((n) =>
      driver(`${name}.${beside(keyAt, n + 1)}`, "j3.3", COIL_PEAK_A, `coil ${first + n - 1}`),
    ),
  ],
});
const coil8Halves = [
  coilHalf("j5", 1, KEY_AT["coil8.j5"], "F1", [12, 60]),
  coilHalf("j6", 5, KEY_AT["coil8.j6"], "F2", [68, 60]),
];

const coil8: BoardTypeWritten = {
  name: "coil8",
  label: "Coil driver board, 8 outputs",
  labelZh: "8 路线圈驱动板",
  purpose:
    "Pulls 8 coils to 0 V with a time-out of its own; each half has its own fuse. Isolated from the bus.",
  purposeZh: "把 8 个线圈接到 0 V，自带超时保护；每半边各有保险丝。与总线隔离。",
  sizeMm: [110, 66, 24],
  standoffMm: 36,
  connectors: [...busConnectors(110), ...coilPower(34, 60, 4), ...coil8Halves.map((half) => half.connector)],
  elements: [...busElements(), ...coilPowerElements(), ...coil8Halves.flatMap((half) => half.elements)],
};

const coil4Half = coilHalf("j5", 1, KEY_AT["coil4.j5"], "F1", [28, 50]);

const coil4: BoardTypeWritten = {
  name: "coil4",
  label: "Coil driver board, 4 outputs",
  labelZh: "4 路线圈驱动板",
  purpose: "Pulls 4 coils to 0 V with a time-out of its own. Isolated from the bus.",
  purposeZh: "把 4 个线圈接到 0 V，自带超时保护。与总线隔离。",
  sizeMm: [88, 56, 24],
  standoffMm: 36,
  connectors: [...busConnectors(88), ...coilPower(26, 48, 4), coil4Half.connector],
  elements: [...busElements(), ...coilPowerElements(), ...coil4Half.elements],
};

export const nodeBoardTypes: readonly BoardTypeWritten[] = [switch16, lamp16, lamp4, coil8, coil4];

export const nodeBoards = boardTypeTopic(nodeBoardTypes);
