import type { BoxMm, PointMm } from "@pinwright/kernel";
import type { Guide } from "./geometry/snap.ts";

/** What is drawn over the panel for a moment: while something is dragged, measured, drawn or pointed at. */
export interface Overlay {
  readonly hoverId: string | null;
  readonly lasso: BoxMm | null;
  readonly guides: readonly Guide[];
  /** Where the dragged thing is now. */
  readonly dragged: PointMm | null;
  readonly measure: { readonly from: PointMm; readonly to: PointMm; readonly fixed: boolean } | null;
  /** A lane that is being drawn, from a waypoint to the pointer. */
  readonly lane: { readonly from: PointMm; readonly to: PointMm } | null;
}

const NO_OVERLAY: Overlay = {
  hoverId: null,
  lasso: null,
  guides: [],
  dragged: null,
  measure: null,
  lane: null,
};

/** A value that changes often and that only few small parts of the page look at. */
export class Watched<T> {
  #value: T;
  readonly #listeners = new Set<() => void>();

  constructor(value: T) {
    this.#value = value;
  }

  get = (): T => this.#value;

  set(value: T): void {
    if (Object.is(value, this.#value)) return;
    this.#value = value;
    for (const listener of this.#listeners) listener();
  }

  subscribe = (listener: () => void): (() => void) => {
    this.#listeners.add(listener);
    return () => this.#listeners.delete(listener);
  };
}

/** What is drawn over the panel, changed part by part. */
export class OverlayStore extends Watched<Overlay> {
  constructor() {
    super(NO_OVERLAY);
  }

  patch(part: Partial<Overlay>): void {
    const before = this.get();
    const keys = Object.keys(part) as (keyof Overlay)[];
    if (keys.some((key) => !Object.is(before[key], part[key]))) this.set({ ...before, ...part });
  }
}
