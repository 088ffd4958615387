import { type MouseEvent, type PointerEvent, type RefObject, useRef, useState } from "react";
import {
  type Area,
  at,
  everything,
  extendTo,
  rangeOf,
  type Selection,
  type Spot,
  wholeColumns,
  wholeRows,
} from "../logic/selection.ts";

interface PointerOptions {
  readonly box: RefObject<HTMLDivElement | null>;
  readonly area: Area;
  readonly selection: Selection;
  readonly rowPx: number;
  readonly headPx: number;
  /** Ends editing and gives the keyboard to the grid. */
  readonly take: () => void;
  readonly onSelect: (selection: Selection) => void;
  readonly beginEdit: () => void;
  /** The fill handle was drawn down to a row. */
  readonly onFill: (bottom: number) => void;
}

const numberIn = (element: Element, name: string): number | null => {
  const text = element.closest<HTMLElement>(`[data-${name}]`)?.dataset[name];
  return text === undefined ? null : Number(text);
};

/** The cell, row number or heading under the pointer. */
function placeOf(target: EventTarget | null) {
  if (!(target instanceof Element)) return null;
  const row = numberIn(target, "row");
  const col = numberIn(target, "col");
  if (row !== null && col !== null) return { kind: "cell", row, col } as const;
  const number = numberIn(target, "number");
  if (number !== null) return { kind: "number", row: number } as const;
  const title = numberIn(target, "title");
  if (title !== null && target.closest("button, .grid-edge") === null)
    return { kind: "title", col: title } as const;
  return target.closest("[data-corner]") === null ? null : ({ kind: "corner" } as const);
}

/** Selecting by mouse, pen and finger, and the fill handle. */
export function usePointer(options: PointerOptions) {
  const [fillTo, setFillTo] = useState<number | null>(null);
  const now = useRef(options);
  now.current = options;

  /** Follows the pointer until it is let go; near an edge the box scrolls. */
  const follow = (moved: (spot: Spot) => void, ended: () => void): void => {
    const element = now.current.box.current;
    if (element === null) return;
    let last = { x: 0, y: 0 };
    const look = (): void => {
      const frame = element.getBoundingClientRect();
      const x = Math.max(frame.left + 60, Math.min(last.x, frame.right - 20));
      const y = Math.max(frame.top + now.current.headPx + 2, Math.min(last.y, frame.bottom - 20));
      const place = placeOf(document.elementFromPoint(x, y));
      if (place?.kind === "cell") moved(place);
      else if (place?.kind === "number") moved({ row: place.row, col: 0 });
    };
    const scroll = setInterval(() => {
      const frame = element.getBoundingClientRect();
      if (last.y === 0) return;
      const dy = last.y > frame.bottom - 12 ? 1 : last.y < frame.top + now.current.headPx ? -1 : 0;
      const dx = last.x > frame.right - 12 ? 1 : last.x < frame.left + 12 ? -1 : 0;
      if (dx === 0 && dy === 0) return;
      element.scrollBy(dx * 60, dy * now.current.rowPx * 2);
      look();
    }, 50);
    const move = (event: globalThis.PointerEvent): void => {
      last = { x: event.clientX, y: event.clientY };
      look();
    };
    const end = (): void => {
      clearInterval(scroll);
      removeEventListener("pointermove", move);
      removeEventListener("pointerup", end);
      removeEventListener("pointercancel", end);
      ended();
    };
    addEventListener("pointermove", move);
    addEventListener("pointerup", end);
    addEventListener("pointercancel", end);
  };

  const select = (selection: Selection): void => now.current.onSelect(selection);

  const dragHandle = (event: PointerEvent): void => {
    const { selection, area } = now.current;
    if (event.pointerType === "touch") {
      follow(
        (spot) => select(extendTo(selection, spot)),
        () => undefined,
      );
      return;
    }
    const { bottom } = rangeOf(selection);
    let target = bottom;
    follow(
      (spot) => {
        target = Math.min(Math.max(bottom, spot.row), area.last);
        setFillTo(target > bottom ? target : null);
      },
      () => {
        setFillTo(null);
        if (target > bottom) now.current.onFill(target);
      },
    );
  };

  const onPointerDown = (event: PointerEvent): void => {
    if (event.button !== 0 || !(event.target instanceof Element)) return;
    if (event.target.closest("[data-handle]") !== null) {
      event.preventDefault();
      dragHandle(event);
      return;
    }
    const place = placeOf(event.target);
    if (place === null || event.pointerType === "touch") return;
    event.preventDefault();
    const { selection, area, take } = now.current;
    take();
    if (place.kind === "corner") select(everything(area));
    else if (place.kind === "title")
      select(wholeColumns(event.shiftKey ? selection.anchor.col : place.col, place.col, area));
    else if (place.kind === "number") {
      const from = event.shiftKey ? selection.anchor.row : place.row;
      select(wholeRows(from, place.row, area));
      follow(
        (spot) => select(wholeRows(from, spot.row, area)),
        () => undefined,
      );
    } else {
      const start = event.shiftKey ? extendTo(selection, place) : at(place.row, place.col);
      select(start);
      follow(
        (spot) => select(extendTo(start, spot)),
        () => undefined,
      );
    }
  };

  /** A finger scrolls by moving, so that it selects only when it is lifted; on the active cell it edits. */
  const onClick = (event: MouseEvent): void => {
    const { nativeEvent } = event;
    if (!(nativeEvent instanceof globalThis.PointerEvent) || nativeEvent.pointerType !== "touch") return;
    const place = placeOf(event.target);
    if (place === null) return;
    const { selection, area, take, beginEdit } = now.current;
    const { active } = selection;
    const again = place.kind === "cell" && place.row === active.row && place.col === active.col;
    take();
    if (again) beginEdit();
    else if (place.kind === "cell") select(at(place.row, place.col));
    else if (place.kind === "number") select(wholeRows(place.row, place.row, area));
    else if (place.kind === "title") select(wholeColumns(place.col, place.col, area));
    else select(everything(area));
  };

  const onDoubleClick = (event: MouseEvent): void => {
    if (placeOf(event.target)?.kind === "cell") now.current.beginEdit();
  };

  return { fillTo, onPointerDown, onClick, onDoubleClick };
}
