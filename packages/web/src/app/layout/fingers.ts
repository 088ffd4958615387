import type { CameraRig } from "./camera-rig.ts";
import { panned, type ScreenPoint, zoomed } from "./geometry/camera.ts";

const WHEEL_STEP = 1.0015;
/** A mouse wheel turns in notches of about this many pixels, a touchpad in many small steps. */
const NOTCH_PX = 60;

/** Two fingers on the drawing: how far apart they are, and what is between them. */
export class Pinch {
  #gapPx: number;
  #middle: ScreenPoint;

  constructor(fingers: readonly ScreenPoint[]) {
    this.#gapPx = gapOf(fingers);
    this.#middle = middleOf(fingers);
  }

  /** The drawing goes along with the fingers and grows with the gap between them. */
  to(rig: CameraRig, fingers: readonly ScreenPoint[]): void {
    const gapPx = gapOf(fingers);
    const middle = middleOf(fingers);
    const moved = panned(rig.now, middle.x - this.#middle.x, middle.y - this.#middle.y);
    rig.set(zoomed(moved, gapPx / this.#gapPx, middle));
    this.#gapPx = gapPx;
    this.#middle = middle;
  }
}

const gapOf = ([a, b]: readonly ScreenPoint[]): number =>
  a === undefined || b === undefined ? 1 : Math.max(1, Math.hypot(a.x - b.x, a.y - b.y));
const middleOf = ([a, b]: readonly ScreenPoint[]): ScreenPoint => ({
  x: ((a?.x ?? 0) + (b?.x ?? 0)) / 2,
  y: ((a?.y ?? 0) + (b?.y ?? 0)) / 2,
});

/** A wheel enlarges at the pointer; two fingers on a touchpad move the drawing, pinched they enlarge it. */
export function turnWheel(rig: CameraRig, event: WheelEvent): void {
  event.preventDefault();
  const isNotch = event.deltaMode !== 0 || (event.deltaX === 0 && Math.abs(event.deltaY) >= NOTCH_PX);
  if (event.ctrlKey || isNotch) {
    const lines = event.deltaMode === 0 ? event.deltaY : event.deltaY * 40;
    const strength = event.ctrlKey && !isNotch ? 6 : 1;
    rig.set(zoomed(rig.now, WHEEL_STEP ** (-lines * strength), rig.screenOf(event)));
  } else rig.set(panned(rig.now, -event.deltaX, -event.deltaY));
}
