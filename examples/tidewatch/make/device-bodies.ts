import { type Bodied, type Body, block, bodiesOf, moving, round, WOOD_MM } from "./body-kind.ts";
import { box, disc, rubber, type Xy } from "./shape.ts";

/** Below the playing surface by so much, through the wood. */
const up = (mm: number): number => -(WOOD_MM + mm);

const bracket = (thickness: number, minX: number, minY: number, maxX: number, maxY: number): Body => ({
  id: "bracket",
  label: "bracket",
  label_zh: "支架",
  shape: box(minX, minY, maxX, maxY),
  heights: [0, thickness],
});

/** What moves in its slot ends here: below it, its own switch covers it. */
const WITHIN = -1.5;

/** Plates keep half a millimetre from their outline, so that neighbours do not touch. */
const plate = (width: number, depth: number, thickness: number): Body =>
  block(["plate", "plate", "底板"], [width - 1, depth - 1], [0, thickness]);

/** A leaf switch on its plate; its blades stand in a slot along its own y and reach `reach` above the wood. */
const leaf = (
  type: string,
  [width, depth, height]: readonly [number, number, number],
  stack: number,
  blade: number,
  reach: number,
): Bodied => ({
  type,
  bodies: [
    plate(width, depth, 2),
    block(["stack", "stack of springs", "簧片组"], [width - 4, stack], [2, height]),
    block(["blade", "blades", "簧片"], [3, blade], [up(reach), 0]),
  ],
});

const SWITCHES: readonly Bodied[] = [
  {
    type: "dt.rollover",
    bodies: [
      plate(20, 58, 1.5),
      block(["switch", "switch", "开关体"], [20, 36], [1.5, 24]),
      moving(block(["wire", "wire lever", "钢丝杠杆"], [2, 34], [up(4), WITHIN])),
    ],
  },
  {
    type: "dt.star-rollover",
    bodies: [
      plate(22, 44, 1.5),
      block(["switch", "switch", "开关体"], [22, 22], [1.5, 26]),
      moving(round(["star", "star", "星形帽"], 13, [up(3), WITHIN])),
    ],
  },
  {
    type: "dt.standup",
    bodies: [
      bracket(2, -12.5, -4, 12.5, 17.5),
      block(["stack", "stack of springs", "簧片组"], [24, 8], [2, 34]),
      block(["blades", "blades", "簧片"], [8, 3], [up(6), 0]),
      block(["target", "target", "靶面"], [26, 8], [up(30), up(4)]),
    ],
  },
  leaf("dt.rebound-leaf", [12, 36, 12], 18, 11, 22),
  leaf("dt.sling-leaf", [9, 34, 12], 16, 13, 22),
  // The captive ball rests above it: its blades end below the playing surface.
  leaf("dt.captive-leaf", [12, 34, 14], 16, 12, -1),
  {
    type: "dt.hall",
    bodies: [
      plate(14, 22, 1),
      block(["sensor", "sensor and its tabs", "传感器与插片"], [14, 12], [1, 10], [0, -5]),
    ],
  },
  { type: "dt.eos", bodies: [block(["switch", "switch", "开关体"], [10, 36], [0, 14])] },
  { type: "dt.spoon", bodies: [block(["switch", "switch", "开关体"], [10, 36], [0, 22])] },
  { type: "dt.drop-switch", bodies: [block(["switch", "switch", "开关体"], [10, 20], [0, 16])] },
  { type: "dt.micro", bodies: [block(["switch", "switch", "开关体"], [20, 8], [0, 12])] },
  { type: "dt.gate-micro", bodies: [block(["switch", "switch", "开关体"], [18, 6], [0, 14])] },
];

const bulb = (diameter: number, to: number): Body => round(["bulb", "bulb", "灯泡"], diameter, [to, 1]);

const LAMPS: readonly Bodied[] = [
  {
    type: "dt.lamp-insert",
    bodies: [
      bracket(1, -7.5, -8.5, 7.5, 21.5),
      round(["socket", "socket", "灯座"], 14, [1, 22]),
      // Its insert lies above it, flush with the playing surface.
      bulb(9, -6),
    ],
  },
  {
    type: "dt.lamp-gi",
    bodies: [
      bracket(1, -6.5, -8.5, 6.5, 21.5),
      round(["socket", "socket", "灯座"], 14, [1, 20]),
      bulb(11, up(24)),
    ],
  },
  { type: "dt.lamp-spot", bodies: [round(["socket", "socket", "灯座"], 10, [0, 18])] },
  {
    type: "dt.flasher",
    bodies: [
      plate(24, 34, 1.5),
      block(["led", "LED with its heat sink", "LED 与散热片"], [24, 18], [1.5, 20]),
      round(["neck", "neck", "颈部"], 14, [up(0), 0]),
      round(["dome", "dome", "灯罩"], 18, [up(26), up(0)]),
    ],
  },
  {
    type: "dt.flasher-insert",
    bodies: [
      plate(24, 38, 1.5),
      block(["led", "LED with its heat sink", "LED 与散热片"], [22, 20], [1.5, 20]),
      round(["lens", "lens", "透镜"], 16, [-6, 0]),
    ],
  },
];

const ABOVE: readonly Bodied[] = [
  {
    type: "dt.bat",
    bodies: [
      {
        id: "bat",
        label: "bat with its rubber",
        label_zh: "拨板与胶圈",
        shape: rubber(0, ...[...disc([0, 0], 10), ...disc([0, 66], 6)].map((p): Xy => [p.xMm, p.yMm])),
        // Clear of a star rollover.
        heights: [1, 24],
      },
    ],
  },
  // The ball pushes both aside.
  { type: "dt.swing-plate", bodies: [moving(block(["plate", "plate", "片"], [34, 3], [0, 40]))] },
  { type: "dt.swing-wire", bodies: [moving(block(["wire", "wire", "钢丝"], [34, 3], [0, 30]))] },
];

const POSTED: readonly Bodied[] = ["tx", "rx"].map(
  (end): Bodied => ({
    type: `dt.opto-${end}-post`,
    bodies: [
      block(["board", "lugs", "焊片"], [6, 12], [0, 12]),
      round(["post", "post", "立柱"], 4, [up(20), 0]),
    ],
  }),
);

const winding = (type: string, width: number, depth: number, height: number): Bodied => ({
  type,
  bodies: [block(["winding", "coil on its former", "线圈骨架"], [width, depth], [0, height])],
});
const upright = (type: string, diameter: number, height: number): Bodied => ({
  type,
  bodies: [round(["winding", "coil on its former", "线圈骨架"], diameter, [0, height])],
});

/** Coils without the room for their lugs; those that lie have their axis along y. */
const COILS: readonly Bodied[] = [
  winding("dt.coil-flipper", 36, 62, 44),
  winding("dt.coil-sling", 24, 34, 36),
  upright("dt.coil-bumper", 38, 58),
  winding("dt.coil-reset", 20, 48, 38),
  upright("dt.coil-reset-small", 24, 46),
  winding("dt.coil-trip", 12, 14, 22),
  winding("dt.coil-kick", 22, 46, 36),
  upright("dt.coil-vuk", 38, 62),
  winding("dt.coil-plunger", 30, 54, 42),
  winding("dt.coil-diverter", 20, 40, 36),
  winding("dt.coil-gate", 18, 22, 24),
  upright("dt.coil-post", 30, 52),
  upright("dt.coil-magnet", 60, 52),
  winding("dt.coil-knocker", 26, 48, 38),
];

const MOTORS: readonly Bodied[] = [
  { type: "dt.motor-crank", bodies: [block(["motor", "gear motor", "减速电机"], [40, 50], [0, 40])] },
];

export const deviceBodies = bodiesOf([...SWITCHES, ...LAMPS, ...ABOVE, ...POSTED, ...COILS, ...MOTORS]);
