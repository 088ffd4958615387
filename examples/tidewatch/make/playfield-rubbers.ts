import { SLING_LEFT, SLING_POST_RADIUS } from "./playfield-plan.ts";
import { mirrored, mirroredXy, rubber, type Shape, type Xy } from "./shape.ts";
import { type TopPart, topParts } from "./top-part.ts";

const ring = (id: string, label: string, label_zh: string, shape: Shape): TopPart => ({
  id: `rubber-${id}`,
  label,
  label_zh,
  shape,
  z: 2,
  height: 24,
});

const sling = rubber(SLING_POST_RADIUS, ...SLING_LEFT);
const wing: readonly Xy[] = [
  [174, 986],
  [142, 957],
  [174, 957],
];
const acrossTop = (posts: readonly Xy[]): readonly Xy[] => posts.map(([x, y]) => [480 - x, y]);

/** Posts that carry rubber rings; their rubber is `radius` in the ring's shape. */
export const RUBBER_POSTS: readonly Xy[] = [
  ...SLING_LEFT,
  ...SLING_LEFT.map(mirroredXy),
  ...wing,
  ...acrossTop(wing),
];

export const playfieldRubbers = topParts([
  ring("sling-left", "Left slingshot rubber", "左弹弓橡皮圈", sling),
  ring("sling-right", "Right slingshot rubber", "右弹弓橡皮圈", mirrored(sling)),
  ring("wall-left", "Left wall rubber", "左侧橡皮条", rubber(1.5, [9.5, 409], [9.5, 439])),
  ring("wing-left", "Left wing rubber", "左翼橡皮圈", rubber(4, ...wing)),
  ring("wing-right", "Right wing rubber", "右翼橡皮圈", rubber(4, ...acrossTop(wing))),
]);
