import { type RefObject, useCallback, useLayoutEffect, useRef, useState } from "react";
import type { Spot } from "../logic/selection.ts";
import { NUMBERS_PX } from "./layout.ts";

/** Rows drawn beyond what is seen, above and below. */
const SPARE = 8;

/** What the scrolled box shows. */
export interface Viewport {
  readonly first: number;
  readonly last: number;
  /** Rows that fit. */
  readonly page: number;
  readonly widthPx: number;
}

interface Layout {
  readonly rowPx: number;
  readonly headPx: number;
  readonly lefts: readonly number[];
  readonly widths: readonly number[];
  readonly frozenPx: number;
}

/** Follows the scrolling of a box in steps of a few rows, and brings cells into sight after the next drawing. */
export function useViewport(box: RefObject<HTMLDivElement | null>, rowCount: number, layout: Layout) {
  const [viewport, setViewport] = useState<Viewport>({ first: 0, last: 40, page: 20, widthPx: 1000 });
  const wanted = useRef<Spot | null>(null);
  const { rowPx, headPx } = layout;

  const measure = useCallback(() => {
    const element = box.current;
    if (element === null) return;
    const seen = element.clientHeight - headPx;
    // In steps of four rows, so that most scroll events draw nothing.
    const top = Math.floor(element.scrollTop / rowPx / 4) * 4;
    const next: Viewport = {
      first: Math.max(0, top - SPARE),
      last: Math.min(rowCount - 1, top + Math.ceil(seen / rowPx) + 4 + SPARE),
      page: Math.max(1, Math.floor(seen / rowPx) - 1),
      widthPx: element.clientWidth,
    };
    setViewport((now) =>
      now.first === next.first &&
      now.last === next.last &&
      now.page === next.page &&
      now.widthPx === next.widthPx
        ? now
        : next,
    );
  }, [box, headPx, rowPx, rowCount]);

  useLayoutEffect(() => {
    const element = box.current;
    if (element === null) return;
    measure();
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    element.addEventListener("scroll", measure, { passive: true });
    return () => {
      observer.disconnect();
      element.removeEventListener("scroll", measure);
    };
  }, [box, measure]);

  // After every drawing: rows that were just added can be scrolled to only then.
  useLayoutEffect(() => {
    const element = box.current;
    const spot = wanted.current;
    if (element === null || spot === null) return;
    wanted.current = null;
    const top = spot.row * rowPx;
    const seen = element.clientHeight - headPx;
    if (top < element.scrollTop) element.scrollTop = top;
    else if (top + rowPx > element.scrollTop + seen) element.scrollTop = top + rowPx - seen;
    const left = layout.lefts[spot.col] ?? NUMBERS_PX;
    const width = layout.widths[spot.col] ?? 0;
    if (left < layout.frozenPx) return;
    if (left - layout.frozenPx < element.scrollLeft) element.scrollLeft = left - layout.frozenPx;
    else if (left + width > element.scrollLeft + element.clientWidth)
      element.scrollLeft = Math.min(left - layout.frozenPx, left + width - element.clientWidth);
  });

  const reveal = useCallback((spot: Spot) => {
    wanted.current = spot;
  }, []);
  return { viewport, reveal };
}
