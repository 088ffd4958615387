import { rows, type Topic } from "./author.ts";
import { BACKBOX, CABINET, GLASS } from "./cabinet-panels.ts";

type Spot = readonly [panel: string, x: number, y: number, z: number, rx?: number, ry?: number, rz?: number];

const { widthMm: W, depthMm: D, rearMm: H, plyMm: T } = CABINET;

/** Left face of the backbox, its front edge, and the top of its bottom: it stands centred on the cabinet's rear. */
const BB_X = (W - BACKBOX.widthMm) / 2;
const BB_Y = D - BACKBOX.depthMm + T;
const BB_Z = H + T;

/** The cabinet stands still; the room's origin is the front left corner of its bottom, inside. */
const CABINET_SPOTS: readonly Spot[] = [
  ["cab.bottom", 0, 0, 0],
  ["cab.left", 0, 0, 0, 90, 0, 90],
  ["cab.right", W, D, 0, 90, 0, -90],
  ["cab.front", W, 0, 0, 90, 0, 180],
  ["cab.back", 0, D, 0, 90],
  ["cab.door", W / 2 + 130, 0, 60, 90, 0, 180],
];

/** The backbox upright: how its panels stand, and how they lie when it is folded forward about its front edge. */
const BACKBOX_PANELS: readonly (readonly [upright: Spot, folded: readonly [number, number, number]])[] = [
  [
    ["bb.bottom", BB_X, BB_Y, BB_Z],
    [90, 0, 0],
  ],
  [
    ["bb.left", BB_X + T, BB_Y, BB_Z, 90, 0, 90],
    [180, -90, 0],
  ],
  [
    ["bb.right", BB_X + BACKBOX.widthMm - T, BB_Y + BACKBOX.depthMm, BB_Z, 90, 0, -90],
    [180, 90, 0],
  ],
  [
    ["bb.back", BB_X, BB_Y + BACKBOX.depthMm - 12, BB_Z, 90],
    [180, 0, 0],
  ],
  [
    ["bb.top", BB_X, BB_Y + BACKBOX.depthMm, BB_Z + BACKBOX.heightMm - T, 180],
    [270, 0, 0],
  ],
  [
    ["bb.lamp", BB_X + 20, BB_Y + 60, BB_Z + 10, 90],
    [180, 0, 0],
  ],
];

const upright: readonly Spot[] = BACKBOX_PANELS.map(([spot]) => spot);

/** Turned by a quarter about the front lower edge: what was up lies towards the player. */
const folded: readonly Spot[] = BACKBOX_PANELS.map(([[panel, x, y, z], [rx, ry, rz]]) => [
  panel,
  x,
  BB_Y - (z - BB_Z),
  BB_Z + (y - BB_Y),
  rx,
  ry,
  rz,
]);

/** The playfield turns about a bar near its far edge, carried by the cabinet's sides. */
const SLOPE_DEG = 6.5;
const FIELD_X = (W - 514) / 2;
const PIVOT_AT_MM = 1010;
const PIVOT = { y: 1115, z: 385 } as const;

/** The playfield turned so that its far direction points `deg` above the level. */
function field(deg: number): Spot {
  const rad = (deg * Math.PI) / 180;
  const round = (mm: number): number => Math.round(mm * 10) / 10;
  return [
    "playfield",
    FIELD_X,
    round(PIVOT.y - PIVOT_AT_MM * Math.cos(rad)),
    round(PIVOT.z - PIVOT_AT_MM * Math.sin(rad)),
    deg,
  ];
}

/** So far that the ramps stay clear of the backbox, which stands on the cabinet's rear. */
const LIFTED_DEG = -35;

/** Along the sloping edges of the cabinet's sides, so far below them. */
const GLASS_BELOW_MM = 25;
const GLASS_RISE_DEG = 8.9;
const glass: Spot = [GLASS.id, (W - GLASS.width_mm) / 2, 4, CABINET.frontMm - GLASS_BELOW_MM, GLASS_RISE_DEG];

const POSES: readonly (readonly [id: string, spots: readonly Spot[]])[] = [
  ["play", [field(SLOPE_DEG), glass, ...CABINET_SPOTS, ...upright]],
  ["lifted", [field(LIFTED_DEG), ...CABINET_SPOTS, ...upright]],
  ["folded", [field(SLOPE_DEG), glass, ...CABINET_SPOTS, ...folded]],
];

export const poses: Topic = {
  tables: {
    poses: rows("poses", [
      { id: "play", label: "In play", label_zh: "游玩", usual: "yes" },
      {
        id: "lifted",
        label: "Playfield lifted, front edge up",
        label_zh: "台面掀起（前沿朝上）",
        caution: "Switch off, wait, latch the prop before hands go under.",
        caution_zh: "关机、等待，先锁好撑杆，手才能伸到下面。",
      },
      {
        id: "folded",
        label: "Backbox folded for transport",
        label_zh: "背箱折叠运输",
        caution: "Two people; watch the bundle at the hinge; strap the backbox down.",
        caution_zh: "两人操作；留意铰链处的线束；用带子把背箱绑牢。",
      },
    ]),
    pose_places: rows(
      "pose_places",
      POSES.flatMap(([pose, spots]) =>
        spots.map(([panel, x_mm, y_mm, z_mm, rx_deg = 0, ry_deg = 0, rz_deg = 0]) => ({
          pose,
          panel,
          x_mm,
          y_mm,
          z_mm,
          rx_deg,
          ry_deg,
          rz_deg,
        })),
      ),
    ),
  },
};
