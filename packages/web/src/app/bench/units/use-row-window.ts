import { type RefObject, useCallback, useLayoutEffect, useState } from "react";

/** Rows drawn beyond what is seen, above and below. */
const SPARE = 12;
/** Most scroll events draw nothing: the window moves by so many rows. */
const STEP = 6;

/** Which rows of a long list are drawn: from, up to and without. */
export interface RowWindow {
  readonly from: number;
  readonly to: number;
}

/** Follows the scrolling of a box with rows of one height. */
export function useRowWindow(box: RefObject<HTMLElement | null>, count: number, rowPx: number): RowWindow {
  const [seen, setSeen] = useState({ top: 0, rows: 40 });
  const measure = useCallback(() => {
    const element = box.current;
    if (element === null) return;
    const top = Math.floor(element.scrollTop / rowPx / STEP) * STEP;
    const rows = Math.ceil(element.clientHeight / rowPx);
    setSeen((now) => (now.top === top && now.rows === rows ? now : { top, rows }));
  }, [box, rowPx]);
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
  // A list that became shorter shows its end.
  const top = Math.min(seen.top, Math.max(0, count - seen.rows));
  return { from: Math.max(0, top - SPARE), to: Math.min(count, top + seen.rows + STEP + SPARE) };
}
