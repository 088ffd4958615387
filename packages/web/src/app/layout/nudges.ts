import type { CameraRig } from "./camera-rig.ts";
import type { GestureHost } from "./gesture-host.ts";
import type { Gestures } from "./gestures.ts";
import { MoveSession, moversOf } from "./move-session.ts";

export const NUDGE_MM = 0.5;
export const FAR_NUDGE_MM = 5;
/** After this long without another arrow key the move is kept: one move to undo, not one for each key. */
const REST_MS = 600;

/** Moves what is selected by arrow keys. */
export class Nudges {
  readonly #host: GestureHost;
  readonly #gestures: Gestures;
  #session: MoveSession | null = null;
  #timer: ReturnType<typeof setTimeout> | undefined;

  constructor(gestures: Gestures, host: GestureHost) {
    this.#gestures = gestures;
    this.#host = host;
  }

  /** False when nothing that can be moved is selected. */
  by(sheet: Element, right: number, up: number, mirrored: boolean, movedAt: number): boolean {
    const scene = this.#host.scene();
    const ids = this.#host.selected();
    if (this.#session === null) {
      const movers = moversOf(scene, ids);
      const [first] = movers;
      if (first === undefined || this.#gestures.session !== null) return false;
      this.#session = new MoveSession(sheet, scene, movers, first);
      this.#gestures.session = this.#session;
    }
    const session = this.#session;
    session.to(session.dxMm + (mirrored ? -right : right), session.dyMm + up);
    this.#host.preview(session.edit(), movedAt);
    clearTimeout(this.#timer);
    this.#timer = setTimeout(() => void this.keep(), REST_MS);
    return true;
  }

  /** Keeps what was moved so far. */
  async keep(): Promise<void> {
    clearTimeout(this.#timer);
    const session = this.#session;
    if (session === null) return;
    this.#session = null;
    const kept = session.moved && (await this.#host.keep(session.edit(), session.movers.length));
    if (!kept) {
      session.back();
      this.#host.giveUp();
    }
    if (this.#gestures.session === session) this.#gestures.session = null;
  }

  /** Gives up what was moved and not yet kept; false when there is nothing. */
  giveUp(): boolean {
    clearTimeout(this.#timer);
    const session = this.#session;
    if (session === null) return false;
    this.#session = null;
    this.#gestures.session = null;
    session.back();
    this.#host.giveUp();
    return true;
  }
}

/** How far an arrow key pans when nothing is selected, in pixels. */
const PAN_PX = 48;
export function panByArrow(rig: CameraRig, right: number, up: number, far: boolean): void {
  const px = PAN_PX * (far ? 4 : 1);
  const camera = rig.now;
  rig.set({ ...camera, x: camera.x - right * px, y: camera.y + up * px });
}
