import {
  type BoardTypeWritten,
  boardTypeTopic,
  type ConnectorWritten,
  driver,
  fuse,
  input,
  linkAll,
  load,
  pin,
  resistor,
} from "./board-kit.ts";

/** 12 V and 5 V of a backbox board: any of the power board's plugs fits, and all of them carry the same. */
const headPower = (at: readonly [number, number]): ConnectorWritten => ({
  name: "j1",
  label: "12 V and 5 V",
  family: "p396",
  at,
  pins: [pin("+12 V", "logic", 3), pin("0 V", "logic", 5), "key", pin("+5 V", "logic", 3)],
});
const headLoad = (amp12: number, amp5: number) => [
  load("j1.1", "j1.2", 12, amp12),
  load("j1.4", "j1.2", 5, amp5),
];

const MASTER_LINK = ["TX+", "TX−", "RX+", "RX−", "key", "sync", "reset", "signal 0 V"] as const;
const AUDIO_LINK = ["clock", "key", "frame", "data", "mute", "signal 0 V"] as const;
const signals = (names: readonly string[]) =>
  names.map((n) => (n === "key" ? ("key" as const) : pin(n, "data", 0.1)));

/** Ten cores of a ribbon: five balanced signals. */
const RIBBON = ["clock", "row", "latch", "data 0", "data 1"].flatMap((n) => [`${n}+`, `${n}−`]);
const ribbon = (name: string, label: string, at: readonly [number, number]): ConnectorWritten => ({
  name,
  label,
  family: "d254",
  rows: 2,
  at,
  pins: signals(RIBBON),
});
const pairs = (name: string, make: (from: string, to: string, control: string) => ReturnType<typeof input>) =>
  [0, 1, 2, 3, 4].map((i) => make(`${name}.${2 * i + 1}`, `${name}.${2 * i + 2}`, `${name} pair ${i + 1}`));
const sends = (from: string, to: string, control: string) => driver(from, to, 0.05, control);

const main: BoardTypeWritten = {
  name: "main",
  label: "Main board",
  labelZh: "主板",
  purpose: "Runs the game program; speaks to the network master, the audio board and the display board.",
  purposeZh: "运行游戏程序；与网络主站、音频板和显示板通信。",
  sizeMm: [200, 150, 30],
  standoffMm: 12,
  connectors: [
    headPower([10, 8]),
    { name: "j2", label: "network master", family: "s250", at: [60, 8], pins: signals(MASTER_LINK) },
    { name: "j3", label: "audio", family: "s250", at: [110, 8], pins: signals(AUDIO_LINK) },
    ribbon("j4", "display", [150, 142]),
  ],
  elements: [
    ...headLoad(0.3, 1.5),
    sends("j2.1", "j2.2", "to master"),
    input("j2.3", "j2.4", "from master"),
    driver("j2.6", "j2.8", 0.05, "sync"),
    driver("j2.7", "j2.8", 0.05, "reset"),
    resistor("j2.8", "j1.2", 10, "signal 0 V"),
    ...[1, 3, 4, 5].map((n) => driver(`j3.${n}`, "j3.6", 0.05, `audio ${n}`)),
    resistor("j3.6", "j1.2", 10, "signal 0 V"),
    ...pairs("j4", sends),
  ],
};

/** A bus port with isolated 12 V, so that no current of the lamps or coils returns over the bus. */
const busPort = (name: string, label: string, at: readonly [number, number]): ConnectorWritten => ({
  name,
  label,
  family: "s250",
  at,
  pins: [
    pin("+12 V bus", "logic", 2.5),
    pin("0 V bus", "logic", 2.5),
    "key",
    pin("D+", "data", 0.1),
    pin("D−", "data", 0.1),
  ],
});
const netmaster: BoardTypeWritten = {
  name: "netmaster",
  label: "Network master",
  labelZh: "网络主控板",
  purpose: "Asks every node in turn, through the hub in the cabinet.",
  purposeZh: "经箱体内的集线板依次询问每个节点。",
  sizeMm: [120, 80, 20],
  standoffMm: 12,
  connectors: [
    headPower([10, 8]),
    { name: "j2", label: "main board", family: "s250", at: [50, 8], pins: signals(MASTER_LINK) },
    {
      name: "j3",
      label: "hub",
      family: "s250",
      at: [10, 72],
      pins: ["key", pin("D+", "data", 0.1), pin("D−", "data", 0.1)],
    },
  ],
  elements: [
    ...headLoad(0.3, 0.3),
    input("j2.1", "j2.2", "from main"),
    sends("j2.3", "j2.4", "to main"),
    input("j2.6", "j2.8", "sync"),
    input("j2.7", "j2.8", "reset"),
    sends("j3.2", "j3.3", "hub"),
  ],
};

const hub: BoardTypeWritten = {
  name: "hub",
  label: "Bus hub",
  labelZh: "总线集线板",
  purpose: "Repeats the bus on four ports; makes their isolated 12 V, with a resettable fuse for each.",
  purposeZh: "在四个端口上转发总线；为各端口提供隔离的 12 V，每路一个自恢复保险。",
  sizeMm: [160, 70, 22],
  connectors: [
    {
      name: "j1",
      label: "network master",
      family: "s250",
      at: [10, 8],
      pins: ["key", pin("D+", "data", 0.1), pin("D−", "data", 0.1)],
    },
    {
      name: "j2",
      label: "12 V",
      family: "p396",
      at: [70, 8],
      pins: [pin("+12 V", "logic", 6), "key", pin("0 V", "logic", 6), "-"],
    },
    busPort("j3", "cabinet", [8, 62]),
    busPort("j4", "playfield, lower", [46, 62]),
    busPort("j5", "playfield, upper", [84, 62]),
    busPort("j6", "backbox", [122, 62]),
    { name: "j7", label: "bus 12 V test", family: "s250", at: [40, 8], pins: ["-", "key", "-"] },
  ],
  elements: [
    load("j2.1", "j2.3", 12, 2.4),
    input("j1.2", "j1.3", "master"),
    { kind: "source", from: "j7.1", to: "j7.3", volt: 12, amp: 2.5 },
    ...["j3", "j4", "j5", "j6"].flatMap((port) => [
      fuse("j7.1", `${port}.1`, 1.5, "resettable port"),
      resistor(`${port}.2`, "j7.3", 0.02, "shunt"),
      driver(`${port}.4`, `${port}.5`, 0.1, `${port} bus`),
    ]),
  ],
};

const audio: BoardTypeWritten = {
  name: "audio",
  label: "Audio board",
  labelZh: "音频板",
  purpose: "Plays sound; three amplifiers, a headphone output and the volume knob's input.",
  purposeZh: "播放声音；三路功放、一路耳机输出和音量旋钮输入。",
  sizeMm: [150, 100, 34],
  standoffMm: 12,
  connectors: [
    headPower([10, 8]),
    { name: "j2", label: "main board", family: "s250", at: [60, 8], pins: signals(AUDIO_LINK) },
    {
      name: "j3",
      label: "backbox speakers",
      family: "p396",
      at: [10, 92],
      pins: [
        pin("left +", "audio", 3),
        pin("left −", "audio", 3),
        pin("right +", "audio", 3),
        pin("right −", "audio", 3),
        "key",
      ],
    },
    {
      name: "j4",
      label: "cabinet speaker",
      family: "p396",
      at: [50, 92],
      pins: [pin("bass +", "audio", 4), pin("bass −", "audio", 4)],
    },
    {
      name: "j5",
      label: "volume and headphones",
      family: "s250",
      at: [100, 92],
      pins: [
        pin("phones left", "audio", 0.2),
        pin("phones right", "audio", 0.2),
        pin("phones 0 V", "audio", 0.4),
        "key",
        pin("volume +", "audio", 0.02),
        pin("volume", "audio", 0.02),
        pin("screen", "audio", 0.1),
      ],
    },
  ],
  elements: [
    ...headLoad(0.8, 0.2),
    ...[1, 3, 4, 5].map((n) => input(`j2.${n}`, "j2.6", `audio ${n}`)),
    driver("j3.1", "j3.2", 3, "left amplifier"),
    driver("j3.3", "j3.4", 3, "right amplifier"),
    driver("j4.1", "j4.2", 4, "bass amplifier"),
    driver("j5.1", "j5.3", 0.1, "phones left"),
    driver("j5.2", "j5.3", 0.1, "phones right"),
    { kind: "source", from: "j5.5", to: "j5.3", volt: 3.3, amp: 0.01 },
    input("j5.6", "j5.3", "volume"),
    resistor("j5.7", "j5.3", 0.1, "screen"),
  ],
};

const volume: BoardTypeWritten = {
  name: "volume",
  label: "Volume and headphone board",
  labelZh: "音量与耳机板",
  purpose: "A knob and a headphone socket at the front of the cabinet.",
  purposeZh: "箱体前部的旋钮和耳机插座。",
  sizeMm: [64, 44, 26],
  connectors: [
    {
      name: "j1",
      label: "audio board",
      family: "s250",
      at: [10, 38],
      pins: [
        pin("phones left", "audio", 0.2),
        pin("phones right", "audio", 0.2),
        pin("phones 0 V", "audio", 0.4),
        "key",
        pin("volume +", "audio", 0.02),
        pin("volume", "audio", 0.02),
        pin("screen", "audio", 0.1),
      ],
    },
  ],
  elements: [
    { kind: "speaker", from: "j1.1", to: "j1.3", ohm: 32, control: "headphone left" },
    { kind: "speaker", from: "j1.2", to: "j1.3", ohm: 32, control: "headphone right" },
    resistor("j1.5", "j1.6", 5000, "volume knob"),
    resistor("j1.6", "j1.3", 5000, "volume knob"),
    { kind: "capacitor", from: "j1.7", to: "j1.3", uf: 0.1 },
  ],
};

const display: BoardTypeWritten = {
  name: "display",
  label: "Display board",
  labelZh: "显示控制板",
  purpose: "Splits the picture onto the two dot panels.",
  purposeZh: "把画面分到两块点阵屏。",
  sizeMm: [110, 76, 20],
  standoffMm: 12,
  connectors: [
    headPower([10, 8]),
    ribbon("j2", "main board", [60, 8]),
    ribbon("j3", "left panel", [14, 68]),
    ribbon("j4", "right panel", [70, 68]),
  ],
  elements: [...headLoad(0.1, 0.4), ...pairs("j2", input), ...pairs("j3", sends), ...pairs("j4", sends)],
};

const dot: BoardTypeWritten = {
  name: "dot",
  label: "Dot panel",
  labelZh: "点阵屏",
  purpose: "Half of the display: 64 × 32 dots on the board.",
  purposeZh: "显示屏的一半：板上 64 × 32 点。",
  sizeMm: [260, 132, 22],
  standoffMm: 15,
  connectors: [headPower([30, 10]), ribbon("j2", "display board", [120, 10])],
  elements: [...headLoad(0.2, 0.9), ...pairs("j2", input)],
};

const strip: BoardTypeWritten = {
  name: "strip",
  label: "Backlight strip, eight LEDs",
  labelZh: "背光灯条（8 LED）",
  purpose: "Lights the backglass: eight LEDs on the board in strings of two; passes its two wires on.",
  purposeZh: "照亮背玻璃：板上八只 LED，两只一串；两根线继续往下传。",
  sizeMm: [200, 16, 8],
  standoffMm: 10,
  connectors: [
    {
      name: "j1",
      label: "zone",
      family: "s200",
      at: [8, 8],
      pins: [pin("feed", "lamp", 1.5), pin("zone", "lamp", 0.5)],
    },
    {
      name: "j2",
      label: "zone",
      family: "s200",
      at: [190, 8],
      pins: [pin("feed", "lamp", 1.5), pin("zone", "lamp", 0.5)],
    },
  ],
  elements: [
    ...linkAll("j1", "j2", [1, 2]),
    ...[1, 2, 3, 4].map((n) => ({
      kind: "led" as const,
      from: "j1.1",
      to: "j1.2",
      volt: 6.3,
      amp: 0.03,
      ohm: 180,
      control: `LEDs ${2 * n - 1} and ${2 * n}`,
    })),
  ],
};

export const headBoardTypes: readonly BoardTypeWritten[] = [
  main,
  netmaster,
  hub,
  audio,
  volume,
  display,
  dot,
  strip,
];

export const headBoards = boardTypeTopic(headBoardTypes);
