import type { PointMm } from "@pinwright/kernel";
import type { CameraRig } from "./camera-rig.ts";
import { Pinch, turnWheel } from "./fingers.ts";
import { panned, type ScreenPoint } from "./geometry/camera.ts";
import { snapped } from "./geometry/snap.ts";
import type { GestureHost } from "./gesture-host.ts";
import { MoveSession, moversOf } from "./move-session.ts";
import { OverlayStore, Watched } from "./overlay-store.ts";
import { Pointing, SNAP_PX } from "./pointing.ts";
import type { Target } from "./scene.ts";
import { Taps } from "./taps.ts";

const SLOP_PX = 4;
const LONG_PRESS_MS = 500;

type Gesture =
  | {
      readonly type: "press";
      readonly target: Target | null;
      readonly at: ScreenPoint;
      readonly add: boolean;
    }
  | { readonly type: "pan"; last: ScreenPoint }
  | { readonly type: "lasso"; readonly from: PointMm; readonly add: boolean }
  | { readonly type: "move"; readonly session: MoveSession; readonly from: PointMm }
  | { readonly type: "pinch"; readonly pinch: Pinch };

/** Mouse, pen and fingers on the drawing: which gesture goes on, from press to release. */
export class Gestures {
  readonly overlay = new OverlayStore();
  /** Where the pointer is, in panel mm; null when it is elsewhere. */
  readonly pointer = new Watched<PointMm | null>(null);
  readonly #rig: CameraRig;
  readonly #host: GestureHost;
  readonly #pointing: Pointing;
  readonly #taps: Taps;
  #sheet: HTMLElement | null = null;
  readonly #fingers = new Map<number, ScreenPoint>();
  #gesture: Gesture | null = null;
  /** The finger that the gesture belongs to; another one that comes down meanwhile does not lead it. */
  #leads: number | null = null;
  #longPress: ReturnType<typeof setTimeout> | undefined;
  /** The session whose elements must be put in place again after React drew. */
  session: MoveSession | null = null;

  constructor(rig: CameraRig, host: GestureHost) {
    this.#rig = rig;
    this.#host = host;
    this.#pointing = new Pointing(rig, host);
    this.#taps = new Taps(rig, host, this.#pointing, this.overlay);
  }

  attach(sheet: HTMLElement): () => void {
    this.#sheet = sheet;
    const listening = new AbortController();
    const on = <K extends keyof HTMLElementEventMap>(
      name: K,
      heard: (event: HTMLElementEventMap[K]) => void,
      passive = true,
    ): void => sheet.addEventListener(name, heard, { signal: listening.signal, passive });
    on("pointerenter", () => this.#rig.locate());
    on("pointerdown", (event) => this.#down(event));
    on("pointermove", (event) => this.#move(event));
    on("pointerup", (event) => this.#up(event));
    on("pointercancel", (event) => this.#lost(event));
    on("pointerleave", () => {
      this.pointer.set(null);
      this.overlay.patch({ hoverId: null });
    });
    on("wheel", (event) => turnWheel(this.#rig, event), false);
    on("contextmenu", (event) => event.preventDefault(), false);
    return () => {
      listening.abort();
      this.cancel();
      this.#sheet = null;
    };
  }

  /** Ends whatever is going on and puts everything back; false when nothing was going on. */
  cancel(): boolean {
    clearTimeout(this.#longPress);
    const gesture = this.#gesture;
    this.#gesture = null;
    if (gesture?.type === "move") {
      gesture.session.back();
      this.session = null;
      this.#host.giveUp();
    }
    this.overlay.patch({ lasso: null, guides: [], dragged: null });
    const begun = this.#taps.cancel();
    return begun || (gesture !== null && gesture.type !== "press");
  }

  #down(event: PointerEvent): void {
    this.#rig.locate();
    const at = this.#rig.screenOf(event);
    this.#fingers.set(event.pointerId, at);
    this.#sheet?.setPointerCapture(event.pointerId);
    if (this.#fingers.size === 2) {
      if (this.#gesture?.type === "move") return;
      clearTimeout(this.#longPress);
      this.overlay.patch({ lasso: null });
      this.#gesture = { type: "pinch", pinch: new Pinch([...this.#fingers.values()]) };
      return;
    }
    if (this.#fingers.size > 2) return;
    this.#leads = event.pointerId;
    const add = event.shiftKey || event.ctrlKey || event.metaKey;
    if (event.button === 1 || event.button === 2) {
      this.#gesture = { type: "pan", last: at };
      return;
    }
    this.#gesture = { type: "press", target: this.#pointing.hit(event), at, add };
    if (event.pointerType !== "mouse")
      this.#longPress = setTimeout(() => this.#heldLong(event), LONG_PRESS_MS);
  }

  /** A finger that rests begins a box. */
  #heldLong(event: PointerEvent): void {
    if (this.#gesture?.type !== "press") return;
    const from = this.#rig.panelOf(event);
    this.#gesture = { type: "lasso", from, add: true };
    this.#drawLasso(from);
  }

  #move(event: PointerEvent): void {
    const at = this.#rig.screenOf(event);
    const place = this.#rig.panelOf(event);
    this.pointer.set(place);
    if (this.#fingers.has(event.pointerId)) this.#fingers.set(event.pointerId, at);
    const gesture = this.#gesture;
    if (gesture === null) this.#hover(event);
    else if (gesture.type === "pinch") gesture.pinch.to(this.#rig, [...this.#fingers.values()]);
    else if (event.pointerId !== this.#leads) return;
    else if (gesture.type === "press") this.#begin(event, gesture, at);
    else if (gesture.type === "pan") {
      this.#rig.set(panned(this.#rig.now, at.x - gesture.last.x, at.y - gesture.last.y));
      gesture.last = at;
    } else if (gesture.type === "lasso") this.#drawLasso(place);
    else this.#drag(gesture.session, gesture.from, place, event);
  }

  #hover(event: PointerEvent): void {
    if (event.pointerType === "touch") return;
    this.#taps.hover(event);
    this.overlay.patch({ hoverId: this.#pointing.hits(event)[0]?.id ?? null });
  }

  /** The pointer moved on after a press: whether that drags, draws a box or pans is decided now. */
  #begin(event: PointerEvent, press: Extract<Gesture, { type: "press" }>, at: ScreenPoint): void {
    if (Math.hypot(at.x - press.at.x, at.y - press.at.y) < SLOP_PX) return;
    clearTimeout(this.#longPress);
    const tool = this.#host.tool();
    const from = this.#rig.panelOf(event);
    const session = this.#taken(event, press);
    if (session !== null) {
      this.session = session;
      this.#gesture = { type: "move", session, from };
      this.overlay.patch({ hoverId: null });
    } else if (tool === "lasso" || (tool === "select" && press.add)) {
      this.#gesture = { type: "lasso", from, add: press.add };
      this.#drawLasso(from);
    } else this.#gesture = { type: "pan", last: at };
  }

  /** What is taken along from where it was pressed; null when nothing is. */
  #taken(event: PointerEvent, { target, add }: Extract<Gesture, { type: "press" }>): MoveSession | null {
    const sheet = this.#sheet;
    if (target === null || sheet === null) return null;
    const isSelected = this.#host.selected().includes(target.id);
    // A finger moves only what it has selected before, so that looking about never moves anything.
    const isHeld = isSelected || (event.pointerType !== "touch" && !add);
    if (this.#host.tool() !== "select" || !this.#host.mayEdit() || !isHeld) return null;
    if (!isSelected) this.#host.select([target.id]);
    const scene = this.#host.scene();
    const movers = moversOf(scene, isSelected ? this.#host.selected() : [target.id]);
    return movers.length === 0 ? null : new MoveSession(sheet, scene, movers, target);
  }

  #drag(session: MoveSession, from: PointMm, place: PointMm, event: PointerEvent): void {
    const dx = place.xMm - from.xMm;
    const dy = place.yMm - from.yMm;
    const toleranceMm = SNAP_PX / this.#rig.now.scale;
    const free = event.altKey;
    const targets = free ? [] : this.#snapTargets(session);
    const result = snapped(session, dx, dy, targets, free ? 0 : this.#host.gridMm(), toleranceMm);
    session.to(result.dxMm, result.dyMm);
    this.overlay.patch({ guides: result.guides, dragged: session.at });
    this.#host.preview(session.edit(), event.timeStamp);
  }

  #snapTargets(session: MoveSession): readonly Target[] {
    return this.#host
      .scene()
      .hits.near(this.#rig.seen)
      .filter((target) => target.line === null && !session.ids.has(target.id));
  }

  #drawLasso(to: PointMm): void {
    const gesture = this.#gesture;
    if (gesture?.type !== "lasso") return;
    const { from } = gesture;
    this.overlay.patch({
      lasso: {
        minXMm: Math.min(from.xMm, to.xMm),
        maxXMm: Math.max(from.xMm, to.xMm),
        minYMm: Math.min(from.yMm, to.yMm),
        maxYMm: Math.max(from.yMm, to.yMm),
      },
    });
  }

  #up(event: PointerEvent): void {
    this.#fingers.delete(event.pointerId);
    const gesture = this.#gesture;
    if (gesture?.type === "pinch") {
      const [rest] = this.#fingers;
      this.#leads = rest?.[0] ?? null;
      this.#gesture = rest === undefined ? null : { type: "pan", last: rest[1] };
      return;
    }
    if (event.pointerId !== this.#leads) return;
    clearTimeout(this.#longPress);
    this.#gesture = null;
    if (gesture?.type === "press") this.#taps.tap(event, gesture.add);
    else if (gesture?.type === "lasso") this.#takeLasso(gesture.add);
    else if (gesture?.type === "move") void this.#drop(gesture.session);
  }

  #lost(event: PointerEvent): void {
    this.#fingers.delete(event.pointerId);
    this.cancel();
  }

  #takeLasso(add: boolean): void {
    const { lasso } = this.overlay.get();
    this.overlay.patch({ lasso: null });
    if (lasso === null) return;
    const inside = this.#host
      .scene()
      .hits.within(lasso)
      .filter((target) => target.row !== null)
      .map((target) => target.id);
    this.#host.select(add ? [...new Set([...this.#host.selected(), ...inside])] : inside);
  }

  async #drop(session: MoveSession): Promise<void> {
    this.overlay.patch({ guides: [], dragged: null });
    if (!session.moved) {
      this.session = null;
      this.#host.giveUp();
      return;
    }
    const kept = await this.#host.keep(session.edit(), session.movers.length);
    if (this.session === session) this.session = null;
    if (!kept) session.back();
  }
}
