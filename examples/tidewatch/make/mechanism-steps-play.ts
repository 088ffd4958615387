import { adjust, build, coilIn, cycle, gapOf, RETIGHTEN, strokeOf } from "./bench-lines.ts";
import type { BenchLine, BenchSteps } from "./mechanism-steps.ts";

const flipper: readonly BenchLine[] = [
  coilIn(4),
  build("Crank and shaft into the bushing; return spring hooked in.", "曲柄与轴装入衬套，挂上复位弹簧。", 3),
  build(
    "End-of-stroke switch onto the plate, lugs away from the crank.",
    "行程末端开关装于底板，焊片背向曲柄。",
    1.5,
  ),
  gapOf("End-of-stroke gap at rest", "静止时行程末端开关间隙", 2, 0.3, 0.3),
  adjust("Switch closes before the end of the stroke", "开关在行程末端前闭合", "depth gauge", [
    "mm",
    1,
    2,
    3,
  ]),
  adjust("Play of the shaft along its axis", "轴向间隙", "feeler gauge", ["mm", 0.2, 0.4, 0.6]),
  cycle("500 strokes; the bat is free and rubs nowhere.", "循环 500 次；拨板自由，无擦碰。", 6),
  RETIGHTEN,
];

const slingshot: readonly BenchLine[] = [
  coilIn(),
  build("Arm onto its pin with a new circlip; spring hooked in.", "臂装于销轴并换新卡簧，挂上弹簧。", 2),
  strokeOf(14),
  adjust("Arm clear of the slot on either side", "臂与槽两侧间隙", "slot gauge", ["mm", 0.8, 1.5, 2.2]),
  cycle(
    "200 strokes; the arm returns by itself and does not touch the slot.",
    "循环 200 次；臂自行复位，不碰槽边。",
    3,
  ),
  RETIGHTEN,
];

/** Mechanisms that the ball meets. */
export const PLAY_STEPS: BenchSteps = {
  "mt.flipper-left": flipper,
  "mt.flipper-right": flipper,
  "mt.flipper-upper": flipper,
  "mt.slingshot-left": slingshot,
  "mt.slingshot-right": slingshot,
  "mt.bumper": [
    coilIn(4),
    build(
      "Rods through the armature plate; ring and skirt onto the body.",
      "拉杆穿过衔铁板；环与裙座装于柱身。",
      4,
    ),
    build("Spoon switch under the skirt's stem.", "勺形开关装于裙座柄下。", 1.5),
    gapOf("Gap of the spoon switch at rest", "静止时勺形开关间隙", 0.8, 0.2, 0.2),
    adjust("Ring above the playfield when it is down", "环落下时离台面高度", "ring gauge", [
      "mm",
      0.8,
      1,
      1.5,
    ]),
    cycle(
      "200 strokes; the skirt tilts the spoon from all sides.",
      "循环 200 次；裙座从各方向均能触动勺形开关。",
      4,
    ),
    RETIGHTEN,
  ],
  "mt.drop-bank": [
    build("Four targets with their springs into the frame.", "四个落靶连弹簧装入框架。", 6),
    coilIn(5),
    build("Reset bar, trip bar and the five switches.", "复位杆、释放杆与五个开关。", 6),
    adjust("Target above the playfield when it stands", "靶片立起高度", "height gauge", [
      "mm",
      37.5,
      38,
      38.5,
    ]),
    adjust("Target below the playfield when it is down", "靶片落下低于台面", "depth gauge", [
      "mm",
      0.3,
      0.8,
      1.5,
    ]),
    adjust("Force that drops a target", "落靶所需力", "spring balance", ["N", 0.6, 0.9, 1.3]),
    cycle(
      "200 resets; each target drops alone when hit, all stand after reset.",
      "复位 200 次；各靶单独击落，复位后全部立起。",
      8,
    ),
    RETIGHTEN,
  ],
  "mt.drop-single": [
    build("Target with its spring into the frame.", "落靶连弹簧装入框架。", 2),
    coilIn(4),
    build("Trip coil, reset lever and switch.", "释放线圈、复位杆与开关。", 3),
    adjust("Target above the playfield when it stands", "靶片立起高度", "height gauge", [
      "mm",
      37.5,
      38,
      38.5,
    ]),
    adjust("Target below the playfield when it is down", "靶片落下低于台面", "depth gauge", [
      "mm",
      0.3,
      0.8,
      1.5,
    ]),
    cycle("200 resets and 200 trips.", "复位 200 次并释放 200 次。", 6),
    RETIGHTEN,
  ],
  "mt.saucer": [
    build(
      "Cup into the plate; its rim flush with the playfield gauge.",
      "球碗装入底板；碗口与台面规平齐。",
      2,
    ),
    coilIn(),
    build("Switch under the cup.", "开关装于碗下。", 1.5),
    adjust("Switch closes with the ball in the cup", "球入碗时开关闭合余量", "test ball", [
      "mm",
      0.5,
      1,
      1.5,
    ]),
    adjust("Direction of the throw", "踢出方向", "mark on the throw board", ["°", -3, 0, 3]),
    cycle("50 balls kicked out to the same mark.", "踢出 50 球，均落在同一标记。", 5),
    RETIGHTEN,
  ],
  "mt.up-kicker": [
    build("Cup and tube onto the frame.", "球碗与管装于框架。", 3),
    coilIn(4),
    build("Ball switch beside the cup.", "到位开关装于碗侧。", 1.5),
    strokeOf(40),
    cycle("50 balls lifted, none falls back.", "顶起 50 球，无一回落。", 5),
    RETIGHTEN,
  ],
  "mt.trough": [
    build(
      "Channel, funnel and exit tube riveted and checked for burrs.",
      "球槽、落球斗与出球管铆接，检查毛刺。",
      6,
    ),
    coilIn(4),
    build("Exit and drain switches.", "出口与落球口开关。", 3),
    adjust("Fall of the channel", "球槽坡度", "spirit level with scale", ["°", 2.5, 3, 4]),
    adjust("Gap between the stop and the fourth ball", "挡块与第四球间隙", "feeler gauge", [
      "mm",
      0.5,
      1,
      1.5,
    ]),
    cycle(
      "50 single balls ejected, never two; four balls settle against the stop.",
      "单球发射 50 次，绝不出双球；四球均靠挡块停稳。",
      8,
    ),
    RETIGHTEN,
  ],
  "mt.plunger": [
    coilIn(4),
    build("Fork and stem; spring with its washer.", "拨叉与柄；弹簧连垫片。", 2),
    gapOf("Gap between fork and ball at rest", "静止时拨叉与球间隙", 1, 0.5, 0.5),
    adjust("Fork in the middle of the lane", "拨叉居中于球道", "lane gauge", ["mm", -0.5, 0, 0.5]),
    cycle("50 balls reach the top of the arch.", "50 球均到达顶部弧轨。", 6),
    RETIGHTEN,
  ],
  "mt.magnet": [
    build("Coil over the core; plate and washer of brass.", "线圈套于铁芯；黄铜垫片与底板。", 4),
    adjust("Core below the playing surface", "铁芯低于台面", "depth gauge", ["mm", 0, 0.1, 0.2]),
    adjust("Resistance of the winding, cold", "冷态绕组电阻", "meter, four wires", ["Ω", 7.6, 8, 8.4]),
    cycle("10 grabs of 3 s; the winding stays below 90 °C.", "吸球 10 次各 3 秒；绕组低于 90 °C。", 4),
    RETIGHTEN,
  ],
  "mt.up-post": [
    coilIn(),
    build("Post with its rubber; switch and lever.", "升降柱连胶圈；开关与拨杆。", 3),
    adjust("Post below the playing surface when it is down", "落下时柱低于台面", "depth gauge", [
      "mm",
      0,
      0.2,
      0.5,
    ]),
    adjust("Post above the playing surface when it is up", "升起时柱高出台面", "height gauge", [
      "mm",
      24,
      26,
      27,
    ]),
    cycle("200 strokes; flush when down.", "循环 200 次；落下时平齐。", 3),
    RETIGHTEN,
  ],
  "mt.kickback": [
    coilIn(),
    build("Arm and spring; home switch.", "臂与弹簧；原位开关。", 2.5),
    strokeOf(28),
    gapOf("Gap of the home switch", "原位开关间隙", 0.8, 0.2, 0.2),
    cycle("50 balls kicked back past the slingshot.", "踢回 50 球，均越过弹弓。", 5),
    RETIGHTEN,
  ],
  "mt.spinner": [
    build(
      "Plate onto its wire; wire into the post with a drop of oil.",
      "旋转片装于钢丝；钢丝入柱并滴油。",
      3,
    ),
    build("Switch above the crank of the wire.", "开关装于钢丝曲柄上方。", 1.5),
    gapOf("Gap between lever and crank", "拨杆与曲柄间隙", 0.6, 0.2, 0.2),
    cycle("Spins for 8 s from one flick; every half turn counts.", "一拨可转 8 秒；每半圈计数。", 2),
    RETIGHTEN,
  ],
};
