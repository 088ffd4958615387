import { rows, type Topic } from "./author.ts";

/**
 * How the coils and motors are used: pulse, shortest time from pulse to pulse, longest hold and its duty, duty over
 * a minute of hard play, and the time after which the driver switches off by itself. Common practice, no source.
 */
type Use = readonly [
  item: string,
  pulseMs: number,
  repeatMs: number,
  dutyPct: number,
  timeoutMs: number,
  holdMs?: number,
  holdDutyPct?: number,
];

const USES: readonly Use[] = [
  ["mech.flip-left/coil", 40, 120, 4, 120, 20000, 100],
  ["mech.flip-right/coil", 40, 120, 4, 120, 20000, 100],
  ["mech.flip-upper/coil", 40, 120, 4, 120, 20000, 100],
  ["mech.sling-left/coil", 30, 140, 4, 100],
  ["mech.sling-right/coil", 30, 140, 4, 100],
  ["mech.bumper-left/coil", 28, 110, 6, 100],
  ["mech.bumper-right/coil", 28, 110, 6, 100],
  ["mech.bumper-low/coil", 28, 110, 6, 100],
  ["mech.drops/reset", 60, 800, 1, 150],
  ["mech.drops/trip", 35, 500, 0.5, 100],
  ["mech.drop-cave/reset", 50, 600, 1, 120],
  ["mech.drop-cave/trip", 30, 400, 1, 100],
  ["mech.saucer/coil", 32, 1000, 1, 100],
  ["mech.wreck/coil", 36, 1000, 1, 100],
  ["mech.trough/coil", 40, 900, 1, 120],
  ["mech.plunger/coil", 38, 900, 1, 120],
  ["mech.kickback/coil", 34, 1500, 0.5, 100],
  ["mech.up-post/coil", 60, 1000, 6, 15000, 12000, 30],
  ["mech.diverter/coil", 60, 500, 25, 15000, 10000, 35],
  ["mech.lifter/coil", 60, 500, 20, 15000, 10000, 35],
  ["mech.lock/coil", 90, 700, 2, 400],
  ["mech.gate-left/coil", 80, 500, 15, 15000, 10000, 40],
  ["mech.gate-right/coil", 80, 500, 15, 15000, 10000, 40],
  ["mech.magnet/coil", 400, 1500, 10, 5000, 3500, 45],
  ["mech.knocker/coil", 30, 400, 0.5, 100],
  ["mech.bell/coil", 26, 300, 2, 100],
];

/** Motors run on end while the game asks for them; the driver stops one that does not come home. */
const MOTORS: readonly (readonly [item: string, dutyPct: number, timeoutMs: number])[] = [
  ["mech.beacon/motor", 100, 3600000],
  ["mech.ship/motor", 40, 60000],
  ["mech.shaker/motor", 8, 5000],
  ["mech.tide-clock/motor", 20, 120000],
];

/** What the game program never fires together, so that supply and wires need not carry it. */
const GROUPS: readonly (readonly [
  id: string,
  label: string,
  label_zh: string,
  most: number,
  items: readonly string[],
])[] = [
  [
    "grp.flippers",
    "Flippers: all three may be up",
    "拨板：三个可同时抬起",
    3,
    ["mech.flip-left/coil", "mech.flip-right/coil", "mech.flip-upper/coil"],
  ],
  [
    "grp.bumpers",
    "Pop bumpers and slingshots: one ball, or two in multiball",
    "弹跳柱与弹弓：一球，或多球时两球",
    2,
    [
      "mech.sling-left/coil",
      "mech.sling-right/coil",
      "mech.bumper-left/coil",
      "mech.bumper-right/coil",
      "mech.bumper-low/coil",
    ],
  ],
  [
    "grp.ball-handling",
    "Ball handling: one at a time",
    "送球机构：一次一个",
    1,
    [
      "mech.saucer/coil",
      "mech.wreck/coil",
      "mech.trough/coil",
      "mech.plunger/coil",
      "mech.kickback/coil",
      "mech.lock/coil",
    ],
  ],
  [
    "grp.targets",
    "Drop targets: one at a time",
    "落靶：一次一个",
    1,
    ["mech.drops/reset", "mech.drops/trip", "mech.drop-cave/reset", "mech.drop-cave/trip"],
  ],
  [
    "grp.held",
    "Held coils: three of them",
    "保持线圈：最多三个",
    3,
    [
      "mech.up-post/coil",
      "mech.diverter/coil",
      "mech.lifter/coil",
      "mech.gate-left/coil",
      "mech.gate-right/coil",
      "mech.magnet/coil",
    ],
  ],
  [
    "grp.noise",
    "Knocker and bell: one at a time",
    "敲击器与钟：一次一个",
    1,
    ["mech.knocker/coil", "mech.bell/coil"],
  ],
  [
    "grp.pulses",
    "Full pulses: the program starts at most three of them within one pulse",
    "全压脉冲：程序在一个脉冲时间内最多启动三个",
    3,
    [
      "mech.flip-left/coil",
      "mech.flip-right/coil",
      "mech.flip-upper/coil",
      "mech.sling-left/coil",
      "mech.sling-right/coil",
      "mech.bumper-left/coil",
      "mech.bumper-right/coil",
      "mech.bumper-low/coil",
      "mech.saucer/coil",
      "mech.wreck/coil",
      "mech.trough/coil",
      "mech.plunger/coil",
      "mech.kickback/coil",
      "mech.lock/coil",
      "mech.drops/reset",
      "mech.drops/trip",
      "mech.drop-cave/reset",
      "mech.drop-cave/trip",
      "mech.knocker/coil",
      "mech.bell/coil",
    ],
  ],
  [
    "grp.motors",
    "Motors: three together",
    "电机：最多三个",
    3,
    ["mech.beacon/motor", "mech.ship/motor", "mech.shaker/motor", "mech.tide-clock/motor"],
  ],
];

export const activity: Topic = {
  tables: {
    activity: rows("activity", [
      ...USES.map(([item, pulse_ms, repeat_ms, duty_pct, timeout_ms, hold_ms, hold_duty_pct]) => ({
        item,
        pulse_ms,
        repeat_ms,
        duty_pct,
        timeout_ms,
        hold_ms: hold_ms ?? null,
        hold_duty_pct: hold_duty_pct ?? null,
      })),
      ...MOTORS.map(([item, duty_pct, timeout_ms]) => ({ item, duty_pct, timeout_ms })),
    ]),
    groups: rows(
      "groups",
      GROUPS.map(([id, label, label_zh, most_on, items]) => ({ id, label, label_zh, most_on, items })),
    ),
  },
};
