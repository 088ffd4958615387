import type { BookRow } from "@pinwright/book";
import { fromFrame, type PointMm, pointAlong, polar, polylineLength } from "@pinwright/kernel";
import { rows, type Topic } from "./author.ts";
import { playfieldLamps } from "./playfield-lamps.ts";
import {
  ARCH,
  INLANE_GUIDE,
  STORM_PIECES,
  stormPoint,
  TOP_LANE_GUIDES_X,
  WRECK_SLOPE,
} from "./playfield-plan.ts";
import { RUBBER_POSTS } from "./playfield-rubbers.ts";
import { playfieldSwitches } from "./playfield-switches.ts";
import { arc, mirroredXy, type Xy } from "./shape.ts";
import { hasRoom } from "./under-map.ts";

type Fastener = Partial<BookRow<"fasteners">>;

/** Screws of a device type: own places, type, thickness of its bracket. */
interface Screws {
  readonly at: readonly Xy[];
  readonly type: string;
  readonly flange: number;
}

const FOR_DEVICES: Readonly<Record<string, Screws>> = {
  "dt.lamp-insert": { at: [[0, 18]], type: "ft.wood-30x12", flange: 1 },
  "dt.lamp-gi": { at: [[0, 18]], type: "ft.wood-30x12", flange: 1 },
  "dt.flasher": {
    at: [
      [0, -13.5],
      [0, 13.5],
    ],
    type: "ft.wood-30x12",
    flange: 1.5,
  },
  "dt.flasher-insert": {
    at: [
      [0, -15.5],
      [0, 15.5],
    ],
    type: "ft.wood-30x12",
    flange: 1.5,
  },
  "dt.rollover": {
    at: [
      [0, -25],
      [0, 25],
    ],
    type: "ft.wood-35x12",
    flange: 1.5,
  },
  "dt.star-rollover": {
    at: [
      [0, -16],
      [0, 16],
    ],
    type: "ft.wood-35x12",
    flange: 1.5,
  },
  "dt.standup": {
    at: [
      [-8, 13],
      [8, 13],
    ],
    type: "ft.wood-35x12",
    flange: 2,
  },
  "dt.rebound-leaf": {
    at: [
      [0, -14.5],
      [0, 14.5],
    ],
    type: "ft.wood-35x12",
    flange: 2,
  },
  "dt.sling-leaf": {
    at: [
      [0, -13.5],
      [0, 13.5],
    ],
    type: "ft.wood-35x12",
    flange: 2,
  },
  "dt.captive-leaf": {
    at: [
      [0, -13],
      [0, 13],
    ],
    type: "ft.wood-35x12",
    flange: 2,
  },
  "dt.hall": { at: [[0, 7]], type: "ft.wood-29x9", flange: 1 },
};

const half = (value: number): number => Math.round(value * 2) / 2;

const ofDevices = [
  ...(playfieldLamps.tables.devices ?? []),
  ...(playfieldSwitches.tables.devices ?? []),
].flatMap((device) => {
  const screws = device.side === "under" ? FOR_DEVICES[device.type] : undefined;
  return (screws?.at ?? []).map(([xMm, yMm], i): Fastener => {
    const frame = { xMm: device.x_mm, yMm: device.y_mm, rotationDeg: device.rotation_deg };
    const at = fromFrame(frame, { xMm, yMm });
    return {
      id: `fx.${device.id.replace(".", "-")}-${i + 1}`,
      type: screws?.type ?? "",
      side: "under",
      x_mm: Math.round(at.xMm * 10) / 10,
      y_mm: Math.round(at.yMm * 10) / 10,
      holds: device.id,
      flange_mm: screws?.flange ?? 0,
    };
  });
});

/** Middle lines along which a guide or rail has its screws, and how far apart they may be. */
interface Line {
  readonly part: string;
  readonly line: readonly Xy[];
  readonly spacing: number;
  readonly type: string;
}

const guide = (part: string, line: readonly Xy[], spacing = 60): Line => ({
  part,
  line,
  spacing,
  type: "ft.guide-m3x18",
});
const rail = (part: string, line: readonly Xy[], spacing = 95): Line => ({
  part,
  line,
  spacing,
  type: "ft.wood-40x30",
});

const LINES: readonly Line[] = [
  rail("rail-left", [
    [5, 20],
    [5, 1050],
  ]),
  rail("rail-right", [
    [509, 20],
    [509, 1050],
  ]),
  rail(
    "rail-rear",
    [
      [30, 1062],
      [484, 1062],
    ],
    75,
  ),
  rail(
    "divider",
    [
      [464, 130],
      [464, 760],
    ],
    70,
  ),
  rail(
    "apron-left",
    [
      [20, 20],
      [190, 20],
    ],
    50,
  ),
  rail(
    "apron-left",
    [
      [30, 190],
      [190, 90],
    ],
    50,
  ),
  rail(
    "apron-right",
    [
      [280, 25],
      [440, 25],
    ],
    50,
  ),
  rail(
    "apron-right",
    [
      [280, 92],
      [450, 200],
    ],
    50,
  ),
  rail(
    "drain-foot",
    [
      [215, 24],
      [255, 24],
    ],
    35,
  ),
  rail(
    "lane-foot",
    [
      [466, 10],
      [466, 40],
    ],
    30,
  ),
  guide("inlane-left", INLANE_GUIDE, 70),
  guide("inlane-right", INLANE_GUIDE.map(mirroredXy), 70),
  guide("orbit-left", [[57, 594], WRECK_SLOPE[0]], 55),
  guide("wreck", WRECK_SLOPE, 45),
  guide(
    "ramp-left-mouth",
    [
      [89, 604],
      [89, 686],
    ],
    35,
  ),
  guide(
    "ramp-left-mouth",
    [
      [141, 604],
      [141, 686],
    ],
    35,
  ),
  guide(
    "ramp-right-mouth",
    [
      [339, 604],
      [339, 686],
    ],
    35,
  ),
  guide(
    "ramp-right-mouth",
    [
      [387, 604],
      [387, 686],
    ],
    35,
  ),
  guide(
    "bank-side",
    [
      [189, 644],
      [189, 692],
      [211, 742],
    ],
    40,
  ),
  guide(
    "bank-rear",
    [
      [194, 672],
      [284, 672],
    ],
    40,
  ),
  guide("cave", [[290, 644], ...arc([314, 680], 24, 180, 30)], 30),
  ...STORM_PIECES.filter(([from, to]) => to - from > 20).map(([from, to], i) =>
    guide(`storm-${[1, 4][i] ?? 1}`, [stormPoint(from + 3), stormPoint(to - 3)], 22),
  ),
  guide(
    "orbit-right",
    [
      [418, 596],
      [418, 686],
    ],
    40,
  ),
  guide(
    "upper-flipper",
    [
      [456, 532],
      [447, 498],
    ],
    30,
  ),
  ...TOP_LANE_GUIDES_X.map((x, i) =>
    guide(
      `top-lane-${i + 1}`,
      [
        [x, 955],
        [x, 982],
      ],
      24,
    ),
  ),
];

const STEP_MM = 3;

/** Depth of the hole in what is held on the far side: a pilot hole in a rail's wood, a thread in a guide's foot. */
const TAPPED_MM: Readonly<Record<string, number>> = { "ft.wood-40x30": 24, "ft.guide-m3x18": 8 };

/** Places along a line, `spacing` apart and moved on where something is in the way. */
function along({ part, line, spacing, type }: Line, first: number): readonly Fastener[] {
  const path = line.map(([xMm, yMm]) => ({ xMm, yMm }));
  const length = polylineLength(path);
  const places: PointMm[] = [];
  const headMm = type === "ft.wood-40x30" ? 4 : 3.5;
  for (let at = 0; at <= length; ) {
    const p = pointAlong(path, at);
    if (hasRoom(p, headMm + 0.5)) {
      places.push(p);
      at += spacing;
    } else at += STEP_MM;
  }
  return places.map((p, i) => ({
    id: `fx.${part}-${first + i}`,
    type,
    side: "under",
    x_mm: half(p.xMm),
    y_mm: half(p.yMm),
    holds: `tp.${part}`,
    tapped_mm: TAPPED_MM[type] ?? null,
    moments: "start align tighten",
  }));
}

function ofLines(): readonly Fastener[] {
  const count = new Map<string, number>();
  return LINES.flatMap((line) => {
    const first = (count.get(line.part) ?? 0) + 1;
    const screws = along(line, first);
    count.set(line.part, first - 1 + screws.length);
    return screws;
  });
}

/** Tabs of the arch lie outside it, screwed down from the top. */
const ARCH_TABS_DEG: readonly number[] = [30, 48, 64, 72, 108, 116, 132, 150];
const ofArch = ARCH_TABS_DEG.map((deg, i): Fastener => {
  const at = polar(deg, ARCH.radius + 9);
  return {
    id: `fx.arch-${i + 1}`,
    type: "ft.wood-35x12",
    side: "top",
    x_mm: half(ARCH.centre[0] + at.xMm),
    y_mm: half(ARCH.centre[1] + at.yMm),
    holds: "tp.arch",
    flange_mm: 1.5,
  };
});

const post = (id: string, type: string, [x, y]: Xy, flange: number, purpose: string): Fastener => ({
  id,
  type,
  side: "top",
  x_mm: x,
  y_mm: y,
  flange_mm: flange,
  purpose,
});

const ofRubbers = RUBBER_POSTS.map((at, i) =>
  post(`fx.post-${i + 1}`, "ft.post-rubber", at, 24, "rubber post"),
);

/** Posts that carry ramps and wireforms, where no ball comes. */
const RAMP_POSTS: readonly Xy[] = [
  [70, 735],
  [78, 773],
  [16, 908],
  [26, 960],
  [440, 990],
  [484, 1052],
  [484, 960],
  [400, 1050],
  [110, 1050],
  [342, 706],
  [396, 640],
  [408, 640],
  [455.5, 493.5],
];
const ofRamps = RAMP_POSTS.map((at, i) =>
  post(`fx.ramp-post-${i + 1}`, "ft.post-plastic", at, 32, "ramp or wireform post"),
);

export const playfieldFasteners: Topic = {
  tables: {
    fasteners: rows(
      "fasteners",
      [...ofDevices, ...ofLines(), ...ofArch, ...ofRubbers, ...ofRamps].map((row) => ({
        panel: "playfield",
        ...row,
      })),
    ),
  },
};
