import { beside } from "./board-kit.ts";
import { KEY_AT } from "./electrics-node-boards.ts";
import type { Wiring } from "./wiring-kit.ts";

interface Bank {
  readonly board: string;
  readonly connector: "j5" | "j6";
  readonly key: "coil8.j5" | "coil8.j6" | "coil4.j5";
  readonly harness: string;
  /** Coils by output, first to fourth. */
  readonly coils: readonly (readonly [item: string, label: string, labelZh: string, amps: number])[];
}

/** Steady amps are those of hard play: a pulse of 40 to 60 ms each half second, or the hold of a long-duty coil. */
const BANKS: readonly Bank[] = [
  {
    board: "bd.coil-front",
    connector: "j5",
    key: "coil4.j5",
    harness: "hs.coil-lower",
    coils: [
      ["mech.trough/coil", "trough eject", "发球", 0.8],
      ["mech.plunger/coil", "auto-plunger", "自动发球器", 0.8],
      ["mech.up-post/coil", "up-post", "升降柱", 1],
      ["mech.kickback/coil", "kickback", "回踢器", 0.6],
    ],
  },
  {
    board: "bd.coil-mid",
    connector: "j5",
    key: "coil8.j5",
    harness: "hs.coil-upper",
    coils: [
      ["mech.drops/reset", "drop bank reset", "落靶复位", 0.9],
      ["mech.drops/trip", "drop bank trip", "落靶释放", 0.3],
      ["mech.drop-cave/reset", "cave target reset", "洞口靶复位", 0.9],
      ["mech.drop-cave/trip", "cave target trip", "洞口靶释放", 0.3],
    ],
  },
  {
    board: "bd.coil-mid",
    connector: "j6",
    key: "coil8.j6",
    harness: "hs.coil-upper",
    coils: [
      ["mech.saucer/coil", "saucer kick-out", "球碗踢出", 0.6],
      ["mech.lifter/coil", "ramp flap lifter", "翻板提升", 0.9],
      ["mech.diverter/coil", "ramp diverter", "坡道分道", 0.9],
      ["mech.gate-right/coil", "right orbit gate", "右环道闸门", 0.5],
    ],
  },
  {
    board: "bd.coil-rear",
    connector: "j5",
    key: "coil4.j5",
    harness: "hs.coil-upper",
    coils: [
      ["mech.wreck/coil", "wreck up-kicker", "沉船上踢", 0.8],
      ["mech.gate-left/coil", "left orbit gate", "左环道闸门", 0.5],
      ["mech.lock/coil", "harbour lock release", "锁球释放", 0.5],
    ],
  },
  {
    board: "bd.coil-cab",
    connector: "j5",
    key: "coil4.j5",
    harness: "hs.cabinet-loads",
    coils: [
      ["mech.knocker/coil", "knocker", "敲击器", 0.5],
      ["mech.bell/coil", "fog bell", "雾钟", 0.5],
    ],
  },
];

const COIL = { supply: "sup.48", max_drop_pct: 5 } as const;

function wireBank(w: Wiring, bank: Bank): void {
  const keyAt = KEY_AT[bank.key];
  const at = (n: number): string => `${bank.board}:${bank.connector}.${beside(keyAt, n)}`;
  const name = `${bank.board.slice(3)}.${bank.connector}`;
  const feed = w.net(`cf.${name}`, "coil", `coil feed ${name}`, `线圈供电 ${name}`, {
    ...COIL,
    volts: 48,
    amps: bank.coils.reduce((sum, [, , , amps]) => sum + amps, 0),
    shape: "chain",
    source: at(1),
    wire_type: "hu-18",
  });
  w.end(feed, bank.harness, at(1));
  bank.coils.forEach(([item, label, labelZh, amps], i) => {
    const net = w.net(`co.${item.slice(5).replace("/", ".")}`, "coil", label, labelZh, {
      ...COIL,
      volts: 48,
      amps,
      source: at(i + 2),
      wire_type: "hu-20",
    });
    w.end(net, bank.harness, at(i + 2));
    w.end(feed, bank.harness, `${item}:pos`);
    w.end(net, bank.harness, `${item}:neg`);
  });
  for (let n = bank.coils.length + 1; n <= 4; n += 1) w.spare(at(n + 1), "driver for a later coil");
}

interface Single {
  readonly board: string;
  readonly item: string;
  readonly harness: string;
  readonly label: string;
  readonly labelZh: string;
  /** Cavity of the board's j5 and terminal of the coil, the feed first. */
  readonly wires: readonly (readonly [
    cavity: number,
    terminal: string,
    suffix: string,
    amps: number,
    wire: string,
  ])[];
}

const flipper = (hand: "left" | "right" | "upper", labelZh: string): Single => ({
  board: `bd.flip-${hand}`,
  item: `mech.flip-${hand}/coil`,
  harness: hand === "upper" ? "hs.coil-upper" : "hs.coil-lower",
  label: `${hand} flipper`,
  labelZh,
  wires: [
    [1, "com", "feed", 2, "hu-18"],
    [3, "power", "power", 1.7, "hu-18"],
    [5, "hold", "hold", 0.4, "hu-20"],
  ],
});
const quick = (name: string, board: string, harness: string, label: string, labelZh: string): Single => ({
  board,
  item: `mech.${name}/coil`,
  harness,
  label,
  labelZh,
  wires: [
    [1, "pos", "feed", 0.8, "hu-20"],
    [3, "neg", "coil", 0.8, "hu-20"],
  ],
});

const SINGLES: readonly Single[] = [
  flipper("left", "左拨板"),
  flipper("right", "右拨板"),
  flipper("upper", "右上拨板"),
  quick("sling-left", "bd.sling-left", "hs.coil-lower", "left slingshot", "左弹弓"),
  quick("sling-right", "bd.sling-right", "hs.coil-lower", "right slingshot", "右弹弓"),
  quick("bumper-left", "bd.bumper-left", "hs.coil-upper", "left pop bumper", "左弹跳柱"),
  quick("bumper-right", "bd.bumper-right", "hs.coil-upper", "right pop bumper", "右弹跳柱"),
  quick("bumper-low", "bd.bumper-low", "hs.coil-upper", "lower pop bumper", "下弹跳柱"),
  {
    board: "bd.magnet",
    item: "mech.magnet/coil",
    harness: "hs.coil-upper",
    label: "whirlpool magnet",
    labelZh: "漩涡磁铁",
    wires: [
      [2, "pos", "feed", 3, "hu-18"],
      [3, "neg", "coil", 3, "hu-18"],
    ],
  },
];

/** Wires every coil to its driver: own output, and a feed that is chained along the coils of one fuse. */
export function wireCoils(w: Wiring): void {
  for (const bank of BANKS) wireBank(w, bank);
  for (const s of SINGLES) {
    for (const [cavity, terminal, suffix, amps, wire_type] of s.wires) {
      const source = `${s.board}:j5.${cavity}`;
      const net = w.net(
        `co.${s.board.slice(3)}.${suffix}`,
        "coil",
        `${s.label}, ${suffix}`,
        `${s.labelZh} ${suffix}`,
        {
          ...COIL,
          volts: 48,
          amps,
          source,
          wire_type,
        },
      );
      w.end(net, s.harness, source, `${s.item}:${terminal}`);
    }
  }
}
