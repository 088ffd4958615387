import { RAMP_LEFT, RAMP_RIGHT, SLING_LEFT } from "./playfield-plan.ts";
import { arc, box, mirrored, polygon, rubber, type Shape, strip, type Xy } from "./shape.ts";
import { type TopPart, topParts } from "./top-part.ts";

/** Ramps, wireforms and plastics: everything here is above the ball on the playing surface. */
const over = (
  id: string,
  label: string,
  label_zh: string,
  shape: Shape,
  z: number,
  height: number,
): TopPart => ({
  id,
  label,
  label_zh,
  shape,
  z,
  height,
  ...(/^(plastic|ramp)-/.test(id) ? { plastic: true } : {}),
});

/** A rising ramp from where its floor clears a ball to `endY`. */
const deck = ({ x, lowEndY }: { x: number; lowEndY: number }, width: number, endY: number): Shape =>
  box(x - width / 2, lowEndY, x + width / 2, endY);

/** Two rails and their rungs carry a ball: as wide as this. */
const WIREFORM_MM = 34;
const wireform = (...line: readonly Xy[]): Shape => strip(WIREFORM_MM, ...line);

const slingPlastic = rubber(6, ...SLING_LEFT);

export const playfieldRamps = topParts([
  over("ramp-left-deck", "Left ramp", "左坡道", deck(RAMP_LEFT, 56, 812), 33, 46),
  over(
    "wireform-left",
    "Left wireform",
    "左线轨",
    wireform([115, 830], ...arc([78, 832], 37, 0, 180), [41, 620]),
    72,
    20,
  ),
  over(
    "wireform-left-low",
    "Left wireform, lower end",
    "左线轨下段",
    wireform([41, 586], [52, 500], [73, 440], [73, 420]),
    44,
    20,
  ),
  over("ramp-right-deck", "Right ramp", "右坡道", deck(RAMP_RIGHT, 52, 846), 33, 58),
  over(
    "ramp-right-fork",
    "Right ramp fork",
    "右坡道分岔",
    polygon([337, 846], [389, 846], [409, 905], [333, 905]),
    84,
    6,
  ),
  over(
    "wireform-cross",
    "Wireform over the top lanes",
    "顶部横跨线轨",
    wireform([350, 923], [344, 960], [316, 1000], [250, 1018], [160, 1008], [96, 950], [61.3, 902]),
    76,
    18,
  ),
  over(
    "wireform-harbour",
    "Harbour wireform",
    "港湾线轨",
    wireform(
      [392, 923],
      [404, 970],
      [424, 1005],
      ...arc([452, 1014], 26, 160, 0),
      [478, 970],
      [470, 850],
      [440, 760],
      [440, 620],
    ),
    76,
    18,
  ),
  over(
    "wireform-right-low",
    "Right wireform, lower end",
    "右线轨下段",
    wireform([436, 586], [405, 500], [397, 420]),
    44,
    20,
  ),
  over("plastic-sling-left", "Left slingshot plastic", "左弹弓塑料板", slingPlastic, 30, 3),
  over("plastic-sling-right", "Right slingshot plastic", "右弹弓塑料板", mirrored(slingPlastic), 30, 3),
  over(
    "apron-plate",
    "Apron",
    "裙板",
    polygon([10, 0], [460, 0], [460, 236], [358, 150], [300, 117], [170, 117], [112, 150], [10, 236]),
    32,
    3,
  ),
]);
