import { adjust, build, coilIn, cycle, gapOf, RETIGHTEN, strokeOf } from "./bench-lines.ts";
import type { BenchSteps } from "./mechanism-steps.ts";

/** Mechanisms of ramps and gates, toys, and what knocks, rings and shakes. */
export const SHOW_STEPS: BenchSteps = {
  "mt.diverter": [
    coilIn(),
    build("Shaft into its bushing; lever with its rubber stops.", "轴入衬套；拨杆连橡胶限位。", 3),
    adjust("Throw of the blade", "分道片摆角", "angle gauge", ["°", 36, 38, 40]),
    gapOf("Gap of the position switch", "位置开关间隙", 0.8, 0.2, 0.2),
    cycle("200 throws; the blade stops against rubber on both sides.", "摆动 200 次；两侧均以橡胶限位。", 4),
    RETIGHTEN,
  ],
  "mt.lock": [
    coilIn(),
    build(
      "Release pin and lever; three ball switches on their rail.",
      "释放销与拨杆；三个球开关装于轨上。",
      5,
    ),
    adjust("Pin clear of the ball when it is drawn", "销退回时离球", "test ball", ["mm", 0.5, 1, 2]),
    gapOf("Gap of each ball switch", "各球开关间隙", 0.8, 0.2, 0.2),
    cycle("50 releases, one ball each.", "释放 50 次，每次一球。", 5),
    RETIGHTEN,
  ],
  "mt.gate": [
    coilIn(2),
    build("Rod and wire; ball switch.", "拉杆与闸门线；过球开关。", 2.5),
    adjust("Wire above the playing surface when it hangs", "闸门线下垂时离台面", "height gauge", [
      "mm",
      12,
      13,
      14,
    ]),
    cycle("200 throws; the wire swings free.", "动作 200 次；闸门线自由摆动。", 3),
    RETIGHTEN,
  ],
  "mt.lifter": [
    coilIn(),
    build("Push rod and lever; flap switch.", "顶杆与拨杆；翻板开关。", 2.5),
    adjust(
      "Flap above the ramp's mouth when it lies flat",
      "翻板放平时高出坡道口",
      "straight edge and feeler",
      ["mm", 0, 0.2, 0.5],
    ),
    strokeOf(16),
    cycle("200 lifts; the flap lies flat within 0.5 mm.", "升降 200 次；翻板放平误差 0.5 mm 以内。", 3),
    RETIGHTEN,
  ],
  "mt.beacon": [
    build("Gear motor onto the plate; coupling on its flat.", "减速电机装于底板；联轴器对平面。", 3),
    build(
      "Tower, lantern and two beam lamps; wires through the hollow shaft.",
      "塔身、灯室与两只光束灯；导线穿过空心轴。",
      8,
    ),
    gapOf("Gap between home switch and cam", "原位开关与凸轮间隙", 0.5, 0.2, 0.2),
    adjust("Home position", "原位角度", "angle gauge", ["°", -2, 0, 2]),
    cycle("30 minutes running; home found within 2 degrees.", "运转 30 分钟；原位误差 2 度以内。", 30),
    RETIGHTEN,
  ],
  "mt.ship": [
    build("Crank motor onto the plate; crank pin greased.", "曲柄电机装于底板；曲柄销涂脂。", 3),
    build("Arm and ship; both limit switches.", "摇臂与船模；两个限位开关。", 5),
    adjust("Roll to port", "左舷摇角", "angle gauge", ["°", 11, 12, 13]),
    adjust("Roll to starboard", "右舷摇角", "angle gauge", ["°", 11, 12, 13]),
    cycle("30 minutes rocking.", "摇晃 30 分钟。", 30),
    RETIGHTEN,
  ],
  "mt.knocker": [
    coilIn(),
    build("Anvil onto the plate.", "砧板装于底板。", 1),
    gapOf("Gap between plunger and anvil at rest", "静止时铁芯与砧板间隙", 6, 1, 1),
    cycle("50 knocks.", "敲击 50 次。", 1.5),
    RETIGHTEN,
  ],
  "mt.bell": [
    coilIn(),
    build("Bell onto its pillar with a felt washer.", "钟装于立柱，加毛毡垫。", 2),
    gapOf("Gap between striker and bell at rest", "静止时槌与钟间隙", 2, 0.5, 0.5),
    cycle("50 strokes, clear tone.", "敲击 50 次，音色清亮。", 2),
    RETIGHTEN,
  ],
  "mt.shaker": [
    build("Motor into its cradle; rubber between.", "电机装入托座，垫橡胶。", 4),
    build("Weights onto both ends, set screws on the flats.", "两端装偏心块，紧定螺钉对平面。", 3),
    adjust("Angle between the two weights", "两偏心块夹角", "angle gauge", ["°", -3, 0, 3]),
    cycle("5 minutes, on and off each second.", "运转 5 分钟，每秒通断一次。", 6),
    RETIGHTEN,
  ],
  "mt.tide-clock": [
    build("Gear motor onto the plate; hand and dial.", "减速电机装于底板；指针与表盘。", 5),
    build("Home switch and cam.", "原位开关与凸轮。", 2),
    gapOf("Gap between home switch and cam", "原位开关与凸轮间隙", 0.5, 0.2, 0.2),
    adjust("Hand at home", "指针原位", "dial", ["°", -2, 0, 2]),
    cycle("30 minutes running; home found within 2 degrees.", "运转 30 分钟；原位误差 2 度以内。", 30),
    RETIGHTEN,
  ],
};
