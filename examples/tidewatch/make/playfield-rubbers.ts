import { boxOf } from "@pinwright/kernel";
import { type Bodied, type Body, block, bodiesOf } from "./body-kind.ts";
import { SLING_LEFT, SLING_POST_RADIUS } from "./playfield-plan.ts";
import { mirroredXy, rubber, type Shape, type Xy } from "./shape.ts";
import { type TopPart, topParts } from "./top-part.ts";

/** A ring stretched over posts, which are given anticlockwise; its outer side is `radius` from their axes. */
interface Ring {
  readonly id: string;
  readonly label: string;
  readonly label_zh: string;
  readonly posts: readonly Xy[];
  readonly radius: number;
  readonly strand: number;
}

const wing: readonly Xy[] = [
  [174, 986],
  [142, 957],
  [174, 957],
];
/** The same posts on the other hand, still anticlockwise. */
const onRight = (posts: readonly Xy[], mirror: (at: Xy) => Xy): readonly Xy[] =>
  posts.map(mirror).toReversed();
const acrossTop = ([x, y]: Xy): Xy => [480 - x, y];

/** Thickness of a strand of rubber: common practice, no source. */
const THICK_MM = 3.5;
const THIN_MM = 2;

const RINGS: readonly Ring[] = [
  {
    id: "sling-left",
    label: "Left slingshot rubber",
    label_zh: "左弹弓橡皮圈",
    posts: SLING_LEFT,
    radius: SLING_POST_RADIUS,
    strand: THICK_MM,
  },
  {
    id: "sling-right",
    label: "Right slingshot rubber",
    label_zh: "右弹弓橡皮圈",
    posts: onRight(SLING_LEFT, mirroredXy),
    radius: SLING_POST_RADIUS,
    strand: THICK_MM,
  },
  {
    id: "wing-left",
    label: "Left wing rubber",
    label_zh: "左翼橡皮圈",
    posts: wing,
    radius: 4,
    strand: THIN_MM,
  },
  {
    id: "wing-right",
    label: "Right wing rubber",
    label_zh: "右翼橡皮圈",
    posts: onRight(wing, acrossTop),
    radius: 4,
    strand: THIN_MM,
  },
];

/** Posts that carry rubber rings; their rubber is `radius` in the ring's shape. */
export const RUBBER_POSTS: readonly Xy[] = [
  ...SLING_LEFT,
  ...SLING_LEFT.map(mirroredXy),
  ...wing,
  ...wing.map(acrossTop),
];

const part = (id: string, label: string, label_zh: string, shape: Shape): TopPart => ({
  id: `rubber-${id}`,
  label,
  label_zh,
  shape,
  z: 2,
  height: 24,
});

const shapeOf = ({ posts, radius }: Ring): Shape => rubber(radius, ...posts);

/** Where a strand that lies close to a post begins: clear of the post. */
const POST_ROOM_MM = 5;
const tenth = (value: number): number => Math.round(value * 10) / 10;

/** A ring is a straight strand from post to post along its outer side; within it there is air. */
function strands(ring: Ring): Bodied {
  const { posts, radius, strand } = ring;
  const extent = boxOf(shapeOf(ring));
  if (extent === null) throw new Error(`${ring.id} has no shape.`);
  // The frame of a part on the upper side, as `topParts` places it.
  const [x, y] = [
    Math.round((extent.minXMm + extent.maxXMm) / 2),
    Math.round((extent.minYMm + extent.maxYMm) / 2),
  ];
  const out = radius - strand / 2;
  const short = out - strand / 2 < POST_ROOM_MM - 1 ? 2 * POST_ROOM_MM : 0;
  return {
    type: `dt.top-rubber-${ring.id}`,
    bodies: posts.map(([x0, y0], i): Body => {
      const [x1, y1] = posts[(i + 1) % posts.length] ?? [x0, y0];
      const length = Math.hypot(x1 - x0, y1 - y0);
      return block(
        [`strand-${i + 1}`, "strand of rubber", "橡皮段"],
        [tenth(length - short), strand],
        [0, 24],
        [
          tenth((x0 + x1) / 2 + ((y1 - y0) / length) * out - x),
          tenth((y0 + y1) / 2 + ((x0 - x1) / length) * out - y),
        ],
        tenth((Math.atan2(y1 - y0, x1 - x0) * 180) / Math.PI),
      );
    }),
  };
}

export const playfieldRubbers = topParts([
  ...RINGS.slice(0, 2).map((ring) => part(ring.id, ring.label, ring.label_zh, shapeOf(ring))),
  part("wall-left", "Left wall rubber", "左侧橡皮条", rubber(1.5, [9.5, 409], [9.5, 439])),
  ...RINGS.slice(2).map((ring) => part(ring.id, ring.label, ring.label_zh, shapeOf(ring))),
]);

export const rubberBodies = bodiesOf(RINGS.map(strands));
