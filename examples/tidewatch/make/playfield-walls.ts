import {
  ARCH,
  caveBack,
  DIVIDER,
  INLANE_GUIDE,
  RAMP_LEFT,
  RAMP_RIGHT,
  STORM_PIECES,
  STORM_WALL,
  stormPoint,
  TOP_LANE_GUIDES_X,
  WRECK_SLOPE,
} from "./playfield-plan.ts";
import { arc, box, disc, mirrored, polygon, type Shape, strip, together, without, type Xy } from "./shape.ts";
import { type TopPart, topParts } from "./top-part.ts";

/** Height of rails and guides: more than a ball. */
const WALL_MM = 32;

const wall = (
  id: string,
  label: string,
  label_zh: string,
  shape: Shape,
  height = WALL_MM,
  more: Pick<TopPart, "notches" | "chamber"> = {},
): TopPart => ({
  id,
  label,
  label_zh,
  shape,
  z: 0,
  height,
  ...more,
});

/** Wires of the lights and ramps on the upper side run along these lines, under what stands there. */
const WIRES: Readonly<Record<string, readonly (readonly Xy[])[]>> = {
  front: [
    [
      [81, 145],
      [235, 40],
      [150, 60],
    ],
    [
      [235, 40],
      [400, 60],
    ],
    [
      [60, 130],
      [81, 145],
    ],
    [
      [235, 40],
      [330, 60],
    ],
  ],
  slingLeft: [
    [
      [81, 145],
      [104, 388],
    ],
  ],
  left: [
    [
      [101, 728],
      [57, 720],
      [57, 650],
    ],
  ],
  right: [
    [
      [418, 640],
      [439, 1042],
    ],
  ],
  rear: [
    [
      [439, 1042],
      [84, 1058],
      [468, 1058],
    ],
  ],
  rampLeft: [
    [
      [66, 672],
      [115, 640],
      [115, 800],
    ],
    [
      [101, 728],
      [115, 800],
    ],
  ],
  rampRight: [
    [
      [402, 625],
      [363, 660],
      [363, 800],
    ],
  ],
};
const notched = (...ways: readonly (keyof typeof WIRES)[]): Pick<TopPart, "notches"> => ({
  notches: ways.flatMap((way) => WIRES[way] ?? []),
});

const apronLeft = polygon([10, 0], [203, 0], [203, 98], [112, 150], [10, 236]);
/** The right apron leaves a chamber in which the trough's exit comes up beside the plunger lane. */
const apronRight = polygon(
  [267, 0],
  [460, 0],
  [460, 62],
  [424, 72],
  [424, 116],
  [460, 116],
  [460, 236],
  [358, 150],
  [267, 98],
);

/** The part of a ramp that is lower than a ball is high: two walls, and the floor rising behind them. */
const rampMouth = (
  { x, mouthY, lowEndY }: { x: number; mouthY: number; lowEndY: number },
  inner: number,
): Shape =>
  polygon(
    [x - inner / 2 - 4, mouthY],
    [x - inner / 2, mouthY],
    [x - inner / 2, lowEndY - 4],
    [x + inner / 2, lowEndY - 4],
    [x + inner / 2, mouthY],
    [x + inner / 2 + 4, mouthY],
    [x + inner / 2 + 4, lowEndY],
    [x - inner / 2 - 4, lowEndY],
  );

const [, stormEnd] = STORM_WALL;
const [wreckTop, wreckEnd] = WRECK_SLOPE;

const arch = strip(3, ...arc([...ARCH.centre], ARCH.radius + 1.5, 4, 176));

/** Along a way from one place to another, `by` mm from its beginning: where one guide meets another, it ends there. */
const startedLater = ([x0, y0]: Xy, [x1, y1]: Xy, by: number): Xy => {
  const length = Math.hypot(x1 - x0, y1 - y0);
  return [x0 + ((x1 - x0) * by) / length, y0 + ((y1 - y0) * by) / length];
};

const PARTS: readonly TopPart[] = [
  wall(
    "rail-left",
    "Left rail",
    "左边木条",
    without(without(box(0, 0, 10, 1067), box(3, 407, 11, 441)), arch),
  ),
  wall(
    "rail-right",
    "Right rail",
    "右边木条",
    without(without(box(504, 0, 514, 1067), box(503, 632, 510, 648)), arch),
  ),
  wall("rail-rear", "Rear rail", "后边木条", box(10, 1057, 504, 1067), WALL_MM, notched("rear")),
  wall("arch", "Ball arch", "顶部弧形导轨", arch),
  wall(
    "divider",
    "Plunger lane divider",
    "发球道隔条",
    without(
      together(
        box(DIVIDER.minX, DIVIDER.minY, DIVIDER.maxX, DIVIDER.maxY - 4),
        strip(8, [464, 700], [464, 764]),
      ),
      box(462, 632, 469, 648),
    ),
  ),
  wall(
    "lane-foot",
    "Plunger lane foot",
    "发球道底块",
    polygon([460, 0], [504, 0], [504, 48], [495, 48], [495, 16], [477, 16], [477, 48], [460, 48]),
  ),
  wall("apron-left", "Apron, left ball guide", "左裙板导块", apronLeft, WALL_MM, {
    ...notched("front", "slingLeft"),
    // The kickback's arm moves below.
    chamber: { shape: box(22, 166, 40, 216), height: 20 },
  }),
  wall("apron-right", "Apron, right ball guide", "右裙板导块", apronRight, WALL_MM, notched("front")),
  wall("drain-foot", "Drain foot", "落球口底块", box(203, 0, 267, 54), WALL_MM, notched("front")),
  wall(
    "inlane-left",
    "Left inlane guide",
    "左内道导轨",
    strip(6, ...INLANE_GUIDE),
    WALL_MM,
    notched("slingLeft"),
  ),
  wall("inlane-right", "Right inlane guide", "右内道导轨", mirrored(strip(6, ...INLANE_GUIDE))),
  wall(
    "orbit-left",
    "Left orbit guide",
    "左环道导轨",
    strip(4, [57, 588], wreckTop),
    WALL_MM,
    notched("left", "rampLeft"),
  ),
  wall(
    "wreck",
    "Wreck slope guide",
    "沉船斜导轨",
    strip(4, startedLater(wreckTop, wreckEnd, 5.2), wreckEnd, [141, 692]),
    WALL_MM,
    notched("rampLeft"),
  ),
  wall(
    "ramp-left-mouth",
    "Left ramp mouth",
    "左坡道入口段",
    rampMouth(RAMP_LEFT, 48),
    48,
    notched("rampLeft", "left"),
  ),
  wall("bank-side", "Breakwater side guide", "防波堤侧导轨", strip(4, [189, 642], [189, 692], [211, 742])),
  wall("cave", "Sea cave guide", "海蚀洞导轨", strip(4, [290, 642], ...caveBack())),
  wall("bank-rear", "Breakwater rear wall", "防波堤后墙", strip(3, [192.5, 672], [287, 672])),
  wall(
    "ramp-right-mouth",
    "Right ramp mouth",
    "右坡道入口段",
    rampMouth(RAMP_RIGHT, 44),
    48,
    notched("rampRight"),
  ),
  ...STORM_PIECES.map(([from, to], i) =>
    wall(
      `storm-${i + 1}`,
      `Storm wall, piece ${i + 1}`,
      `风暴墙第 ${i + 1} 段`,
      strip(4, stormPoint(from), stormPoint(to)),
    ),
  ),
  wall(
    "orbit-right",
    "Right orbit guide",
    "右环道导轨",
    strip(4, [stormEnd[0], stormEnd[1] - 3.6], [418, 592]),
    WALL_MM,
    notched("right", "rampRight"),
  ),
  wall("exit-gate", "Plunger lane one-way gate", "发球道单向门", strip(3, [464, 770], [502.6, 797.05]), 30),
  wall("upper-flipper", "Upper flipper guide", "右上拨板导轨", strip(6, [457, 536], [446, 494])),
  ...TOP_LANE_GUIDES_X.map((x, i) =>
    wall(`top-lane-${i + 1}`, `Top lane guide ${i + 1}`, `顶部道导轨 ${i + 1}`, strip(3, [x, 952], [x, 985])),
  ),
  {
    id: "captive-ball",
    label: "Captive ball",
    label_zh: "被困球",
    shape: disc([73, 597], 13.4),
    z: 0,
    height: 27,
  },
  wall("captive-lip-left", "Captive ball lip, left", "被困球左挡", strip(3, [60, 586.6], [61.9, 585.7])),
  wall("captive-lip-right", "Captive ball lip, right", "被困球右挡", strip(3, [89, 598], [86.9, 588.5])),
];

export const playfieldWalls = topParts(PARTS);
