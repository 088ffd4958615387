import {
  type BoardTypeWritten,
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
  resistor,
} from "./board-kit.ts";
import { coilPower, coilPowerElements, inputElements, inputs } from "./electrics-node-boards.ts";

const flipper: BoardTypeWritten = {
  name: "flipper",
  label: "Flipper driver board",
  labelZh: "拨板驱动板",
  purpose: "Drives the power and hold windings of one flipper and reads its end-of-stroke switch.",
  purposeZh: "驱动一个拨板的动力绕组和保持绕组，并读取其行程末端开关。",
  sizeMm: [80, 50, 22],
  standoffMm: 36,
  connectors: [
    ...busConnectors(80),
    ...coilPower(24, 44, 4),
    {
      name: "j5",
      label: "flipper coil",
      family: "p396",
      at: [10, 44],
      pins: [pin("feed", "coil", 7), "key", pin("power", "coil", 7), "-", pin("hold", "coil", 2)],
    },
    inputs("j6", 1, 1, 3, [56, 44]),
  ],
  elements: [
    ...busElements(),
    ...coilPowerElements(),
    fuse("j3.1", "j5.1", 5, "F1"),
    driver("j5.3", "j3.3", 18, "power winding"),
    driver("j5.5", "j3.3", 2, "hold winding"),
    ...inputElements("j6", 1, 1, 3, "j1.2"),
  ],
};

/** A board that fires one coil at once when its switch closes, and reports it. */
const quick = (
  name: string,
  label: string,
  labelZh: string,
  switches: number,
  keyAt: number,
): BoardTypeWritten => ({
  name,
  label,
  labelZh,
  purpose: "Fires its coil at once when its switch closes, with a time-out of its own.",
  purposeZh: "开关一闭合立即驱动线圈，自带超时保护。",
  sizeMm: [78, 44, 22],
  standoffMm: 36,
  // The last one keeps off the trunks beside the coil's connector.
  holes: [
    [4, 4],
    [74, 4],
    [74, 40],
    [14, 24],
  ],
  connectors: [
    ...busConnectors(78),
    ...coilPower(23, 43, 4),
    {
      name: "j5",
      label: "coil",
      family: "p396",
      at: [10, 38],
      pins: [pin("feed", "coil", 7), "-", pin("coil", "coil", 7), "key"],
    },
    inputs("j6", 1, switches, keyAt, [54, 38]),
  ],
  elements: [
    ...busElements(),
    ...coilPowerElements(),
    fuse("j3.1", "j5.1", 3.15, "F1"),
    driver("j5.3", "j3.3", 12, "coil"),
    ...inputElements("j6", 1, switches, keyAt, "j1.2"),
  ],
});

const bumper = quick("bumper", "Pop bumper board", "弹跳柱驱动板", 1, 3);
const sling = quick("sling", "Slingshot board", "弹弓驱动板", 2, 2);

const magnet: BoardTypeWritten = {
  name: "magnet",
  label: "Magnet driver board",
  labelZh: "电磁铁驱动板",
  purpose: "Drives the playfield magnet with a regulated current and watches its temperature by resistance.",
  purposeZh: "以稳流驱动台面磁铁，并通过电阻监视其温度。",
  sizeMm: [88, 56, 30],
  standoffMm: 36,
  connectors: [
    ...busConnectors(88),
    ...coilPower(26, 48, 4),
    {
      name: "j5",
      label: "magnet",
      family: "m750",
      at: [30, 48],
      pins: ["key", pin("feed", "coil", 10), pin("magnet", "coil", 10)],
    },
  ],
  elements: [
    ...busElements(),
    ...coilPowerElements(),
    fuse("j3.1", "j5.2", 5, "F1"),
    driver("j5.3", "j3.3", 10, "magnet"),
  ],
};

/** Motor supply: zero comes first, so that no lamp or 48 V plug of the same size fits. */
const motorPower = (name: string, at: readonly [number, number]): ConnectorWritten => ({
  name,
  label: "motor 12 V",
  family: "p396",
  at,
  pins: [pin("0 V motor", "motor", 7), pin("+12 V motor", "motor", 7), "key"],
});

const motorOut = (at: readonly [number, number]): ConnectorWritten => ({
  name: "j5",
  label: "motor",
  family: "p396",
  at,
  pins: ["key", pin("motor A", "motor", 3), "-", pin("motor B", "motor", 3)],
});

/** Four switches about the motor: two to the supply, two to the return. */
const bridge = () => [
  driver("j3.2", "j5.2", 3, "forward, high"),
  driver("j5.4", "j3.1", 3, "forward, low"),
  driver("j3.2", "j5.4", 3, "backward, high"),
  driver("j5.2", "j3.1", 3, "backward, low"),
];

const motor: BoardTypeWritten = {
  name: "motor",
  label: "Motor board",
  labelZh: "电机驱动板",
  purpose: "Runs one motor both ways and reads its two limit or home switches.",
  purposeZh: "驱动一台电机正反转，并读取两个限位或原位开关。",
  sizeMm: [80, 48, 20],
  // Three: a trunk passes where a fourth would stand.
  holes: [
    [76, 4],
    [76, 44],
    [14, 24],
  ],
  standoffMm: 36,
  connectors: [
    ...busConnectors(80),
    motorPower("j3", [24, 4]),
    motorPower("j4", [44, 4]),
    motorOut([10, 42]),
    inputs("j6", 1, 2, 2, [54, 42]),
  ],
  elements: [
    ...busElements(),
    ...linkAll("j3", "j4", [1, 2]),
    load("j3.2", "j3.1", 12, 0.02),
    ...bridge(),
    ...inputElements("j6", 1, 2, 2, "j1.2"),
  ],
};

const beacon: BoardTypeWritten = {
  name: "beacon",
  label: "Beacon board",
  labelZh: "灯塔驱动板",
  purpose: "Turns the beacon, finds its home position and dims its two beam lamps.",
  purposeZh: "转动灯塔灯，找到原位，并对两只光束灯调光。",
  sizeMm: [88, 52, 20],
  standoffMm: 36,
  connectors: [
    ...busConnectors(88),
    motorPower("j3", [26, 4]),
    motorPower("j4", [48, 4]),
    motorOut([9, 46]),
    inputs("j6", 1, 1, 3, [34, 46]),
    {
      name: "j7",
      label: "beam lamps",
      family: "s250",
      at: [58, 46],
      pins: [pin("lamp feed", "lamp", 1.5), pin("lamp A", "lamp", 0.5), "key", pin("lamp B", "lamp", 0.5)],
    },
  ],
  elements: [
    ...busElements(),
    ...linkAll("j3", "j4", [1, 2]),
    load("j3.2", "j3.1", 12, 0.02),
    ...bridge(),
    fuse("j3.2", "j7.1", 1, "resettable"),
    driver("j7.2", "j3.1", 0.5, "lamp A"),
    driver("j7.4", "j3.1", 0.5, "lamp B"),
    ...inputElements("j6", 1, 1, 3, "j1.2"),
  ],
};

const hall: BoardTypeWritten = {
  name: "hall",
  label: "Magnetic sensor board",
  labelZh: "磁传感器板",
  purpose: "Feeds two magnetic ball sensors with 5 V and reads them.",
  purposeZh: "给两个磁性球传感器供 5 V 并读取。",
  sizeMm: [64, 40, 12],
  standoffMm: 36,
  connectors: [
    ...busConnectors(64),
    ...[1, 2].map((n) => ({
      name: `j${n + 2}`,
      label: `sensor ${n}`,
      family: "s250",
      at: [8 + 28 * (n - 1), 34] as const,
      pins: keyed(
        [pin("+5 V", "sensor", 0.1), pin("out", "sensor", 0.02), pin("0 V", "sensor", 0.1)],
        n === 1 ? 1 : 4,
      ),
    })),
  ],
  elements: [
    ...busElements(),
    ...[
      { name: "j3", from: 2 },
      { name: "j4", from: 1 },
    ].flatMap(({ name, from }) => [
      { kind: "source" as const, from: `${name}.${from}`, to: `${name}.${from + 2}`, volt: 5, amp: 0.1 },
      resistor(`${name}.${from + 2}`, "j1.2", 1, "sensor 0 V"),
      input(`${name}.${from + 1}`, `${name}.${from + 2}`, `${name} out`),
    ]),
  ],
};

const opto: BoardTypeWritten = {
  name: "opto",
  label: "Beam board",
  labelZh: "光束板",
  purpose: "Pulses an infrared emitter and reads its receiver.",
  purposeZh: "脉冲驱动红外发射管，并读取接收管。",
  sizeMm: [60, 40, 12],
  standoffMm: 36,
  connectors: [
    ...busConnectors(60),
    {
      name: "j3",
      label: "beam",
      family: "s250",
      at: [26, 34],
      pins: keyed(
        [
          pin("emitter +", "sensor", 0.05),
          pin("emitter −", "sensor", 0.05),
          pin("receiver C", "sensor", 0.02),
          pin("receiver E", "sensor", 0.02),
        ],
        2,
      ),
    },
  ],
  elements: [
    ...busElements(),
    resistor("j1.1", "j3.1", 470, "emitter"),
    driver("j3.3", "j1.2", 0.05, "emitter"),
    input("j3.4", "j3.5", "receiver"),
    resistor("j3.5", "j1.2", 100, "receiver"),
  ],
};

const troughPins = (): ConnectorWritten["pins"] => [
  pin("emitters +", "sensor", 0.2),
  pin("emitters −", "sensor", 0.2),
];

const troughRx: BoardTypeWritten = {
  name: "trough-rx",
  label: "Trough receiver board",
  labelZh: "球槽接收板",
  purpose: "Five receivers on the board see the four balls and a ball that sticks on the eject.",
  purposeZh: "板上五只接收管检测四个球，以及卡在出球处的球。",
  sizeMm: [170, 16, 12],
  connectors: [
    ...busConnectors(170),
    { name: "j3", label: "emitter board", family: "s250", at: [80, 8], pins: troughPins() },
  ],
  elements: [
    ...busElements(),
    resistor("j1.1", "j3.1", 150, "emitters"),
    driver("j3.2", "j1.2", 0.1, "emitters"),
  ],
};

const troughTx: BoardTypeWritten = {
  name: "trough-tx",
  label: "Trough emitter board",
  labelZh: "球槽发射板",
  purpose: "Five emitters in series on the board, opposite the receivers.",
  purposeZh: "板上五只串联的发射管，正对接收管。",
  sizeMm: [170, 14, 12],
  connectors: [{ name: "j1", label: "receiver board", family: "s250", at: [80, 7], pins: troughPins() }],
  elements: [{ kind: "led", from: "j1.1", to: "j1.2", volt: 6.5, amp: 0.03, ohm: 0 }],
};

export const mechanismBoardTypes: readonly BoardTypeWritten[] = [
  flipper,
  bumper,
  sling,
  magnet,
  motor,
  beacon,
  hall,
  opto,
  troughRx,
  troughTx,
];

export const mechanismBoards = boardTypeTopic(mechanismBoardTypes);
