import { type Bodied, type Body, block, bodiesOf, round } from "./body-kind.ts";

/** A button's barrel goes through 18 mm of wood. */
const WOOD_MM = 18;

const feet = (width: number, depth: number, thickness: number): Body =>
  block(["feet", "mounting feet", "安装脚"], [width, depth], [0, thickness]);

const supply = (type: string, width: number, depth: number, height: number): Bodied => ({
  type,
  bodies: [
    feet(width, depth, 2),
    // It stands on two rails: its wires pass below.
    ...[1, -1].map((side) =>
      block(
        [side > 0 ? "rail-right" : "rail-left", "rail", "导轨"],
        [6, depth],
        [2, 12],
        [side * (width / 2 - 15), 0],
      ),
    ),
    block(["case", "case", "外壳"], [width - 20, depth], [12, height]),
  ],
});

const speaker = (type: string, size: number, basket: number, height: number): Bodied => ({
  type,
  bodies: [
    block(["flange", "flange", "法兰"], [size, size], [0, 6]),
    round(["basket", "basket with magnet", "盆架与磁钢"], basket, [6, height]),
  ],
});

/** Devices of the cabinet and the backbox, where a box about the whole says too much. */
export const cabinetBodies = bodiesOf([
  {
    type: "dt.inlet",
    bodies: [
      block(["flange", "flange", "法兰"], [50, 30], [0, 3]),
      block(["body", "body", "插座体"], [28, 22], [-WOOD_MM - 8, 32]),
    ],
  },
  {
    type: "dt.mains-switch",
    bodies: [
      block(["flange", "flange", "法兰"], [34, 30], [0, 2]),
      block(["body", "body", "开关体"], [26, 20], [-WOOD_MM - 8, 30]),
    ],
  },
  {
    type: "dt.mains-filter",
    bodies: [feet(100, 24, 1.5), block(["case", "case", "外壳"], [80, 56], [0, 42])],
  },
  {
    type: "dt.mains-duct",
    bodies: [
      feet(36, 330, 2),
      // Its walls are slotted for the wires.
      block(["wall-left", "left wall", "左壁"], [2, 330], [8, 40], [-17, 0]),
      block(["wall-right", "right wall", "右壁"], [2, 330], [8, 40], [17, 0]),
    ],
  },
  supply("dt.psu-48", 240, 126, 60),
  supply("dt.psu-12-150", 190, 98, 45),
  supply("dt.psu-12-100", 160, 98, 40),
  {
    type: "dt.earth-bar",
    bodies: [feet(200, 18, 3), block(["bar", "bar with its studs", "铜排与螺柱"], [184, 14], [3, 22])],
  },
  {
    type: "dt.button-lit",
    bodies: [
      round(["barrel", "barrel", "按钮筒"], 26, [-WOOD_MM - 10, 60]),
      round(["nut", "ring nut", "环形螺母"], 34, [0, 8]),
    ],
  },
  {
    type: "dt.flip-button",
    bodies: [
      round(["barrel", "barrel", "按钮筒"], 24, [-WOOD_MM - 12, 20]),
      block(["leaf", "leaf switch", "簧片开关"], [14, 26], [20, 46]),
    ],
  },
  {
    type: "dt.service-button",
    bodies: [round(["barrel", "barrel", "按钮筒"], 12, [-8, 24])],
  },
  {
    type: "dt.tilt-bob",
    bodies: [
      block(["bracket", "bracket", "支架"], [40, 24], [0, 2]),
      block(["bob", "rod, ring and bob", "摆杆、环与摆锤"], [16, 24], [2, 90]),
    ],
  },
  {
    type: "dt.door-micro",
    bodies: [
      block(["bracket", "bracket", "支架"], [28, 16], [0, 1.5]),
      block(["switch", "switch", "开关体"], [14, 16], [1.5, 28]),
    ],
  },
  {
    type: "dt.lamp-bb",
    bodies: [round(["socket", "socket", "灯座"], 16, [0, 20]), round(["bulb", "bulb", "灯泡"], 10, [-19, 0])],
  },
  speaker("dt.speaker-100", 104, 88, 48),
  speaker("dt.speaker-165", 168, 144, 76),
]);
