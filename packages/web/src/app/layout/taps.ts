import type { PointMm } from "@pinwright/kernel";
import type { CameraRig } from "./camera-rig.ts";
import type { GestureHost } from "./gesture-host.ts";
import type { OverlayStore } from "./overlay-store.ts";
import type { Pointing } from "./pointing.ts";
import type { Target } from "./scene.ts";

/** What a tap does, by the tool that is chosen; and what a tool shows between two taps. */
export class Taps {
  readonly #rig: CameraRig;
  readonly #host: GestureHost;
  readonly #pointing: Pointing;
  readonly #overlay: OverlayStore;
  /** Waypoint at which the lane that is being drawn begins. */
  #laneFrom: string | null = null;

  constructor(rig: CameraRig, host: GestureHost, pointing: Pointing, overlay: OverlayStore) {
    this.#rig = rig;
    this.#host = host;
    this.#pointing = pointing;
    this.#overlay = overlay;
  }

  /** @param add whether what is tapped comes to what is selected already */
  tap(event: PointerEvent, add: boolean): void {
    const tool = this.#host.tool();
    switch (tool) {
      case "select":
      case "lasso":
        this.#select(event, add || tool === "lasso");
        break;
      case "measure":
        this.#measure(event);
        break;
      case "waypoint":
        if (this.#host.mayEdit()) this.#host.placeWaypoint(this.#pointing.onGrid(this.#rig.panelOf(event)));
        break;
      case "lane":
        if (this.#host.mayEdit()) this.#lane(event);
        break;
      case "crossing": {
        const waypoint = this.#waypoint(event);
        if (this.#host.mayEdit() && waypoint !== undefined) this.#host.endCrossing(waypoint.id);
        break;
      }
    }
  }

  /** A mouse or pen moves without being pressed: what was begun follows it. */
  hover(event: PointerEvent): void {
    const { measure } = this.#overlay.get();
    if (this.#host.tool() === "measure" && measure !== null && !measure.fixed)
      this.#overlay.patch({ measure: { ...measure, to: this.#pointing.snapPlace(event) } });
    if (this.#host.tool() === "lane" && this.#laneFrom !== null) this.#drawLane(this.#rig.panelOf(event));
  }

  /** Forgets what was begun; false when nothing was. */
  cancel(): boolean {
    const { measure, lane } = this.#overlay.get();
    this.#laneFrom = null;
    this.#overlay.patch({ measure: null, lane: null });
    return measure !== null || lane !== null;
  }

  /** A second tap at the same place takes what lies under the first. */
  #select(event: PointerEvent, add: boolean): void {
    const hits = this.#pointing.hits(event);
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

  #measure(event: PointerEvent): void {
    const { measure } = this.#overlay.get();
    const at = this.#pointing.snapPlace(event);
    this.#overlay.patch({
      measure:
        measure === null || measure.fixed
          ? { from: at, to: at, fixed: false }
          : { from: measure.from, to: at, fixed: true },
    });
  }

  #waypoint(event: PointerEvent): Target | undefined {
    return this.#pointing.hits(event).find((hit) => hit.layer === "waypoints");
  }

  #lane(event: PointerEvent): void {
    const place = this.#rig.panelOf(event);
    const waypoint = this.#waypoint(event);
    const from = this.#laneFrom;
    if (from === null) {
      if (waypoint === undefined) return;
      this.#laneFrom = waypoint.id;
      this.#drawLane(place);
      return;
    }
    if (waypoint?.id === from) return;
    this.#host.drawLane(from, waypoint?.id ?? this.#pointing.onGrid(place));
    this.#laneFrom = waypoint?.id ?? null;
    this.#overlay.patch({ lane: null });
  }

  #drawLane(to: PointMm): void {
    const from = this.#laneFrom === null ? undefined : this.#host.scene().targets.get(this.#laneFrom);
    this.#overlay.patch({
      lane: from === undefined ? null : { from: { xMm: from.xMm, yMm: from.yMm }, to },
    });
  }
}
