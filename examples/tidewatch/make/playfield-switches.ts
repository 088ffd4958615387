import { onPlayfield, rows, type Topic } from "./author.ts";

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

const SWITCHES: readonly Placed[] = [
  ["sw.outlane-left", "dt.rollover", "Left outlane", "左外道", 31, 330],
  ["sw.inlane-left", "dt.rollover", "Left inlane", "左内道", 73, 330],
  ["sw.inlane-right", "dt.rollover", "Right inlane", "右内道", 397, 330],
  ["sw.outlane-right", "dt.rollover", "Right outlane", "右外道", 439, 330],
  ["sw.top-lane-1", "dt.rollover", "Top lane 1", "顶部一号道", 200, 966],
  ["sw.top-lane-2", "dt.rollover", "Top lane 2", "顶部二号道", 240, 966],
  ["sw.top-lane-3", "dt.rollover", "Top lane 3", "顶部三号道", 280, 966],
  ["sw.orbit-left-low", "dt.rollover", "Left orbit, low", "左环道下", 31, 690],
  ["sw.orbit-left-high", "dt.rollover", "Left orbit, high", "左环道上", 34, 780],
  ["sw.orbit-right-low", "dt.rollover", "Right orbit, low", "右环道下", 439, 650],
  ["sw.orbit-right-high", "dt.rollover", "Right orbit, high", "右环道上", 439, 745],
  ["sw.plunger-lane", "dt.rollover", "Plunger lane", "发球道", 486, 150],
  ["sw.plunger-exit", "dt.rollover", "Plunger lane exit", "发球道出口", 486, 720],
  ["sw.fog-1", "dt.standup", "FOG target F", "雾靶 F", 14, 450, 270],
  ["sw.fog-2", "dt.standup", "FOG target O", "雾靶 O", 14, 485, 270],
  ["sw.fog-3", "dt.standup", "FOG target G", "雾靶 G", 14, 520, 270],
  ["sw.anchor-left", "dt.standup", "Left anchor target", "左锚靶", 70, 592],
  ["sw.anchor-right", "dt.standup", "Right anchor target", "右锚靶", 411, 596],
  ["sw.gull-1", "dt.standup", "Gull target 1", "海鸥靶一", 172, 690],
  ["sw.gull-2", "dt.standup", "Gull target 2", "海鸥靶二", 300, 640],
  ["sw.buoy-1", "dt.standup", "Buoy target 1", "浮标靶一", 452, 425, 90],
  ["sw.buoy-2", "dt.standup", "Buoy target 2", "浮标靶二", 452, 455, 90],
  ["sw.wave-1", "dt.standup", "Wave target 1", "浪靶一", 330, 760],
  ["sw.wave-2", "dt.standup", "Wave target 2", "浪靶二", 360, 750],
  ["sw.wave-3", "dt.standup", "Wave target 3", "浪靶三", 390, 740],
  ["sw.star-1", "dt.star-rollover", "Star rollover 1", "星形滚压一", 160, 540],
  ["sw.star-2", "dt.star-rollover", "Star rollover 2", "星形滚压二", 310, 520],
  ["sw.star-3", "dt.star-rollover", "Star rollover 3", "星形滚压三", 100, 470],
  ["sw.star-4", "dt.star-rollover", "Star rollover 4", "星形滚压四", 350, 470],
  ["sw.sling-left-low", "dt.sling-leaf", "Left slingshot, low", "左弹弓下", 124, 290],
  ["sw.sling-left-high", "dt.sling-leaf", "Left slingshot, high", "左弹弓上", 108, 350],
  ["sw.sling-right-low", "dt.sling-leaf", "Right slingshot, low", "右弹弓下", 346, 290],
  ["sw.sling-right-high", "dt.sling-leaf", "Right slingshot, high", "右弹弓上", 362, 350],
  ["sw.rebound-1", "dt.rebound-leaf", "Rebound, left outlane", "回弹一", 20, 410],
  ["sw.rebound-2", "dt.rebound-leaf", "Rebound, right outlane", "回弹二", 452, 400],
  ["sw.rebound-3", "dt.rebound-leaf", "Rebound, behind the lighthouse", "回弹三", 270, 760],
  ["sw.rebound-4", "dt.rebound-leaf", "Rebound, above the wreck", "回弹四", 120, 770],
  ["sw.rebound-5", "dt.rebound-leaf", "Rebound, left of the top lanes", "回弹五", 150, 960],
  ["sw.rebound-6", "dt.rebound-leaf", "Rebound, right of the top lanes", "回弹六", 330, 960],
  ["sw.captive", "dt.captive-leaf", "Captive ball", "被困球", 172, 720],
  ["sw.ramp-left-enter", "dt.gate-micro", "Left ramp entrance", "左坡道入口", 115, 640, 0, "top", 40],
  ["sw.ramp-left-made", "dt.gate-micro", "Left ramp made", "左坡道完成", 115, 860, 0, "top", 80],
  ["sw.ramp-right-enter", "dt.gate-micro", "Right ramp entrance", "右坡道入口", 372, 680, 0, "top", 40],
  ["sw.ramp-right-made", "dt.gate-micro", "Right ramp made", "右坡道完成", 420, 880, 0, "top", 80],
  ["sw.wireform-left", "dt.gate-micro", "Left wireform exit", "左线轨出口", 73, 450, 0, "top", 60],
  ["sw.wireform-right", "dt.gate-micro", "Right wireform exit", "右线轨出口", 397, 450, 0, "top", 60],
];

const SENSORS: readonly Placed[] = [
  ["sn.magnet", "dt.hall", "Ball at the whirlpool", "漩涡球传感器", 235, 528],
  ["sn.cave", "dt.hall", "Ball in the cave mouth", "洞口球传感器", 290, 700],
  ["sn.wreck-tx", "dt.opto-tx", "Wreck beam, emitter", "沉船光束发射", 60, 830],
  ["sn.wreck-rx", "dt.opto-rx", "Wreck beam, receiver", "沉船光束接收", 124, 830],
  ["sn.skill-tx", "dt.opto-tx", "Skill shot beam, emitter", "技巧球光束发射", 464, 640],
  ["sn.skill-rx", "dt.opto-rx", "Skill shot beam, receiver", "技巧球光束接收", 508, 640],
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
  }));

export const playfieldSwitches: Topic = {
  tables: { devices: rows("devices", [...place(SWITCHES, 1), ...place(SENSORS, 1)]) },
};
