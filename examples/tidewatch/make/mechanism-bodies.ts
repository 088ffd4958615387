import { type Bodied, type Body, block, bodiesOf, moving, round, WOOD_MM } from "./body-kind.ts";
import type { MechanismKind } from "./mechanism-kind.ts";
import { PLAY_MECHANISMS } from "./mechanism-types-play.ts";
import { SHOW_MECHANISMS } from "./mechanism-types-show.ts";

const PLATE_MM = 2;
const up = (mm: number): number => -(WOOD_MM + mm);

type Part = readonly [id: string, label: string, label_zh: string];
type At = readonly [x: number, y: number];

/** What moves ends here in the wood where its own frame covers it below. */
const WITHIN = -1.5;

/** The disc that a plate of 40 mm sweeps about its wire, in layers: width, and half of its height there. */
const SPIN: readonly (readonly [depth: number, half: number])[] = [
  [20, 20],
  [30, 17.3],
  [40, 13.2],
];

/** What stands on the plate between it and a coil. */
const bracket = (size: readonly [number, number], to: number, at: At, id = "bracket"): Body =>
  block([id, "coil bracket", "线圈支架"], size, [PLATE_MM, to], at);

const sweep = (id: string, size: readonly [number, number], heights: Body["heights"], at: At): Body =>
  moving(block([id, "sweep of the plunger", "铁芯行程"], size, heights, at));

const SHAFT: Part = ["shaft", "shaft", "轴"];
const CUP: Part = ["cup", "cup", "球碗"];
const ARM: Part = ["arm", "arm", "臂"];

/** `away` as in the types: the coil lies on that side, the pivot on the other. */
const flipper = (away: 1 | -1): readonly Body[] => [
  bracket([62, 36], 8, [away * 24, 0]),
  sweep("plunger", [20, 10], [20, 40], [away * -16, 0]),
  moving(round(["crank", "crank", "曲柄"], 26, [10, 50], [away * -32, 0])),
  round(SHAFT, 11, [up(3), PLATE_MM], [away * -32, 0]),
];

/** `near` as in the types: the coil lies towards the player. */
const slingshot = (near: 1 | -1): readonly Body[] => [
  bracket([24, 34], 8, [0, near * 8]),
  moving(block(["link", "link of the arm", "臂连杆"], [26, 6], [10, 44], [14, near * -22])),
  moving(block(ARM, [5, 9], [up(24), PLATE_MM], [23, near * -22])),
];

const OWN: Readonly<Record<string, readonly Body[]>> = {
  "mt.flipper-left": flipper(-1),
  "mt.flipper-right": flipper(1),
  "mt.flipper-upper": flipper(1),
  "mt.slingshot-left": slingshot(-1),
  "mt.slingshot-right": slingshot(1),
  "mt.bumper": [
    bracket([38, 22], 26, [0, 0]),
    moving(block(["armature", "armature plate", "衔铁板"], [12, 54], [62, 88], [0, 0])),
    ...[22, -22].map((y, i) =>
      moving(round([`rod-${i + 1}`, "rod of the ring", "环拉杆"], 5, [up(48), 88], [0, y])),
    ),
    round(["stem", "stem of the skirt", "裙座柄"], 20, [up(0), PLATE_MM]),
  ],
  "mt.drop-bank": [
    bracket([48, 20], 20, [-12, 4]),
    bracket([12, 14], 20, [36, 6], "trip-bracket"),
    moving(block(["targets", "sweep of the targets", "靶片行程"], [91, 6], [up(38), WITHIN], [0, -17.5])),
    block(["frame", "frame of the targets", "靶架"], [91, 6], [PLATE_MM, 92], [0, -17.5]),
    moving(block(["bar", "reset bar", "复位杆"], [78, 6], [58, 112], [0, -10])),
  ],
  "mt.drop-single": [
    bracket([16, 16], 54, [0, -4]),
    moving(block(["target", "sweep of the target", "靶片行程"], [22, 6], [up(38), WITHIN], [0, 16.5])),
    block(["frame", "frame of the target", "靶架"], [22, 6], [PLATE_MM, 92], [0, 16.5]),
    moving(block(["lever", "reset lever", "复位杆"], [10, 12], [92, 108], [0, 8])),
  ],
  "mt.saucer": [
    round(CUP, 33, [up(0), 12], [0, -9]),
    bracket([20, 30], 28, [0, 14]),
    moving(block(ARM, [8, 24], [12, 28], [0, -6])),
  ],
  "mt.up-kicker": [
    round(CUP, 33, [up(0), 30]),
    bracket([34, 20], 50, [0, 0]),
    moving(round(["kicker", "kicker", "踢杆"], 12, [up(18), WITHIN])),
  ],
  "mt.trough": [
    block(["drain", "drain funnel", "落球斗"], [58, 38], [up(0), 20], [-90, -3]),
    // The earth trunk passes between plate and channel.
    block(["channel", "ball channel", "球槽"], [222, 34], [16, 46], [0, 0]),
    round(["exit", "exit tube", "出球管"], 31, [up(0), 46], [121, 8]),
  ],
  "mt.plunger": [
    bracket([30, 54], 8, [0, -18]),
    moving(block(["stem", "stem of the fork", "拨叉柄"], [10, 48], [up(0), 8], [0, -14])),
    moving(block(["fork", "sweep of the fork", "拨叉行程"], [12, 56], [up(24), up(0)], [0, -10])),
    sweep("plunger", [12, 34], [16, 32], [0, 26]),
  ],
  "mt.magnet": [round(["core", "core", "铁芯"], 24, [-12.9, 4]), bracket([40, 40], 4, [0, 0])],
  "mt.up-post": [
    moving(round(["post", "post", "升降柱"], 11, [up(26), 12])),
    bracket([24, 24], 12, [0, 0]),
    moving(block(["lever", "lever of the switch", "开关拨杆"], [8, 8], [64, 72], [0, 12])),
  ],
  "mt.kickback": [
    bracket([22, 46], 8, [0, -22]),
    sweep("plunger", [12, 30], [16, 36], [0, 16]),
    moving(block(ARM, [8, 34], [up(18), 16], [0, 32])),
  ],
  "mt.spinner": [
    block(["post", "post", "立柱"], [4, 4], [PLATE_MM, 56], [0, 0]),
    ...SPIN.map(([depth, half], i) =>
      moving(
        block(
          [`spin-${i + 1}`, "sweep of the plate", "旋转片行程"],
          [34, depth],
          [28 - half, 28 + half],
          [-32, 0],
        ),
      ),
    ),
  ],
  "mt.diverter": [
    bracket([20, 40], 8, [0, -10]),
    sweep("plunger", [10, 14], [16, 36], [0, 17]),
    // The blade's pin goes on through a hole of the ramp's floor.
    round(SHAFT, 9, [up(83), 44], [0, 26]),
  ],
  "mt.lock": [
    bracket([18, 22], 4, [0, -18]),
    moving(round(["pin", "release pin", "释放销"], 8, [up(62), 30], [8, 14])),
    moving(block(ARM, [8, 22], [10, 22], [4, 6])),
  ],
  "mt.gate": [
    bracket([18, 22], 6, [0, -6]),
    round(["rod", "rod of the wire", "闸门线拉杆"], 3, [up(58), 30], [-12, 0]),
  ],
  "mt.lifter": [
    bracket([20, 40], 8, [0, -8]),
    sweep("plunger", [10, 12], [16, 36], [0, 14]),
    moving(round(["flap", "push rod", "顶杆"], 5, [up(20), WITHIN], [0, 12])),
  ],
  "mt.beacon": [bracket([38, 46], 10, [-6, 4]), round(SHAFT, 26, [up(0), 10])],
  "mt.ship": [bracket([40, 50], 8, [0, -8]), moving(block(ARM, [8, 24], [up(20), 48], [0, 14]))],
  "mt.knocker": [
    bracket([26, 48], 4, [0, -18]),
    sweep("plunger", [12, 30], [14, 30], [0, 22]),
    block(["anvil", "anvil", "砧板"], [20, 4], [PLATE_MM, 46], [0, 42]),
  ],
  "mt.bell": [
    bracket([26, 48], 4, [0, -24]),
    sweep("plunger", [12, 16], [14, 30], [0, 9]),
    round(["bell", "bell", "钟"], 50, [10, 60], [0, 34]),
  ],
  "mt.shaker": [
    block(["cradle", "motor cradle", "电机座"], [46, 70], [PLATE_MM, 10], [0, 0]),
    moving(block(["weights", "sweep of the weights", "偏心块行程"], [46, 96], [10, 78], [0, 0])),
  ],
  "mt.tide-clock": [round(SHAFT, 8, [-9, 4])],
};

/** A plate with the outline of the type, and what stands on it; devices of the mechanism come beside. */
const bodied = ({ id, size }: MechanismKind): Bodied => {
  const own = OWN[id];
  if (own === undefined) throw new Error(`${id} has no bodies.`);
  return {
    type: id,
    bodies: [block(["plate", "plate", "底板"], [size[0] - 1, size[1] - 1], [0, PLATE_MM]), ...own],
  };
};

export const mechanismBodies = bodiesOf([...PLAY_MECHANISMS, ...SHOW_MECHANISMS].map(bodied));
