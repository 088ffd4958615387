import {
  type BoxMm,
  boxOf,
  joinBoxes,
  NestedQuery,
  type PointMm,
  pointInRing,
  type SegmentMm,
  SharedMemory,
  sameMembers,
  segmentsMeet,
} from "@pinwright/kernel";
import { unitOf } from "../../fastening/index.ts";
import {
  groupRows,
  type HarnessResult,
  type Machine,
  type Place,
  type Precedence,
  type Side,
  type Solid,
} from "../../model/index.ts";
import { LANDING } from "./weights.ts";

/** A part of a board or mechanism that stands off its side, so that wires pass beneath it. */
interface Roof {
  readonly solid: Solid;
  readonly clearMm: number;
}

/** Everything of one item beneath which wires may lie. */
interface Cover {
  readonly itemId: string;
  readonly panelId: string;
  readonly side: Side;
  readonly roofs: readonly Roof[];
  readonly box: BoxMm;
}

/** Where a harness lies beside its panel's face. */
interface Laid extends SegmentMm {
  readonly id: string;
  readonly panelId: string;
  readonly side: Side;
  readonly heightMm: number;
  /** End of a tail. */
  readonly landing: { readonly id: string; readonly at: PointMm } | null;
}

/** Branches of a harness, and the sides of panels that they are on with the area that they take there. */
interface LaidHarness {
  readonly branches: readonly Laid[];
  readonly faces: readonly { readonly name: string; readonly box: BoxMm }[];
}

/** What begins lower than this leaves no room for wires: common practice, no source. */
const LEAST_ROOM_MM = 3;

const NONE: readonly Roof[] = [];

/** What is wired before it is closed over, with a memory. */
export class WiredEdges {
  readonly #roofs = new SharedMemory<readonly Solid[], readonly Roof[]>();
  readonly #laid = new SharedMemory<HarnessResult["route"], LaidHarness>();
  readonly #covers = new Map<string, Cover>();
  readonly #edges = new NestedQuery<readonly Precedence[], string | null>(sameMembers, Object.is);

  /**
   * Harnesses before the boards and mechanisms beneath which they land or lie, but for those that they end on.
   */
  of(
    machine: Machine,
    solids: ReadonlyMap<string, readonly Solid[]>,
    harnesses: ReadonlyMap<string, HarnessResult>,
  ): readonly Precedence[] {
    const covers = groupRows(this.#coversOf(machine, solids), faceOf);
    return [...harnesses].flatMap(([id, harness]) => {
      const ends = new Set(endItems(machine, harness));
      const laid = this.#laid.ask(harness.route, [], () => laidOf(harness));
      const own = laid.faces
        .flatMap(({ name, box }) => (covers.get(name) ?? []).filter((cover) => boxesMeet(cover.box, box)))
        .filter((cover) => !ends.has(cover.itemId));
      return this.#edges.ask(id, [laid, ...own], (parts) =>
        own.flatMap((cover) => {
          const at = parts.ask(cover.itemId, [laid, cover], () => beneath(laid.branches, cover));
          if (at === null) return [];
          return [{ beforeId: id, afterId: cover.itemId, why: "wired", at } satisfies Precedence];
        }),
      );
    });
  }

  sweep(): void {
    this.#edges.sweep();
  }

  #coversOf(machine: Machine, solids: ReadonlyMap<string, readonly Solid[]>): readonly Cover[] {
    const covers: Cover[] = [];
    for (const [itemId, own] of solids) {
      const item = machine.items.get(itemId);
      if (item === undefined || (item.kind !== "board" && item.kind !== "mechanism")) continue;
      const { panelId, side } = item.place;
      const thicknessMm = machine.panels.get(panelId)?.thickness_mm ?? 0;
      const roofs = this.#roofs.ask(own, [side, thicknessMm], () => roofsOf(own, side, thicknessMm));
      const box = roofs.map(({ solid }) => solid.box).reduce<BoxMm | null>(joined, null);
      if (box !== null) covers.push(this.#known({ itemId, panelId, side, roofs, box }));
    }
    return covers;
  }

  /** The same object for as long as nothing in it is another. */
  #known(cover: Cover): Cover {
    const known = this.#covers.get(cover.itemId);
    if (
      known !== undefined &&
      known.roofs === cover.roofs &&
      known.side === cover.side &&
      known.panelId === cover.panelId
    )
      return known;
    this.#covers.set(cover.itemId, cover);
    return cover;
  }
}

const joined = (a: BoxMm | null, b: BoxMm): BoxMm => (a === null ? b : joinBoxes(a, b));

const faceOf = ({ panelId, side }: { readonly panelId: string; readonly side: Side }): string =>
  `${side} ${panelId}`;

function roofsOf(solids: readonly Solid[], side: Side, thicknessMm: number): readonly Roof[] {
  const roofs = solids.flatMap((solid): Roof[] => {
    const clearMm = side === "top" ? solid.lowMm : -thicknessMm - solid.highMm;
    return clearMm < LEAST_ROOM_MM ? [] : [{ solid, clearMm }];
  });
  return roofs.length === 0 ? NONE : roofs;
}

/** Lanes and tails of a harness that stay on one side of one panel; a tail lies as high as its landing. */
function laidOf({ route }: HarnessResult): LaidHarness {
  const places = new Map<string, Place>(route.nodes.map((node) => [node.id, node.place]));
  const branches = route.branches.flatMap(({ id, a, b }): Laid[] => {
    const from = places.get(a);
    const to = places.get(b);
    if (from === undefined || to === undefined) return [];
    const { panelId, side } = from;
    if (panelId !== to.panelId || side !== to.side) return [];
    const landing = [a, b].find((node) => node.startsWith(LANDING));
    return [
      {
        id,
        panelId,
        side,
        heightMm: Math.max(from.zMm, to.zMm),
        a: from,
        b: to,
        landing: landing === undefined ? null : { id: landing, at: landing === a ? from : to },
      },
    ];
  });
  const faces = [...groupRows(branches, faceOf)].flatMap(([name, own]) => {
    const box = boxOf(own.flatMap((branch) => [branch.a, branch.b]));
    return box === null ? [] : [{ name, box }];
  });
  return { branches, faces };
}

/** Whether two are as in the plane of a panel: a line and the area of a ring. */
const lineMeetsRing = (line: SegmentMm, ring: readonly PointMm[]): boolean =>
  pointInRing(line.a, ring) !== "outside" ||
  ring.some((corner, i) => segmentsMeet(line, { a: corner, b: ring[(i + 1) % ring.length] ?? corner }));

/** The first landing of a harness that lies beneath a cover, or else the first branch; null: nothing does. */
function beneath(laid: readonly Laid[], cover: Cover): string | null {
  let passing: string | null = null;
  for (const branch of laid) {
    if (branch.panelId !== cover.panelId || branch.side !== cover.side) continue;
    if (!nearBox(branch, cover.box)) continue;
    for (const { solid, clearMm } of cover.roofs) {
      if (branch.heightMm > clearMm || !nearBox(branch, solid.box)) continue;
      if (branch.landing !== null && pointInRing(branch.landing.at, solid.ring) !== "outside")
        return branch.landing.id;
      if (passing === null && lineMeetsRing(branch, solid.ring)) passing = branch.id;
    }
  }
  return passing;
}

/** A lane along the rim of a cover counts, so edges that touch do. */
const boxesMeet = (a: BoxMm, b: BoxMm): boolean =>
  a.minXMm <= b.maxXMm && b.minXMm <= a.maxXMm && a.minYMm <= b.maxYMm && b.minYMm <= a.maxYMm;

const nearBox = ({ a, b }: SegmentMm, box: BoxMm): boolean =>
  Math.min(a.xMm, b.xMm) <= box.maxXMm &&
  Math.max(a.xMm, b.xMm) >= box.minXMm &&
  Math.min(a.yMm, b.yMm) <= box.maxYMm &&
  Math.max(a.yMm, b.yMm) >= box.minYMm;

/** Items that a harness ends on, in-line connectors too; a child's mechanism for the child. */
const endItems = (machine: Machine, { landingIds }: HarnessResult): readonly string[] =>
  landingIds.flatMap((landingId) => {
    const itemId = machine.landings.get(landingId)?.itemId;
    return itemId === undefined ? [] : [unitOf(machine, itemId)];
  });
