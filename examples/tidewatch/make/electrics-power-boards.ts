import {
  type BoardTypeWritten,
  boardTypeTopic,
  type ConnectorWritten,
  driver,
  fuse,
  link,
  load,
  type PinWritten,
  pin,
  resistor,
} from "./board-kit.ts";

/** Shunt in the return of each output: it measures the group's current and keeps the groups' returns apart. */
const SHUNT_OHM = 0.005;

const mainsOut = (name: string, label: string, x: number): ConnectorWritten => ({
  name,
  label,
  family: "m750",
  at: [x, 72],
  pins: [pin("L", "mains", 6), "key", pin("N", "mains", 6)],
});

const mains: BoardTypeWritten = {
  name: "mains",
  label: "Mains fuse board",
  labelZh: "市电保险板",
  purpose: "A fuse in the line of each supply unit. Under a cover; nothing else is on it.",
  purposeZh: "每台电源的火线上一个保险丝。装在盖板下，板上没有别的东西。",
  sizeMm: [170, 80, 32],
  standoffMm: 12,
  connectors: [
    {
      name: "j1",
      label: "mains from the filter",
      family: "m750",
      at: [11, 72],
      pins: [pin("L", "mains", 10), pin("N", "mains", 10), "key"],
    },
    mainsOut("j2", "48 V supply", 42),
    mainsOut("j3", "motor 12 V supply", 74),
    mainsOut("j4", "lamp 12 V supply", 106),
    mainsOut("j5", "logic 12 V supply", 138),
  ],
  elements: [
    fuse("j1.1", "j2.1", 6.3, "F1"),
    fuse("j1.1", "j3.1", 2, "F2"),
    fuse("j1.1", "j4.1", 3.15, "F3"),
    fuse("j1.1", "j5.1", 2, "F4"),
    ...["j2", "j3", "j4", "j5"].map((j) => link("j1.2", `${j}.3`)),
  ],
};

const interlock: BoardTypeWritten = {
  name: "interlock",
  label: "Coil interlock board",
  labelZh: "线圈联锁板",
  purpose: "Its relay passes 48 V only while the coin door is shut; tells the switch board so.",
  purposeZh: "只有投币门关好时，其继电器才接通 48 V，并告知开关板。",
  sizeMm: [96, 64, 34],
  connectors: [
    {
      name: "j1",
      label: "48 V from the supply",
      family: "m750",
      at: [11, 8],
      pins: [pin("+48 V in", "coil", 12), "key"],
    },
    {
      name: "j2",
      label: "48 V to the fuses",
      family: "m750",
      at: [70, 8],
      pins: ["key", pin("+48 V out", "coil", 12)],
    },
    {
      name: "j3",
      label: "door loop",
      family: "s250",
      at: [10, 58],
      pins: [pin("loop out", "logic", 0.3), "key", pin("loop back", "logic", 0.3)],
    },
    {
      name: "j4",
      label: "12 V",
      family: "p396",
      at: [30, 58],
      pins: [pin("+12 V", "logic", 0.5), "key", pin("0 V", "logic", 0.5), "-"],
    },
    {
      name: "j5",
      label: "status",
      family: "s250",
      at: [66, 58],
      pins: [pin("48 V present", "switch", 0.1), "key", pin("common", "switch", 0.1), "-"],
    },
  ],
  elements: [
    { kind: "contact", from: "j1.1", to: "j2.2", control: "interlock relay", normally: "open", amp: 16 },
    link("j4.1", "j3.1"),
    { kind: "coil", from: "j3.3", to: "j4.3", control: "interlock relay", ohm: 160, volt: 12 },
    {
      kind: "diode",
      from: "j4.3",
      to: "j3.3",
      volt: 0.9,
      control: "flyback",
      amp: 1,
      peak_a: 10,
      block_v: 200,
    },
    driver("j5.1", "j5.3", 0.1, "48 V present"),
  ],
};

/** Fused outputs in one connector: feed and return of each group side by side, a key between two groups. */
const outputPins = (
  volts: string,
  cls: "coil" | "lamp" | "motor" | "logic",
  first: number,
  count: number,
  keyAfter: number,
): PinWritten[] => {
  const pins: PinWritten[] = [];
  for (let i = 0; i < count; i += 1) {
    if (i === keyAfter) pins.push("key");
    pins.push(pin(`F${first + i} ${volts}`, cls, 7), pin(`F${first + i} return`, cls, 7));
  }
  return pins;
};

interface Distribution {
  readonly name: string;
  readonly label: string;
  readonly labelZh: string;
  readonly volts: string;
  readonly voltsZh: string;
  readonly class: "coil" | "lamp" | "motor" | "logic";
  /** Rating of each fuse in A, F1 first. */
  readonly fusesA: readonly number[];
  /** Key cavity comes before this group, for each connector of four groups. */
  readonly keyAfter: readonly number[];
  /** Cavity order of the feed: one key each, in another place, so that no feed plug fits another board. */
  readonly feed: readonly ("plus" | "zero" | "key" | "spare")[];
}

/** Place in the connector of group `n` (from 0) of a distribution board: connector and cavity of its feed. */
export function outputPoint(keyAfter: readonly number[], n: number): { connector: string; cavity: number } {
  const block = Math.floor(n / 4);
  const i = n % 4;
  return { connector: `j${2 + block}`, cavity: 1 + 2 * i + (i >= (keyAfter[block] ?? 0) ? 1 : 0) };
}

const distribution = (d: Distribution): BoardTypeWritten => {
  const blocks = Math.ceil(d.fusesA.length / 4);
  const feedPin = (which: "plus" | "zero"): string => `j1.${d.feed.indexOf(which) + 1}`;
  return {
    name: d.name,
    label: d.label,
    labelZh: d.labelZh,
    purpose: `A fuse and a shunt for each group on ${d.volts}.`,
    purposeZh: `${d.voltsZh}供电的每组各有一个保险丝和一个分流电阻。`,
    sizeMm: [48 + 52 * blocks, 80, 30],
    connectors: [
      {
        name: "j1",
        label: `${d.volts} from the supply`,
        family: "m750",
        at: [11, 8],
        pins: d.feed.map((f) =>
          f === "key"
            ? "key"
            : f === "spare"
              ? "-"
              : pin(f === "plus" ? `+${d.volts}` : `0 V of ${d.volts}`, d.class, 12),
        ),
      },
      ...Array.from({ length: blocks }, (_, b) => {
        const count = Math.min(4, d.fusesA.length - 4 * b);
        return {
          name: `j${2 + b}`,
          label: `groups F${4 * b + 1}–F${4 * b + count}`,
          family: "p396",
          at: [10 + 54 * b, 73] as const,
          pins: outputPins(d.volts, d.class, 4 * b + 1, count, d.keyAfter[b] ?? 0),
        };
      }),
    ],
    elements: d.fusesA.flatMap((amp, n) => {
      const { connector, cavity } = outputPoint(d.keyAfter, n);
      return [
        fuse(feedPin("plus"), `${connector}.${cavity}`, amp, `F${n + 1}`),
        resistor(`${connector}.${cavity + 1}`, feedPin("zero"), SHUNT_OHM, `shunt ${n + 1}`),
      ];
    }),
  };
};

export const DISTRIBUTIONS = {
  dist48: {
    name: "dist48",
    label: "Coil fuse board",
    labelZh: "线圈保险板",
    volts: "48 V",
    voltsZh: "48 V ",
    class: "coil",
    fusesA: [6.3, 6.3, 6.3, 4, 6.3, 4],
    keyAfter: [1, 1],
    feed: ["plus", "key", "zero", "spare"],
  },
  distmotor: {
    name: "distmotor",
    label: "Motor fuse board",
    labelZh: "电机保险板",
    volts: "12 V motor",
    voltsZh: "12 V 电机",
    class: "motor",
    fusesA: [2, 4, 1],
    keyAfter: [1],
    feed: ["zero", "plus", "key", "spare"],
  },
  dist12: {
    name: "dist12",
    label: "Lamp fuse board",
    labelZh: "灯保险板",
    volts: "12 V lamp",
    voltsZh: "12 V 灯",
    class: "lamp",
    fusesA: [4, 4, 4, 4, 1, 4, 4],
    keyAfter: [3, 0],
    feed: ["key", "plus", "zero", "spare"],
  },
  distlogic: {
    name: "distlogic",
    label: "Logic fuse board",
    labelZh: "逻辑保险板",
    volts: "12 V",
    voltsZh: "12 V 逻辑",
    class: "logic",
    fusesA: [5, 4, 1],
    keyAfter: [2],
    feed: ["plus", "zero", "spare", "key"],
  },
} as const satisfies Readonly<Record<string, Distribution>>;

const starpoint: BoardTypeWritten = {
  name: "starpoint",
  label: "Earth point board",
  labelZh: "直流接地点板",
  purpose:
    "The one declared point at which the DC returns meet earth; each tie can be lifted for the insulation test.",
  purposeZh: "直流回路与大地相接的唯一规定点；做绝缘测试时可断开每个连接。",
  sizeMm: [72, 40, 16],
  connectors: [
    {
      name: "j1",
      label: "DC returns and earth",
      family: "m750",
      at: [8, 11],
      pins: [
        pin("0 V of 48 V", "coil", 10),
        pin("0 V of motor 12 V", "motor", 10),
        "key",
        pin("0 V of lamp 12 V", "lamp", 10),
        pin("0 V of logic 12 V", "logic", 10),
        pin("earth", "earth", 12),
      ],
    },
  ],
  elements: [1, 2, 4, 5].map((n, i) => resistor(`j1.${n}`, "j1.6", 0.005, `tie ${i + 1}`)),
};

const bbpower: BoardTypeWritten = {
  name: "bbpower",
  label: "Backbox power board",
  labelZh: "背箱电源板",
  purpose: "Makes 5 V and fuses 12 V and 5 V for each backbox board.",
  purposeZh: "产生 5 V，并为背箱的每块板分别保险 12 V 和 5 V。",
  sizeMm: [150, 84, 26],
  connectors: [
    {
      name: "j1",
      label: "12 V from the cabinet",
      family: "p396",
      at: [9, 8],
      pins: [pin("+12 V", "logic", 7), "key", pin("0 V", "logic", 7), "-"],
    },
    ...[2, 3, 4, 5, 6, 7].map((n, i) => ({
      name: `j${n}`,
      label: "12 V and 5 V",
      family: "p396",
      at: [9 + 22 * i, 78] as const,
      pins: [pin("+12 V", "logic", 3), pin("0 V", "logic", 5), "key" as const, pin("+5 V", "logic", 3)],
    })),
    { name: "j8", label: "5 V test", family: "s250", at: [120, 8], pins: ["-", "key", "-"] },
  ],
  elements: [
    load("j1.1", "j1.3", 12, 2),
    { kind: "source", from: "j8.1", to: "j8.3", volt: 5, amp: 6 },
    resistor("j8.3", "j1.3", 0.001, "board copper"),
    ...[2, 3, 4, 5, 6, 7].flatMap((n) => [
      fuse("j1.1", `j${n}.1`, 2, `resettable ${n - 1}`),
      fuse("j8.1", `j${n}.4`, 2, `resettable ${n + 5}`),
      resistor(`j${n}.2`, "j1.3", SHUNT_OHM, `shunt ${n - 1}`),
    ]),
  ],
};

export const powerBoardTypes: readonly BoardTypeWritten[] = [
  mains,
  interlock,
  ...Object.values(DISTRIBUTIONS).map(distribution),
  starpoint,
  bbpower,
];

export const powerBoards = boardTypeTopic(powerBoardTypes);
