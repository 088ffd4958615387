import { directionDeg, fromFrame } from "@pinwright/kernel";
import { arc, mirroredXy, type Xy } from "./shape.ts";

/** Left edge of the lane divider, and its width: the plunger lane lies to its right. */
export const DIVIDER = { minX: 460, maxX: 468, minY: 122, maxY: 768 } as const;

/** The arch at the far end: ball side of the strip. */
export const ARCH = { centre: [257, 800], radius: 247 } as const satisfies { centre: Xy; radius: number };

export const FLIPPER_LEFT: Xy = [151, 185];
export const FLIPPER_RIGHT = mirroredXy(FLIPPER_LEFT);
export const FLIPPER_UPPER: Xy = [436, 480];

/** Posts of the left slingshot: far, near the inlane, near the flipper. */
export const SLING_LEFT: readonly [Xy, Xy, Xy] = [
  [100, 400],
  [100, 300],
  [143, 264],
];
export const SLING_POST_RADIUS = 8;
/** Middle of the side that the left slingshot throws from. */
export const SLING_MIDDLE: Xy = [121.5, 332];
/** Direction in which the left slingshot throws: square to the line from its far post to the one at the flipper. */
export const SLING_NORMAL_DEG = 17.55;

/** Guide between left inlane and outlane; its upper edge leads onto the flipper. */
export const INLANE_GUIDE: readonly Xy[] = [
  [51, 405],
  [51, 277],
  [143, 200.8],
];

export const LIGHTHOUSE: Xy = [240, 722];
export const BUMPERS: readonly [Xy, Xy, Xy] = [
  [170, 905],
  [310, 905],
  [240, 826],
];

/** Middles of the drop targets. */
export const DROP_X: readonly number[] = [205.5, 228.5, 251.5, 274.5];
const CAVE: Xy = [314, 674];

/** Middles of the ramp mouths, and the place up to which a ramp's floor is lower than a ball is high. */
export const RAMP_LEFT = { x: 115, mouthY: 600, lowEndY: 690 } as const;
export const RAMP_RIGHT = { x: 363, mouthY: 600, lowEndY: 690 } as const;

/** Slope above the wreck, and the one behind the lighthouse: both shed the ball towards a way down. */
export const WRECK_SLOPE: readonly [Xy, Xy] = [
  [57, 800],
  [144, 728],
];
export const STORM_WALL: readonly [Xy, Xy] = [
  [250, 757],
  [418, 690],
];
/** A point of a straight wall, `along` mm from its first end and `behind` mm to the right of the way along it. */
export function wallPoint([[x0, y0], [x1, y1]]: readonly [Xy, Xy], along: number, behind = 0): Xy {
  const rotationDeg = wallDeg([
    [x0, y0],
    [x1, y1],
  ]);
  const at = fromFrame({ xMm: x0, yMm: y0, rotationDeg }, { xMm: along, yMm: -behind });
  return [Math.round(at.xMm * 4) / 4, Math.round(at.yMm * 4) / 4];
}

/** Direction of a wall, degrees. */
export const wallDeg = ([[x0, y0], [x1, y1]]: readonly [Xy, Xy]): number =>
  Math.round(directionDeg({ xMm: x1 - x0, yMm: y1 - y0 }) * 10) / 10;

export const stormPoint = (along: number, behind = 0): Xy => wallPoint(STORM_WALL, along, behind);

/** Middles of the targets in the storm wall, mm from the lighthouse, and the pieces of wall between them. */
export const STORM_TARGETS: readonly [number, number, number] = [58, 102, 136];
export const STORM_PIECES: readonly (readonly [from: number, to: number])[] = [
  [0, 42],
  [74, 86],
  [118, 120],
  [152, 180.8],
];

export const WRECK_HOLE: Xy = [92, 803];

export const TOP_LANE_GUIDES_X: readonly number[] = [180, 220, 260, 300];

/** Where a ball rests on purpose: against the plunger, under the apron, in a hole. */
export const DRAIN: Xy = [235, 77];
export const TROUGH_EXIT: Xy = [446, 88];

export const caveBack = (): Xy[] => arc([CAVE[0], 680], 24, 180, 30);
