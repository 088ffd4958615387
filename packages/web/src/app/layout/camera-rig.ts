import type { BoxMm, PointMm } from "@pinwright/kernel";
import {
  type Camera,
  fitted,
  type ScreenPoint,
  type ScreenSize,
  seenBox,
  stepOf,
  toPanel,
} from "./geometry/camera.ts";
import { Watched } from "./overlay-store.ts";

const START: Camera = { scale: 1, x: 0, y: 0, mirrored: false };
/** After so long without another step of enlargement the drawing is drawn sharply. */
const SHARPEN_MS = 140;
/** A drawing that is stretched or shrunk by more than this is drawn anew at once. */
const MOST_STRETCH = 2;

/**
 * Holds what part of the panel is looked at, and moves the drawing itself: no state of React is in the way. The
 * drawing lies on a layer of its own. To pan moves the layer, and to zoom stretches it until the hand rests, so that
 * the browser does not have to paint thousands of lines for each frame.
 */
export class CameraRig {
  /** For what has to be drawn anew with every move: rulers, distances. */
  readonly camera = new Watched<Camera>(START);
  /** For what is drawn in more or less detail. */
  readonly step = new Watched<number>(0);
  #sheet: Element | null = null;
  #layer: SVGSVGElement | null = null;
  #ground: SVGGElement | null = null;
  /** Scale and side that the ground is painted at. */
  #painted = { scale: 0, mirrored: false };
  #sharpen: ReturnType<typeof setTimeout> | undefined;
  #size: ScreenSize = { width: 800, height: 600 };
  /** Where the sheet is on the page. To ask the browser in every frame would make it lay out the page each time. */
  #corner: ScreenPoint = { x: 0, y: 0 };
  #frame: number | null = null;
  #next: Camera = START;

  /** @param sheet what the drawing lies on, and what is pointed at */
  attach(sheet: Element, layer: SVGSVGElement, ground: SVGGElement): () => void {
    this.#sheet = sheet;
    this.#layer = layer;
    this.#ground = ground;
    this.#painted = { scale: 0, mirrored: false };
    const seen = new ResizeObserver(() => this.#measure());
    seen.observe(sheet);
    this.#measure();
    this.#apply();
    return () => {
      seen.disconnect();
      if (this.#frame !== null) cancelAnimationFrame(this.#frame);
      this.#frame = null;
      clearTimeout(this.#sharpen);
      this.#sheet = null;
      this.#layer = null;
      this.#ground = null;
    };
  }

  /** Looks where the sheet is and how large; to be called when the page may have moved it. */
  locate(): void {
    const box = this.#sheet?.getBoundingClientRect();
    if (box !== undefined) this.#corner = { x: box.left, y: box.top };
  }

  #measure(): void {
    this.locate();
    const box = this.#sheet?.getBoundingClientRect();
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
    const stretch = camera.scale / this.#painted.scale;
    clearTimeout(this.#sharpen);
    if (camera.mirrored !== this.#painted.mirrored || !(stretch < MOST_STRETCH && stretch > 1 / MOST_STRETCH))
      this.#paint(camera);
    else if (stretch !== 1) this.#sharpen = setTimeout(() => this.#paint(this.#next), SHARPEN_MS);
    this.#place(camera);
    this.camera.set(camera);
  }

  #place({ x, y, scale }: Camera): void {
    const stretch = scale / this.#painted.scale;
    if (this.#layer === null) return;
    // Between two pixels the layer would be smeared.
    this.#layer.style.transform =
      stretch === 1
        ? `translate(${Math.round(x)}px, ${Math.round(y)}px)`
        : `translate(${x}px, ${y}px) scale(${stretch})`;
  }

  /** Has the ground painted at the scale that it is looked at. */
  #paint(camera: Camera): void {
    const { scale, mirrored } = camera;
    this.#painted = { scale, mirrored };
    this.#ground?.setAttribute("transform", `scale(${mirrored ? -scale : scale} ${-scale})`);
    this.#place(camera);
    this.step.set(stepOf(scale));
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
    return { x: event.clientX - this.#corner.x, y: event.clientY - this.#corner.y };
  }

  panelOf(event: { readonly clientX: number; readonly clientY: number }): PointMm {
    return toPanel(this.now, this.screenOf(event));
  }
}
