import { DISTRIBUTIONS, outputPoint } from "./electrics-power-boards.ts";
import type { Wiring } from "./wiring-kit.ts";

interface FuseGroup {
  readonly dist: keyof typeof DISTRIBUTIONS;
  /** Fuse of the group, from 1. */
  readonly fuse: number;
  readonly label: string;
  readonly labelZh: string;
  readonly amps: number;
  readonly wireType: string;
  /** In-line connectors on the way from the fuse board, each with the harness beyond it. */
  readonly via: readonly (readonly [inline: string, harness: string])[];
  /** Boards in the order of the supply, with connector and cavities for the feed and the return. */
  readonly boards: readonly string[];
  readonly enters: string;
  readonly leaves: string | null;
  readonly feedPin: number;
  readonly returnPin: number;
}

const PREFIX = {
  dist48: { net: "coil", cls: "coil", supply: "sup.48", volts: 48, label: "48 V" },
  dist12: { net: "lamp", cls: "lamp", supply: "sup.lamp", volts: 12, label: "lamp 12 V" },
  distmotor: { net: "motor", cls: "motor", supply: "sup.motor", volts: 12, label: "motor 12 V" },
  distlogic: { net: "logic", cls: "logic", supply: "sup.logic", volts: 12, label: "logic 12 V" },
} as const;

const driverPins = { enters: "j3", leaves: "j4", feedPin: 1, returnPin: 3 } as const;
const lampPins = { enters: "j3", leaves: "j4", feedPin: 2, returnPin: 3 } as const;
const motorPins = { enters: "j3", leaves: "j4", feedPin: 2, returnPin: 1 } as const;

const coil = { dist: "dist48", wireType: "hu-18", ...driverPins } as const;
const lamp = { dist: "dist12", wireType: "hu-18", ...lampPins } as const;
const motor = { dist: "distmotor", wireType: "hu-20", ...motorPins } as const;

/** Fuse groups: which boards hang on which fuse. `amps` is the steady current of hard play. */
const FUSE_GROUPS: readonly FuseGroup[] = [
  {
    ...coil,
    fuse: 1,
    label: "lower flippers",
    labelZh: "下拨板",
    amps: 2.2,
    via: [["il.pf-coil-lower", "hs.coil-lower"]],
    boards: ["bd.flip-left", "bd.flip-right"],
  },
  {
    ...coil,
    fuse: 2,
    label: "slingshots and front coils",
    labelZh: "弹弓与前部线圈",
    amps: 1.8,
    via: [["il.pf-coil-lower", "hs.coil-lower"]],
    boards: ["bd.sling-right", "bd.coil-front", "bd.sling-left"],
  },
  {
    ...coil,
    fuse: 3,
    label: "upper flipper and magnet",
    labelZh: "上拨板与电磁铁",
    amps: 2.6,
    via: [["il.pf-coil-upper", "hs.coil-upper"]],
    boards: ["bd.flip-upper", "bd.magnet"],
  },
  {
    ...coil,
    fuse: 4,
    label: "pop bumpers",
    labelZh: "弹跳柱",
    amps: 1.6,
    via: [["il.pf-coil-upper", "hs.coil-upper"]],
    boards: ["bd.bumper-right", "bd.bumper-low", "bd.bumper-left"],
  },
  {
    ...coil,
    fuse: 5,
    label: "middle and rear coils",
    labelZh: "中后部线圈",
    amps: 2,
    via: [["il.pf-coil-upper", "hs.coil-upper"]],
    boards: ["bd.coil-rear", "bd.coil-mid"],
  },
  {
    ...coil,
    fuse: 6,
    label: "cabinet coils",
    labelZh: "机柜线圈",
    amps: 0.6,
    via: [],
    boards: ["bd.coil-cab"],
  },
  {
    ...lamp,
    fuse: 1,
    label: "front lamps",
    labelZh: "前灯",
    amps: 2,
    via: [["il.pf-lamp-front", "hs.lamp-front"]],
    boards: ["bd.lamp-2", "bd.lamp-1"],
  },
  {
    ...lamp,
    fuse: 2,
    label: "compass lamps",
    labelZh: "罗盘灯",
    amps: 0.6,
    via: [["il.pf-lamp-centre", "hs.lamp-centre"]],
    boards: ["bd.lamp-3"],
  },
  {
    ...lamp,
    fuse: 3,
    label: "middle lamps",
    labelZh: "中部灯",
    amps: 2.2,
    via: [["il.pf-lamp-mid", "hs.lamp-mid"]],
    boards: ["bd.lamp-6", "bd.lamp-5"],
  },
  {
    ...lamp,
    fuse: 4,
    label: "rear lamps",
    labelZh: "后灯",
    amps: 2.4,
    via: [["il.pf-lamp-rear", "hs.lamp-rear"]],
    boards: ["bd.lamp-7"],
  },
  {
    ...lamp,
    fuse: 5,
    label: "cabinet lamps",
    labelZh: "机柜灯",
    amps: 0.2,
    via: [],
    boards: ["bd.lamp-cab"],
    leaves: null,
  },
  {
    ...lamp,
    fuse: 6,
    label: "backglass lamps",
    labelZh: "背玻璃灯",
    amps: 2,
    via: [["il.bb-lamp", "hs.backbox-lamps"]],
    boards: ["bd.lamp-bb-1", "bd.lamp-bb-2"],
  },
  {
    ...lamp,
    fuse: 7,
    label: "letter lamps",
    labelZh: "字母灯",
    amps: 0.6,
    via: [["il.pf-lamp-word", "hs.lamp-word"]],
    boards: ["bd.lamp-4"],
  },
  {
    ...motor,
    fuse: 1,
    label: "playfield motors",
    labelZh: "台面电机",
    amps: 1.5,
    via: [["il.pf-motor", "hs.motor-playfield"]],
    boards: ["bd.motor-ship", "bd.beacon"],
  },
  { ...motor, fuse: 2, label: "shaker", labelZh: "振动电机", amps: 1.9, via: [], boards: ["bd.motor-cab"] },
  {
    ...motor,
    fuse: 3,
    label: "tide clock",
    labelZh: "潮汐钟",
    amps: 0.4,
    via: [["il.bb-motor", "hs.backbox-motor"]],
    boards: ["bd.motor-bb"],
  },
  {
    dist: "distlogic",
    fuse: 1,
    label: "backbox",
    labelZh: "背箱",
    amps: 4.5,
    wireType: "hu-18",
    via: [["il.bb-logic", "hs.backbox-power"]],
    boards: ["bd.bbpower"],
    enters: "j1",
    leaves: null,
    feedPin: 1,
    returnPin: 3,
  },
  {
    dist: "distlogic",
    fuse: 2,
    label: "bus hub",
    labelZh: "总线集线板",
    amps: 2.4,
    wireType: "hu-20",
    via: [],
    boards: ["bd.hub"],
    enters: "j2",
    leaves: null,
    feedPin: 1,
    returnPin: 3,
  },
  {
    dist: "distlogic",
    fuse: 3,
    label: "interlock",
    labelZh: "联锁",
    amps: 0.1,
    wireType: "hu-22",
    via: [],
    boards: ["bd.interlock"],
    enters: "j4",
    leaves: null,
    feedPin: 1,
    returnPin: 3,
  },
];

/** Name of a group's feed (`f`) or return (`r`) net. */
const groupNet = (dist: keyof typeof DISTRIBUTIONS, fuse: number, which: "f" | "r"): string =>
  `${PREFIX[dist].net}.${fuse}${which}`;

/** A coil that is pulsed for 40 ms by two flippers at once still has 87 % of 48 V with this for feed and return each. */
const PULSE_DROP_PCT = 7;

const TRUNK = "hs.trunk-power";

function wireGroup(w: Wiring, g: FuseGroup): void {
  const { cls, supply, volts, label } = PREFIX[g.dist];
  const { connector, cavity } = outputPoint(DISTRIBUTIONS[g.dist].keyAfter, g.fuse - 1);
  for (const which of ["f", "r"] as const) {
    const feed = which === "f";
    const source = `bd.${g.dist}:${connector}.${cavity + (feed ? 0 : 1)}`;
    const boardPin = feed ? g.feedPin : g.returnPin;
    const net = w.net(
      groupNet(g.dist, g.fuse, which),
      cls,
      `${label} F${g.fuse} ${feed ? "feed" : "return"}, ${g.label}`,
      `${label} F${g.fuse} ${feed ? "供电" : "回线"}，${g.labelZh}`,
      {
        supply,
        volts: feed ? volts : 0,
        amps: g.amps,
        shape: "chain",
        source,
        max_drop_pct: g.dist === "dist48" ? PULSE_DROP_PCT : 5,
        wire_type: g.wireType,
      },
    );
    w.end(net, TRUNK, source);
    let harness = TRUNK;
    let start = source;
    for (const [inline, beyond] of g.via) {
      start = w.through(inline, net, harness, beyond)[1];
      harness = beyond;
    }
    const points: string[] = [];
    for (const board of g.boards) {
      points.push(`${board}:${g.enters}.${boardPin}`);
      if (g.leaves === null) continue;
      const out = `${board}:${g.leaves}.${boardPin}`;
      if (board === g.boards.at(-1)) w.spare(out, "last board of its fuse group");
      else points.push(out);
    }
    w.end(net, harness, ...points);
    if (g.boards.length > 1)
      w.order(net, harness, [start, ...points], "Feed and return run together from board to board.");
  }
}

const MAINS = "hs.mains";
const DC = "hs.dc";

function wireMains(w: Wiring): void {
  // Blue is the neutral and only the neutral; the wires before and behind the switch differ by their stripe or base.
  const mains = (
    id: string,
    label: string,
    labelZh: string,
    points: readonly string[],
    colour: "BN" | "BK" | "BU" | "BUWH",
    wire = "hv-18",
  ) => {
    const net = w.net(id, "mains", label, labelZh, {
      supply: "sup.mains",
      volts: colour.startsWith("BU") ? 0 : 230,
      colour,
      amps: 5,
      shape: "chain",
      wire_type: wire,
    });
    w.end(net, MAINS, ...points);
    return net;
  };
  mains(
    "mains.inlet-l",
    "line, inlet to switch",
    "火线 插座至开关",
    ["ml.inlet:l", "ml.switch:l-in"],
    "BN",
    "cord-1",
  );
  mains(
    "mains.inlet-n",
    "neutral, inlet to switch",
    "零线 插座至开关",
    ["ml.inlet:n", "ml.switch:n-in"],
    "BU",
    "cord-1",
  );
  mains(
    "mains.switch-l",
    "line, switch to filter",
    "火线 开关至滤波器",
    ["ml.switch:l-out", "ml.filter:l-in"],
    "BK",
  );
  mains(
    "mains.switch-n",
    "neutral, switch to filter",
    "零线 开关至滤波器",
    ["ml.switch:n-out", "ml.filter:n-in"],
    "BUWH",
  );
  mains("mains.l", "line, filter to fuses", "火线 滤波器至保险", ["ml.filter:l-out", "bd.mains:j1.1"], "BN");
  const units = [
    ["j2", "psu.48", "coil supply", "线圈电源"],
    ["j3", "psu.motor", "motor supply", "电机电源"],
    ["j4", "psu.lamp", "lamp supply", "灯电源"],
    ["j5", "psu.logic", "logic supply", "逻辑电源"],
  ] as const;
  const neutral = mains(
    "mains.n",
    "neutral, filter to supplies",
    "零线 滤波器至电源",
    ["ml.filter:n-out", "bd.mains:j1.2", ...units.flatMap(([j, psu]) => [`bd.mains:${j}.3`, `${psu}:n`])],
    "BU",
  );
  w.order(
    neutral,
    MAINS,
    [
      "ml.filter:n-out",
      "bd.mains:j1.2",
      ...units.flatMap(([j, psu]) => ["/", `bd.mains:${j}.3`, `${psu}:n`]),
    ],
    "Each supply has line and neutral from one housing.",
  );
  for (const [j, psu, label, labelZh] of units)
    mains(
      `mains.${psu.slice(4)}-l`,
      `line, ${label}`,
      `火线 ${labelZh}`,
      [`bd.mains:${j}.1`, `${psu}:l`],
      "BN",
    );
}

/** From the supply units to the fuse boards; the coil supply goes through the interlock. */
function wireSupplies(w: Wiring): void {
  const main = (
    name: keyof typeof PREFIX,
    psu: string,
    amps: number,
    feedPin: number,
    returnPin: number,
    tie: number,
  ): void => {
    const { net, cls, supply, volts, label } = PREFIX[name];
    const columns = {
      supply,
      amps,
      shape: "chain",
      wire_type: "hu-16",
      max_drop_pct: name === "dist48" ? 4 : 3,
    } as const;
    const feed = w.net(`${net}.main`, cls, `${label} from the supply`, `${label} 电源输出`, {
      ...columns,
      volts,
      source: `${psu}:vp`,
    });
    const back = w.net(`${net}.zero`, cls, `0 V of ${label}`, `${label} 零线`, {
      ...columns,
      volts: 0,
      source: `${psu}:vn`,
    });
    w.end(feed, DC, `${psu}:vp`, name === "dist48" ? "bd.interlock:j1.1" : `bd.${name}:j1.${feedPin}`);
    w.end(back, DC, `${psu}:vn`, `bd.${name}:j1.${returnPin}`, `bd.starpoint:j1.${tie}`);
  };
  main("dist48", "psu.48", 10, 1, 3, 1);
  main("distmotor", "psu.motor", 4, 2, 1, 2);
  main("dist12", "psu.lamp", 9, 2, 3, 4);
  main("distlogic", "psu.logic", 7, 1, 2, 5);
  const safe = w.net("coil.safe", "coil", "48 V behind the interlock", "联锁后 48 V", {
    supply: "sup.48",
    volts: 48,
    amps: 10,
    source: "bd.interlock:j2.2",
    wire_type: "hu-16",
    max_drop_pct: 4,
  });
  w.end(safe, DC, "bd.interlock:j2.2", "bd.dist48:j1.1");
}

export function wirePower(w: Wiring): void {
  wireMains(w);
  wireSupplies(w);
  for (const group of FUSE_GROUPS) wireGroup(w, group);
}
