import { type BoxMm, joinBoxes, type PointMm, roundTo } from "@pinwright/kernel";
import type { Edit } from "../../worker/protocol.ts";
import type { MovableTable, Scene, Target } from "./scene.ts";

interface Mover {
  readonly table: MovableTable;
  readonly id: string;
  readonly xMm: number;
  readonly yMm: number;
}

/** An element of the drawing that goes along, and where it stands before. */
type Follower =
  | {
      readonly what: "thing";
      readonly element: Element;
      /** Names lie in a group that is turned over: their x and y run the other way. */
      readonly xSign: 1 | -1;
      readonly ySign: 1 | -1;
    }
  | {
      readonly what: "end";
      readonly element: Element;
      readonly names: readonly [string, string];
      readonly xMm: number;
      readonly yMm: number;
    };

const HUNDREDTH_MM = 0.01;

/** Rows that move when these things are moved: a child takes its mechanism along, a lane its two ends. */
export function moversOf(scene: Scene, ids: readonly string[]): readonly Target[] {
  const found = new Map<string, Target>();
  const add = (target: Target | undefined): void => {
    if (target?.moves == null) return;
    const root = scene.targets.get(target.moves.id);
    if (root !== undefined) found.set(root.id, root);
  };
  for (const id of ids) {
    const target = scene.targets.get(id);
    add(target);
    for (const end of target?.ends ?? []) add(scene.targets.get(end));
  }
  return [...found.values()];
}

/**
 * Things on their way from one place to another. Their elements are moved directly, without React, so that they
 * follow the pointer in every frame; the page itself learns of it only when they are dropped.
 */
export class MoveSession {
  readonly movers: readonly Mover[];
  readonly ids: ReadonlySet<string>;
  readonly box: BoxMm;
  readonly origin: PointMm;
  readonly #followers: readonly Follower[];
  #dxMm = 0;
  #dyMm = 0;

  /** @param grabbed the one whose origin is kept on the grid */
  constructor(sheet: Element, scene: Scene, targets: readonly Target[], grabbed: Target) {
    this.movers = targets.flatMap(({ moves, xMm, yMm }) => (moves === null ? [] : [{ ...moves, xMm, yMm }]));
    const roots = new Set(this.movers.map((mover) => mover.id));
    const all = [...scene.targets.values()].filter(
      (target) => target.moves !== null && roots.has(target.moves.id),
    );
    this.ids = new Set(all.map((target) => target.id));
    const root = targets.find((target) => target.id === grabbed.moves?.id) ?? grabbed;
    this.box = targets.map((target) => target.box).reduce(joinBoxes, root.box);
    this.origin = { xMm: root.xMm, yMm: root.yMm };
    this.#followers = [...followersOf(sheet, this.ids, root.side === "under")];
  }

  get moved(): boolean {
    return this.#dxMm !== 0 || this.#dyMm !== 0;
  }

  get dxMm(): number {
    return this.#dxMm;
  }

  get dyMm(): number {
    return this.#dyMm;
  }

  /** Where the grabbed thing's origin is now. */
  get at(): PointMm {
    return {
      xMm: roundTo(this.origin.xMm + this.#dxMm, HUNDREDTH_MM),
      yMm: roundTo(this.origin.yMm + this.#dyMm, HUNDREDTH_MM),
    };
  }

  to(dxMm: number, dyMm: number): void {
    this.#dxMm = dxMm;
    this.#dyMm = dyMm;
    this.draw();
  }

  /** Puts every element where it belongs now; also after React has drawn one of them anew. */
  draw(): void {
    const dx = this.#dxMm;
    const dy = this.#dyMm;
    for (const follower of this.#followers) {
      const { element } = follower;
      if (follower.what === "end") {
        element.setAttribute(follower.names[0], String(follower.xMm + dx));
        element.setAttribute(follower.names[1], String(follower.yMm + dy));
      } else if (this.moved)
        element.setAttribute("transform", `translate(${dx * follower.xSign} ${dy * follower.ySign})`);
      else element.removeAttribute("transform");
    }
  }

  /** The edit that puts everything where it is now. */
  edit(): Edit {
    return {
      kind: "place",
      places: this.movers.map(({ table, id, xMm, yMm }) => ({
        table,
        id,
        xMm: roundTo(xMm + this.#dxMm, HUNDREDTH_MM),
        yMm: roundTo(yMm + this.#dyMm, HUNDREDTH_MM),
      })),
    };
  }

  /** Puts every element back where it was. */
  back(): void {
    this.to(0, 0);
  }
}

/** Elements that say by `data-moves`, `data-from` or `data-to` that they go along with one of the ids. */
function* followersOf(sheet: Element, ids: ReadonlySet<string>, mirrored: boolean): Generator<Follower> {
  for (const element of sheet.querySelectorAll("[data-moves]")) {
    if (!ids.has(element.getAttribute("data-moves") ?? "")) continue;
    const isName = element.tagName === "text";
    yield { what: "thing", element, xSign: isName && mirrored ? -1 : 1, ySign: isName ? -1 : 1 };
  }
  for (const [attribute, names] of [
    ["data-from", ["x1", "y1"]],
    ["data-to", ["x2", "y2"]],
  ] as const)
    for (const element of sheet.querySelectorAll(`[${attribute}]`)) {
      if (!ids.has(element.getAttribute(attribute) ?? "")) continue;
      const xMm = Number(element.getAttribute(names[0]));
      const yMm = Number(element.getAttribute(names[1]));
      yield { what: "end", element, names, xMm, yMm };
    }
}
