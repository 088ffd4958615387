import { fromFrame } from "@pinwright/kernel";
import { onPlayfield, rows, type Topic } from "./author.ts";
import {
  SLING_MIDDLE,
  SLING_NORMAL_DEG,
  STORM_TARGETS,
  STORM_WALL,
  stormPoint,
  WRECK_SLOPE,
  wallDeg,
  wallPoint,
} from "./playfield-plan.ts";
import { AXIS_X_MM, type Xy } from "./shape.ts";

type Placed = readonly [
  id: string,
  type: string,
  label: string,
  label_zh: string,
  x: number,
  y: number,
  rotation?: number,
  side?: "top",
  z?: number,
];

/** A point of a slingshot's rubber, `along` mm from its middle towards the far post, for its leaf switch. */
const slingLeaf = (hand: 1 | -1, along: number): readonly [x: number, y: number, rotation: number] => {
  const at = fromFrame(
    { xMm: SLING_MIDDLE[0], yMm: SLING_MIDDLE[1], rotationDeg: SLING_NORMAL_DEG },
    { xMm: -4, yMm: along },
  );
  const x = hand === 1 ? at.xMm : 2 * AXIS_X_MM - at.xMm;
  return [Math.round(x * 2) / 2, Math.round(at.yMm * 2) / 2, hand * SLING_NORMAL_DEG];
};

/** A target in the storm wall: its face lies a little behind the wall's. */
const stormTarget = (along: number) => [...stormPoint(along, 3), wallDeg(STORM_WALL)] as const;

/** A leaf switch whose blade stands close behind a wall's rubber. */
const behindWall = (wall: readonly [Xy, Xy], along: number) =>
  [...wallPoint(wall, along, 4.5), (wallDeg(wall) + 90) % 360] as const;

const SWITCHES: readonly Placed[] = [
  ["sw.outlane-left", "dt.rollover", "Left outlane", "左外道", 29, 380],
  ["sw.inlane-left", "dt.rollover", "Left inlane", "左内道", 73, 380],
  ["sw.inlane-right", "dt.rollover", "Right inlane", "右内道", 397, 380],
  ["sw.outlane-right", "dt.rollover", "Right outlane", "右外道", 441, 380],
  ["sw.top-lane-1", "dt.rollover", "Top lane 1", "顶部一号道", 200, 968],
  ["sw.top-lane-2", "dt.rollover", "Top lane 2", "顶部二号道", 240, 968],
  ["sw.top-lane-3", "dt.rollover", "Top lane 3", "顶部三号道", 280, 968],
  ["sw.orbit-left-low", "dt.rollover", "Left orbit, low", "左环道下", 33, 630],
  ["sw.orbit-left-high", "dt.rollover", "Left orbit, high", "左环道上", 33, 790],
  ["sw.orbit-right-low", "dt.rollover", "Right orbit, low", "右环道下", 440, 640],
  ["sw.orbit-right-high", "dt.rollover", "Right orbit, high", "右环道上", 440, 745],
  ["sw.plunger-lane", "dt.rollover", "Plunger lane", "发球道", 486, 160],
  ["sw.plunger-exit", "dt.rollover", "Plunger lane exit", "发球道出口", 486, 720],
  ["sw.fog-1", "dt.standup", "FOG target F", "雾靶 F", 14, 458, 270],
  ["sw.fog-2", "dt.standup", "FOG target O", "雾靶 O", 14, 490, 270],
  ["sw.fog-3", "dt.standup", "FOG target G", "雾靶 G", 14, 522, 270],
  ["sw.anchor-left", "dt.standup", "Left anchor target", "左锚靶", 73, 630],
  ["sw.anchor-right", "dt.standup", "Right anchor target", "右锚靶", 402.5, 604, 180],
  ["sw.gull-1", "dt.standup", "Gull target 1", "海鸥靶一", 14, 554, 270],
  ["sw.gull-2", "dt.standup", "Gull target 2", "海鸥靶二", 456, 587, 270],
  ["sw.buoy-1", "dt.standup", "Buoy target 1", "浮标靶一", 456, 424, 270],
  ["sw.buoy-2", "dt.standup", "Buoy target 2", "浮标靶二", 14, 584, 270],
  ["sw.wave-1", "dt.standup", "Wave target 1", "浪靶一", ...stormTarget(STORM_TARGETS[0])],
  ["sw.wave-2", "dt.standup", "Wave target 2", "浪靶二", ...stormTarget(STORM_TARGETS[1])],
  ["sw.wave-3", "dt.standup", "Wave target 3", "浪靶三", ...stormTarget(STORM_TARGETS[2])],
  ["sw.star-1", "dt.star-rollover", "Star rollover 1", "星形滚压一", 157, 568],
  ["sw.star-2", "dt.star-rollover", "Star rollover 2", "星形滚压二", 190, 550],
  ["sw.star-3", "dt.star-rollover", "Star rollover 3", "星形滚压三", 100, 450],
  ["sw.star-4", "dt.star-rollover", "Star rollover 4", "星形滚压四", 372, 444],
  ["sw.sling-left-low", "dt.sling-leaf", "Left slingshot, low", "左弹弓下", ...slingLeaf(1, -34)],
  ["sw.sling-left-high", "dt.sling-leaf", "Left slingshot, high", "左弹弓上", ...slingLeaf(1, 34)],
  ["sw.sling-right-low", "dt.sling-leaf", "Right slingshot, low", "右弹弓下", ...slingLeaf(-1, -34)],
  ["sw.sling-right-high", "dt.sling-leaf", "Right slingshot, high", "右弹弓上", ...slingLeaf(-1, 34)],
  ["sw.rebound-1", "dt.rebound-leaf", "Rebound, left wall", "左侧回弹", 7, 424],
  ["sw.rebound-2", "dt.rebound-leaf", "Rebound, left orbit", "左环道回弹", 65, 700],
  ["sw.rebound-3", "dt.rebound-leaf", "Rebound, storm wall", "风暴墙回弹", ...behindWall(STORM_WALL, 168)],
  ["sw.rebound-4", "dt.rebound-leaf", "Rebound, wreck slope", "沉船斜坡回弹", ...behindWall(WRECK_SLOPE, 82)],
  ["sw.rebound-5", "dt.rebound-leaf", "Rebound, left wing", "左翼回弹", 164, 963, 90],
  ["sw.rebound-6", "dt.rebound-leaf", "Rebound, right wing", "右翼回弹", 316, 963, 90],
  ["sw.captive", "dt.captive-leaf", "Captive ball at rest", "被困球到位", 73, 597],
  ["sw.ramp-left-enter", "dt.gate-micro", "Left ramp entrance", "左坡道入口", 115, 640, 0, "top", 48],
  ["sw.ramp-left-made", "dt.gate-micro", "Left ramp made", "左坡道完成", 115, 800, 0, "top", 94],
  ["sw.ramp-right-enter", "dt.gate-micro", "Right ramp entrance", "右坡道入口", 363, 660, 0, "top", 48],
  ["sw.ramp-right-made", "dt.gate-micro", "Right ramp made", "右坡道完成", 363, 800, 0, "top", 98],
  ["sw.wireform-left", "dt.gate-micro", "Left wireform exit", "左线轨出口", 73, 440, 0, "top", 66],
  ["sw.wireform-right", "dt.gate-micro", "Right wireform exit", "右线轨出口", 397, 440, 0, "top", 66],
];

const SENSORS: readonly Placed[] = [
  ["sn.magnet", "dt.hall", "Ball at the whirlpool", "漩涡球传感器", 262, 526, 90],
  ["sn.cave", "dt.hall", "Ball in the cave mouth", "洞口球传感器", 314, 643, 90],
  ["sn.wreck-tx", "dt.opto-tx", "Wreck beam, emitter", "沉船光束发射", 59, 803],
  ["sn.wreck-rx", "dt.opto-rx", "Wreck beam, receiver", "沉船光束接收", 125, 803],
  ["sn.skill-tx", "dt.opto-tx-post", "Skill shot beam, emitter", "技巧球光束发射", 465, 640],
  ["sn.skill-rx", "dt.opto-rx-post", "Skill shot beam, receiver", "技巧球光束接收", 507, 640],
];

const place = (list: readonly Placed[], first: number) =>
  list.map(([id, type, label, label_zh, x, y, rotation, side, z], i) => ({
    id,
    type,
    label,
    label_zh,
    ...onPlayfield(side ?? "under", x, y, rotation),
    z_mm: z ?? 0,
    number: first + i,
    light_from: id.endsWith("-rx") ? id.replace(/-rx$/u, "-tx") : null,
  }));

export const playfieldSwitches: Topic = {
  tables: { devices: rows("devices", [...place(SWITCHES, 1), ...place(SENSORS, SWITCHES.length + 1)]) },
};
