import { type RefObject, useCallback, useEffect, useRef } from "react";
import { fitted, inSight, panned, type Size, type ViewPlace, zoomed } from "./view-box.ts";

export interface PanZoom {
  readonly frame: RefObject<HTMLDivElement | null>;
  /** The group that is moved and enlarged. It is told directly, without React, so that it keeps up with the hand. */
  readonly group: RefObject<SVGGElement | null>;
  readonly zoomBy: (factor: number) => void;
  readonly moveBy: (dx: number, dy: number) => void;
  readonly fit: () => void;
}

/** Marks what a pointer takes hold of instead of the drawing. */
export const HANDLE = "data-handle";

/**
 * Moves and enlarges a group by wheel, pointer and two fingers. A pointer on a handle is left alone.
 * @param anchor a place of the drawing that stays where it is on the screen when another drawing comes; null: a new
 *   drawing is shown whole
 */
export function usePanZoom(
  { width, height }: Size,
  anchor: { readonly x: number; readonly y: number } | null,
): PanZoom {
  const frame = useRef<HTMLDivElement>(null);
  const group = useRef<SVGGElement>(null);
  const view = useRef<ViewPlace>({ scale: 1, x: 0, y: 0 });
  /** True until a person moved it: then a change of the window's size no longer shows the whole. */
  const whole = useRef(true);

  const windowSize = useCallback((): Size => {
    const { clientWidth, clientHeight } = frame.current ?? { clientWidth: 1, clientHeight: 1 };
    return { width: clientWidth, height: clientHeight };
  }, []);
  const show = useCallback(
    (next: ViewPlace) => {
      view.current = inSight(next, { width, height }, windowSize());
      const { scale, x, y } = view.current;
      group.current?.setAttribute("transform", `translate(${x} ${y}) scale(${scale})`);
      // For what keeps its size on the screen: millimetres of the drawing in a pixel.
      group.current?.style.setProperty("--pixel", String(1 / scale));
    },
    [width, height, windowSize],
  );
  const fit = useCallback(() => {
    whole.current = true;
    show(fitted({ width, height }, windowSize()));
  }, [show, width, height, windowSize]);
  const zoomBy = useCallback(
    (factor: number) => {
      whole.current = false;
      const { width: w, height: h } = windowSize();
      show(zoomed(view.current, factor, { x: w / 2, y: h / 2 }));
    },
    [show, windowSize],
  );
  const moveBy = useCallback(
    (dx: number, dy: number) => {
      whole.current = false;
      show(panned(view.current, dx, dy));
    },
    [show],
  );

  useEffect(() => {
    const at = frame.current;
    if (at === null) return;
    const watch = new ResizeObserver(() => {
      if (whole.current) fit();
    });
    watch.observe(at);
    return () => watch.disconnect();
  }, [fit]);

  const [anchorX, anchorY] = [anchor?.x ?? null, anchor?.y ?? null];
  const held = useRef<{ readonly x: number; readonly y: number } | null>(null);
  useEffect(() => {
    const before = held.current;
    held.current = anchorX === null || anchorY === null ? null : { x: anchorX, y: anchorY };
    if (before === null || held.current === null) fit();
    else {
      whole.current = false;
      const { scale } = view.current;
      show(panned(view.current, (before.x - held.current.x) * scale, (before.y - held.current.y) * scale));
    }
  }, [fit, show, anchorX, anchorY]);

  useEffect(() => {
    const at = frame.current;
    if (at === null) return;
    const fingers = new Map<number, { x: number; y: number }>();
    const placeOf = (event: MouseEvent): { x: number; y: number } => {
      const box = at.getBoundingClientRect();
      return { x: event.clientX - box.left, y: event.clientY - box.top };
    };
    const wheel = (event: WheelEvent): void => {
      event.preventDefault();
      whole.current = false;
      show(zoomed(view.current, Math.exp(-event.deltaY * 0.0015), placeOf(event)));
    };
    const down = (event: PointerEvent): void => {
      if (event.target instanceof Element && event.target.closest(`[${HANDLE}]`) !== null) return;
      at.setPointerCapture(event.pointerId);
      fingers.set(event.pointerId, placeOf(event));
    };
    const move = (event: PointerEvent): void => {
      const before = fingers.get(event.pointerId);
      if (before === undefined) return;
      const now = placeOf(event);
      const [other] = [...fingers].filter(([id]) => id !== event.pointerId).map(([, place]) => place);
      fingers.set(event.pointerId, now);
      whole.current = false;
      if (other === undefined) {
        show(panned(view.current, now.x - before.x, now.y - before.y));
        return;
      }
      const apart = (p: typeof now): number => Math.max(1, Math.hypot(p.x - other.x, p.y - other.y));
      const middle = (p: typeof now) => ({ x: (p.x + other.x) / 2, y: (p.y + other.y) / 2 });
      const [from, to] = [middle(before), middle(now)];
      const moved = panned(view.current, to.x - from.x, to.y - from.y);
      show(zoomed(moved, apart(now) / apart(before), to));
    };
    const up = (event: PointerEvent): void => {
      fingers.delete(event.pointerId);
    };
    at.addEventListener("wheel", wheel, { passive: false });
    at.addEventListener("pointerdown", down);
    at.addEventListener("pointermove", move);
    at.addEventListener("pointerup", up);
    at.addEventListener("pointercancel", up);
    return () => {
      at.removeEventListener("wheel", wheel);
      at.removeEventListener("pointerdown", down);
      at.removeEventListener("pointermove", move);
      at.removeEventListener("pointerup", up);
      at.removeEventListener("pointercancel", up);
    };
  }, [show]);

  return { frame, group, zoomBy, moveBy, fit };
}
