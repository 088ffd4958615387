import { type PointMm, roundTo } from "@pinwright/kernel";
import type { CameraRig } from "./camera-rig.ts";
import type { GestureHost } from "./gesture-host.ts";
import type { Target } from "./scene.ts";

export const SNAP_PX = 7;
const MOUSE_REACH_PX = 5;
const FINGER_REACH_PX = 16;
/** Corners of an outline with more of them than this are curves: nobody measures from them. */
const MOST_CORNERS = 12;

/** What lies under a pointer, and which exact place is meant by it. */
export class Pointing {
  readonly #rig: CameraRig;
  readonly #host: GestureHost;

  constructor(rig: CameraRig, host: GestureHost) {
    this.#rig = rig;
    this.#host = host;
  }

  #reachMm(event: PointerEvent): number {
    return (event.pointerType === "touch" ? FINGER_REACH_PX : MOUSE_REACH_PX) / this.#rig.now.scale;
  }

  /** Everything under a pointer, the uppermost first. */
  hits(event: PointerEvent): readonly Target[] {
    return this.#host.scene().hits.at(this.#rig.panelOf(event), this.#reachMm(event));
  }

  /** What a pointer takes hold of: what is selected already stays in hand where several lie on each other. */
  hit(event: PointerEvent): Target | null {
    const hits = this.hits(event);
    const selected = new Set(this.#host.selected());
    return hits.find((hit) => selected.has(hit.id)) ?? hits[0] ?? null;
  }

  /** A place on the grid; without one, to a tenth of a millimetre. */
  onGrid({ xMm, yMm }: PointMm): PointMm {
    const step = this.#host.gridMm() || 0.1;
    return { xMm: roundTo(xMm, step), yMm: roundTo(yMm, step) };
  }

  /** The nearest middle or corner of anything within reach, else the place itself on the grid. */
  snapPlace(event: PointerEvent): PointMm {
    const place = this.#rig.panelOf(event);
    if (event.altKey) return place;
    const reach = Math.max(SNAP_PX / this.#rig.now.scale, this.#reachMm(event));
    const box = {
      minXMm: place.xMm - reach,
      maxXMm: place.xMm + reach,
      minYMm: place.yMm - reach,
      maxYMm: place.yMm + reach,
    };
    let best: PointMm | null = null;
    let least = reach;
    for (const target of this.#host.scene().hits.near(box))
      for (const point of pointsOf(target)) {
        const gap = Math.hypot(point.xMm - place.xMm, point.yMm - place.yMm);
        if (gap < least) {
          least = gap;
          best = { xMm: point.xMm, yMm: point.yMm };
        }
      }
    return best ?? this.onGrid(place);
  }
}

const pointsOf = (target: Target): readonly PointMm[] =>
  target.line === null
    ? [target, ...(target.ring !== null && target.ring.length <= MOST_CORNERS ? target.ring : [])]
    : target.line;
