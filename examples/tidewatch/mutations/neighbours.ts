import type { LineResult, Solid } from "@pinwright/engine";
import { ids, least, some } from "./about.ts";
import type { Sound } from "./mutation.ts";
import { screwsFor, singleMechanisms, solidsNear } from "./screws.ts";

const BODY = "bo.other";

interface Pair {
  readonly a: Solid;
  readonly b: Solid;
  readonly gapMm: number;
}

/** Gap of two boxes in plan; 0 where they overlap. */
export const boxGap = ({ box: a }: Solid, { box: b }: Solid): number =>
  Math.hypot(
    Math.max(0, a.minXMm - b.maxXMm, b.minXMm - a.maxXMm),
    Math.max(0, a.minYMm - b.maxYMm, b.minYMm - a.maxYMm),
  );

/** Solids of single mechanisms on the underside of the playfield, each with its nearest of other mechanisms there. */
export function neighbours(sound: Sound): readonly Pair[] {
  const solids = [...sound.fastening.solids.values()]
    .flat()
    .filter(({ kind, panelId, side }) => kind === "mechanism" && panelId === "playfield" && side === "under");
  const single = ids(...singleMechanisms(sound).map(({ id }) => id));
  return solids
    .filter(({ itemId }) => single(itemId))
    .map((a) => {
      const others = solids.filter(({ itemId }) => itemId !== a.itemId);
      const b = least(others, (other) => boxGap(a, other));
      return { a, b, gapMm: boxGap(a, b) };
    });
}

export const centreOf = ({ box }: Solid) => ({
  xMm: (box.minXMm + box.maxXMm) / 2,
  yMm: (box.minYMm + box.maxYMm) / 2,
});

/** A body that a mechanism type has more, from the mechanism's place towards another place. */
export function reaching(
  sound: LineResult,
  mechanismId: string,
  to: { readonly xMm: number; readonly yMm: number },
  heights: readonly [from: number, to: number],
  depthMm = 2,
) {
  const item = sound.machine.items.get(mechanismId);
  if (item?.kind !== "mechanism") throw new Error(`${mechanismId} is no mechanism.`);
  const { place } = item;
  const [dx, dy] = [to.xMm - place.xMm, to.yMm - place.yMm];
  const rad = (-place.rotationDeg * Math.PI) / 180;
  const [x, y] = [dx * Math.cos(rad) - dy * Math.sin(rad), dx * Math.sin(rad) + dy * Math.cos(rad)];
  return {
    id: BODY,
    mechanism_type: item.type.id,
    x_mm: Math.round(x * 50) / 100,
    y_mm: Math.round(y * 50) / 100,
    rotation_deg: Math.round((Math.atan2(y, x) * 18000) / Math.PI) / 100,
    width_mm: Math.round(Math.hypot(x, y)) + 2,
    depth_mm: depthMm,
    from_mm: heights[0],
    to_mm: heights[1],
  };
}

/** Boards on stand-offs, with their stand-offs, that a rule does not name. */
export function boardsFor(sound: Sound, rule: string) {
  const standoffs = screwsFor(sound, rule).filter(({ item }) => item.type.kind === "standoff");
  return [...sound.machine.items.values()].flatMap((item) => {
    const own = standoffs.filter(({ item: { holds } }) => holds === item.id);
    return item.kind === "board" && own.length > 0 ? [{ item, own }] : [];
  });
}

/** Free straight lanes of the underside of the playfield, with the harness that runs there and what is near. */
export function freeLanes(sound: Sound, roomMm: number) {
  return [...sound.harnesses.values()].flatMap(({ harness, route, branches }) => {
    const nodes = new Map(route.nodes.map((node) => [node.id, node.place]));
    return branches.flatMap((branch) => {
      const [a, b] = [nodes.get(branch.a), nodes.get(branch.b)];
      if (branch.kind !== "lane" || a === undefined || b === undefined) return [];
      if (a.panelId !== "playfield" || a.side !== "under" || b.side !== "under") return [];
      const middle = { xMm: (a.xMm + b.xMm) / 2, yMm: (a.yMm + b.yMm) / 2 };
      const near = solidsNear(sound, a.panelId, middle, roomMm).filter(({ lowMm }) => lowMm < -13);
      const isWithin = middle.xMm > 30 && middle.xMm < 480;
      return near.length > 0 || !isWithin ? [] : [{ branch, harnessId: harness.id, middle }];
    });
  });
}

/** What a mechanism that grows may meet beside the one thing that it was to meet. */
export function aroundGrown(mechanismId: string) {
  const rules = [
    "solids-clash",
    "board-over",
    "bundle-blocked",
    "driver-blocked",
    "order-loop",
    "service-deep",
  ];
  return rules.map((rule) => some(rule, ids(mechanismId)));
}
