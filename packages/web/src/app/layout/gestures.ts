import { type PointMm, roundTo } from "@pinwright/kernel";
import type { Edit } from "../../worker/protocol.ts";
import type { CameraRig } from "./camera-rig.ts";
import { panned, type ScreenPoint, zoomed } from "./geometry/camera.ts";
import { snapped } from "./geometry/snap.ts";
import { MoveSession, moversOf } from "./move-session.ts";
import { NO_OVERLAY, type Overlay, Watched } from "./overlay-store.ts";
import type { Scene, Target } from "./scene.ts";

export type Tool = "select" | "lasso" | "measure" | "waypoint" | "lane";

/** What the page lends to the gestures, always as it is now. */
export interface GestureHost {
  readonly scene: () => Scene;
  readonly selected: () => readonly string[];
  readonly tool: () => Tool;
  readonly mayEdit: () => boolean;
  /** 0: no grid. */
  readonly gridMm: () => number;
  readonly select: (ids: readonly string[]) => void;
  readonly preview: (edit: Edit, movedAt: number) => void;
  readonly giveUp: () => void;
  /** Keeps what a drag did; false when it could not be kept. */
  readonly keep: (edit: Edit, count: number) => Promise<boolean>;
  readonly placeWaypoint: (at: PointMm) => void;
  /** A lane from a waypoint to another, or to a new one. */
  readonly drawLane: (fromId: string, to: string | PointMm) => void;
}

const SLOP_PX = 4;
const SNAP_PX = 7;
const MOUSE_REACH_PX = 5;
const FINGER_REACH_PX = 16;
const LONG_PRESS_MS = 500;
const WHEEL_STEP = 1.0015;
/** A mouse wheel turns in notches of about this many pixels, a touchpad in many small steps. */
const NOTCH_PX = 60;

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
  | { readonly type: "pinch"; gapPx: number; middle: ScreenPoint };

const gapOf = ([a, b]: readonly ScreenPoint[]): number =>
  a === undefined || b === undefined ? 1 : Math.max(1, Math.hypot(a.x - b.x, a.y - b.y));
const middleOf = ([a, b]: readonly ScreenPoint[]): ScreenPoint => ({
  x: ((a?.x ?? 0) + (b?.x ?? 0)) / 2,
  y: ((a?.y ?? 0) + (b?.y ?? 0)) / 2,
});

/** Mouse, pen and fingers on the drawing. */
export class Gestures {
  readonly overlay = new Watched<Overlay>(NO_OVERLAY);
  /** Where the pointer is, in panel mm; null when it is elsewhere. */
  readonly pointer = new Watched<PointMm | null>(null);
  readonly #rig: CameraRig;
  readonly #host: GestureHost;
  #sheet: HTMLElement | null = null;
  readonly #fingers = new Map<number, ScreenPoint>();
  #gesture: Gesture | null = null;
  #longPress: ReturnType<typeof setTimeout> | undefined;
  #laneFrom: string | null = null;
  /** The session whose elements must be put in place again after React drew. */
  session: MoveSession | null = null;

  constructor(rig: CameraRig, host: GestureHost) {
    this.#rig = rig;
    this.#host = host;
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
      this.#patch({ hoverId: null });
    });
    on("wheel", (event) => this.#wheel(event), false);
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
    const { measure, lane } = this.overlay.get();
    this.#gesture = null;
    this.#laneFrom = null;
    if (gesture?.type === "move") {
      gesture.session.back();
      this.session = null;
      this.#host.giveUp();
    }
    this.#patch({ lasso: null, guides: [], dragged: null, measure: null, lane: null });
    return (gesture !== null && gesture.type !== "press") || measure !== null || lane !== null;
  }

  #patch(part: Partial<Overlay>): void {
    const before = this.overlay.get();
    const keys = Object.keys(part) as (keyof Overlay)[];
    if (keys.some((key) => !Object.is(before[key], part[key]))) this.overlay.set({ ...before, ...part });
  }

  #reachMm(event: PointerEvent): number {
    return (event.pointerType === "touch" ? FINGER_REACH_PX : MOUSE_REACH_PX) / this.#rig.now.scale;
  }

  #hits(event: PointerEvent): readonly Target[] {
    return this.#host.scene().hits.at(this.#rig.panelOf(event), this.#reachMm(event));
  }

  /** What is selected already stays in hand where several lie on each other. */
  #hit(event: PointerEvent): Target | null {
    const hits = this.#hits(event);
    const selected = new Set(this.#host.selected());
    return hits.find((hit) => selected.has(hit.id)) ?? hits[0] ?? null;
  }

  #down(event: PointerEvent): void {
    this.#rig.locate();
    const at = this.#rig.screenOf(event);
    this.#fingers.set(event.pointerId, at);
    this.#sheet?.setPointerCapture(event.pointerId);
    if (this.#fingers.size === 2) {
      const two = [...this.#fingers.values()];
      if (this.#gesture?.type !== "move") {
        clearTimeout(this.#longPress);
        this.#patch({ lasso: null });
        this.#gesture = { type: "pinch", gapPx: gapOf(two), middle: middleOf(two) };
      }
      return;
    }
    if (this.#fingers.size > 2) return;
    const add = event.shiftKey || event.ctrlKey || event.metaKey;
    if (event.button === 1 || event.button === 2) {
      this.#gesture = { type: "pan", last: at };
      return;
    }
    this.#gesture = { type: "press", target: this.#hit(event), at, add };
    if (event.pointerType !== "mouse")
      this.#longPress = setTimeout(() => {
        if (this.#gesture?.type !== "press") return;
        this.#gesture = { type: "lasso", from: this.#rig.panelOf(event), add: true };
        this.#drawLasso(this.#rig.panelOf(event));
      }, LONG_PRESS_MS);
  }

  #move(event: PointerEvent): void {
    const at = this.#rig.screenOf(event);
    const place = this.#rig.panelOf(event);
    this.pointer.set(place);
    if (this.#fingers.has(event.pointerId)) this.#fingers.set(event.pointerId, at);
    const gesture = this.#gesture;
    if (gesture === null) this.#hover(event, place);
    else if (gesture.type === "press") this.#begin(event, gesture, at);
    else if (gesture.type === "pan") {
      this.#rig.set(panned(this.#rig.now, at.x - gesture.last.x, at.y - gesture.last.y));
      gesture.last = at;
    } else if (gesture.type === "pinch") this.#pinch(gesture);
    else if (gesture.type === "lasso") this.#drawLasso(place);
    else this.#drag(gesture.session, gesture.from, place, event);
  }

  #hover(event: PointerEvent, place: PointMm): void {
    if (event.pointerType === "touch") return;
    const tool = this.#host.tool();
    const { measure } = this.overlay.get();
    if (tool === "measure" && measure !== null && !measure.fixed)
      this.#patch({ measure: { ...measure, to: this.#snapPlace(place, event) } });
    if (tool === "lane" && this.#laneFrom !== null) this.#drawLane(place);
    this.#patch({ hoverId: this.#hits(event)[0]?.id ?? null });
  }

  /** The pointer moved on after a press: whether that drags, draws a box or pans is decided now. */
  #begin(event: PointerEvent, press: Extract<Gesture, { type: "press" }>, at: ScreenPoint): void {
    if (Math.hypot(at.x - press.at.x, at.y - press.at.y) < SLOP_PX) return;
    clearTimeout(this.#longPress);
    const tool = this.#host.tool();
    const { target } = press;
    const from = this.#rig.panelOf(event);
    const isSelected = target !== null && this.#host.selected().includes(target.id);
    // A finger moves only what it has selected before, so that looking about never moves anything.
    const mayDrag =
      tool === "select" &&
      this.#host.mayEdit() &&
      (isSelected || (event.pointerType !== "touch" && !press.add));
    if (target !== null && mayDrag && this.#sheet !== null) {
      if (!isSelected) this.#host.select([target.id]);
      const scene = this.#host.scene();
      const movers = moversOf(scene, isSelected ? this.#host.selected() : [target.id]);
      if (movers.length > 0) {
        this.session = new MoveSession(this.#sheet, scene, movers, target);
        this.#gesture = { type: "move", session: this.session, from };
        this.#patch({ hoverId: null });
        return;
      }
    }
    if (tool === "lasso" || (tool === "select" && press.add)) {
      this.#gesture = { type: "lasso", from, add: press.add };
      this.#drawLasso(from);
    } else this.#gesture = { type: "pan", last: at };
  }

  #drag(session: MoveSession, from: PointMm, place: PointMm, event: PointerEvent): void {
    const dx = place.xMm - from.xMm;
    const dy = place.yMm - from.yMm;
    const toleranceMm = SNAP_PX / this.#rig.now.scale;
    const free = event.altKey;
    const targets = free ? [] : this.#snapTargets(session);
    const result = snapped(session, dx, dy, targets, free ? 0 : this.#host.gridMm(), toleranceMm);
    session.to(result.dxMm, result.dyMm);
    this.#patch({ guides: result.guides, dragged: session.at });
    this.#host.preview(session.edit(), event.timeStamp);
  }

  #snapTargets(session: MoveSession): readonly Target[] {
    return this.#host
      .scene()
      .hits.near(this.#rig.seen)
      .filter((target) => target.line === null && !session.ids.has(target.id));
  }

  #pinch(gesture: Extract<Gesture, { type: "pinch" }>): void {
    const two = [...this.#fingers.values()];
    const gapPx = gapOf(two);
    const middle = middleOf(two);
    const moved = panned(this.#rig.now, middle.x - gesture.middle.x, middle.y - gesture.middle.y);
    this.#rig.set(zoomed(moved, gapPx / gesture.gapPx, middle));
    gesture.gapPx = gapPx;
    gesture.middle = middle;
  }

  #drawLasso(to: PointMm): void {
    const gesture = this.#gesture;
    if (gesture?.type !== "lasso") return;
    const { from } = gesture;
    this.#patch({
      lasso: {
        minXMm: Math.min(from.xMm, to.xMm),
        maxXMm: Math.max(from.xMm, to.xMm),
        minYMm: Math.min(from.yMm, to.yMm),
        maxYMm: Math.max(from.yMm, to.yMm),
      },
    });
  }

  #up(event: PointerEvent): void {
    clearTimeout(this.#longPress);
    this.#fingers.delete(event.pointerId);
    const gesture = this.#gesture;
    if (gesture?.type === "pinch") {
      const [rest] = this.#fingers.values();
      this.#gesture = rest === undefined ? null : { type: "pan", last: rest };
      return;
    }
    this.#gesture = null;
    if (gesture === null) return;
    if (gesture.type === "press") this.#tap(event, gesture);
    else if (gesture.type === "lasso") this.#takeLasso(gesture.add);
    else if (gesture.type === "move") void this.#drop(gesture.session);
  }

  #lost(event: PointerEvent): void {
    this.#fingers.delete(event.pointerId);
    this.cancel();
  }

  #takeLasso(add: boolean): void {
    const { lasso } = this.overlay.get();
    this.#patch({ lasso: null });
    if (lasso === null) return;
    const inside = this.#host
      .scene()
      .hits.within(lasso)
      .filter((target) => target.row !== null)
      .map((target) => target.id);
    this.#host.select(add ? [...new Set([...this.#host.selected(), ...inside])] : inside);
  }

  async #drop(session: MoveSession): Promise<void> {
    this.#patch({ guides: [], dragged: null });
    if (!session.moved) {
      this.session = null;
      this.#host.giveUp();
      return;
    }
    const kept = await this.#host.keep(session.edit(), session.movers.length);
    if (this.session === session) this.session = null;
    if (!kept) session.back();
  }

  #tap(event: PointerEvent, press: Extract<Gesture, { type: "press" }>): void {
    const place = this.#rig.panelOf(event);
    switch (this.#host.tool()) {
      case "select":
      case "lasso":
        this.#select(event, press.add || this.#host.tool() === "lasso");
        break;
      case "measure": {
        const { measure } = this.overlay.get();
        const at = this.#snapPlace(place, event);
        this.#patch({
          measure:
            measure === null || measure.fixed
              ? { from: at, to: at, fixed: false }
              : { from: measure.from, to: at, fixed: true },
        });
        break;
      }
      case "waypoint":
        if (this.#host.mayEdit()) this.#host.placeWaypoint(this.#onGrid(place));
        break;
      case "lane":
        if (this.#host.mayEdit()) this.#tapLane(event, place);
        break;
    }
  }

  /** A second tap at the same place takes what lies under the first. */
  #select(event: PointerEvent, add: boolean): void {
    const hits = this.#hits(event);
    const selected = this.#host.selected();
    const at = hits.findIndex((hit) => selected.includes(hit.id));
    const [first] = hits;
    if (add) {
      if (first === undefined) return;
      const { id } = first;
      this.#host.select(selected.includes(id) ? selected.filter((one) => one !== id) : [...selected, id]);
      return;
    }
    const next = selected.length === 1 && at >= 0 ? hits[(at + 1) % hits.length] : first;
    this.#host.select(next === undefined ? [] : [next.id]);
  }

  #tapLane(event: PointerEvent, place: PointMm): void {
    const waypoint = this.#hits(event).find((hit) => hit.layer === "waypoints");
    const from = this.#laneFrom;
    if (from === null) {
      if (waypoint === undefined) return;
      this.#laneFrom = waypoint.id;
      this.#drawLane(place);
      return;
    }
    if (waypoint?.id === from) return;
    this.#host.drawLane(from, waypoint?.id ?? this.#onGrid(place));
    this.#laneFrom = waypoint?.id ?? null;
    this.#patch({ lane: null });
  }

  #drawLane(to: PointMm): void {
    const from = this.#laneFrom === null ? undefined : this.#host.scene().targets.get(this.#laneFrom);
    this.#patch({ lane: from === undefined ? null : { from: { xMm: from.xMm, yMm: from.yMm }, to } });
  }

  #onGrid({ xMm, yMm }: PointMm): PointMm {
    const step = this.#host.gridMm() || 0.1;
    return { xMm: roundTo(xMm, step), yMm: roundTo(yMm, step) };
  }

  /** The nearest middle or corner of anything within reach, else the place itself on the grid. */
  #snapPlace(place: PointMm, event: PointerEvent): PointMm {
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
    return best ?? this.#onGrid(place);
  }

  #wheel(event: WheelEvent): void {
    event.preventDefault();
    const at = this.#rig.screenOf(event);
    const isNotch = event.deltaMode !== 0 || (event.deltaX === 0 && Math.abs(event.deltaY) >= NOTCH_PX);
    if (event.ctrlKey || isNotch) {
      const lines = event.deltaMode === 0 ? event.deltaY : event.deltaY * 40;
      const strength = event.ctrlKey && !isNotch ? 6 : 1;
      this.#rig.set(zoomed(this.#rig.now, WHEEL_STEP ** (-lines * strength), at));
    } else this.#rig.set(panned(this.#rig.now, -event.deltaX, -event.deltaY));
  }
}

const pointsOf = (target: Target): readonly PointMm[] =>
  target.line === null
    ? [target, ...(target.ring !== null && target.ring.length <= 12 ? target.ring : [])]
    : target.line;
