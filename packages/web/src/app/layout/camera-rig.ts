import type { BoxMm, PointMm } from "@pinwright/kernel";
import {
  type Camera,
  fitted,
  type ScreenPoint,
  type ScreenSize,
  seenBox,
  stepOf,
  toPanel,
  transformOf,
} from "./geometry/camera.ts";
import { Watched } from "./overlay-store.ts";

const START: Camera = { scale: 1, x: 0, y: 0, mirrored: false };

/** Holds what part of the panel is looked at, and moves the drawing itself: no state of React is in the way. */
export class CameraRig {
  /** For what has to be drawn anew with every move: rulers, distances. */
  readonly camera = new Watched<Camera>(START);
  /** For what is drawn in more or less detail. */
  readonly step = new Watched<number>(0);
  #svg: SVGSVGElement | null = null;
  #ground: SVGGElement | null = null;
  #size: ScreenSize = { width: 800, height: 600 };
  #frame: number | null = null;
  #next: Camera = START;

  attach(svg: SVGSVGElement, ground: SVGGElement): () => void {
    this.#svg = svg;
    this.#ground = ground;
    const seen = new ResizeObserver(() => this.#measure());
    seen.observe(svg);
    this.#measure();
    this.#apply();
    return () => {
      seen.disconnect();
      if (this.#frame !== null) cancelAnimationFrame(this.#frame);
      this.#frame = null;
      this.#svg = null;
      this.#ground = null;
    };
  }

  #measure(): void {
    const box = this.#svg?.getBoundingClientRect();
    if (box === undefined || box.width === 0) return;
    const before = this.#size;
    this.#size = { width: box.width, height: box.height };
    // What was in the middle stays in the middle when the window changes.
    const camera = this.now;
    this.set({
      ...camera,
      x: camera.x + (box.width - before.width) / 2,
      y: camera.y + (box.height - before.height) / 2,
    });
  }

  get size(): ScreenSize {
    return this.#size;
  }

  /** The camera that the next frame shows. */
  get now(): Camera {
    return this.#next;
  }

  get seen(): BoxMm {
    return seenBox(this.now, this.#size);
  }

  set(camera: Camera): void {
    this.#next = camera;
    this.#frame ??= requestAnimationFrame(() => {
      this.#frame = null;
      this.#apply();
    });
  }

  #apply(): void {
    const camera = this.#next;
    this.#ground?.setAttribute("transform", transformOf(camera));
    this.camera.set(camera);
    this.step.set(stepOf(camera.scale));
  }

  fit(box: BoxMm, most?: number): void {
    this.set(fitted(box, this.#size, this.now.mirrored, most));
  }

  setMirrored(mirrored: boolean): void {
    this.set({ ...this.now, mirrored });
  }

  /** Brings a box into sight with as little movement as it takes; shows it larger when it is a dot. */
  show(box: BoxMm): void {
    const { scale } = this.now;
    const largest = Math.max(box.maxXMm - box.minXMm, box.maxYMm - box.minYMm, 1) * scale;
    const seen = this.seen;
    const isSeen =
      box.minXMm >= seen.minXMm &&
      box.maxXMm <= seen.maxXMm &&
      box.minYMm >= seen.minYMm &&
      box.maxYMm <= seen.maxYMm;
    if (isSeen && largest >= 12) return;
    const wanted = Math.max(scale, 2);
    this.fit(box, wanted);
  }

  /** Where an event is, on the drawing. */
  screenOf(event: { readonly clientX: number; readonly clientY: number }): ScreenPoint {
    const box = this.#svg?.getBoundingClientRect();
    return { x: event.clientX - (box?.left ?? 0), y: event.clientY - (box?.top ?? 0) };
  }

  panelOf(event: { readonly clientX: number; readonly clientY: number }): PointMm {
    return toPanel(this.now, this.screenOf(event));
  }
}
