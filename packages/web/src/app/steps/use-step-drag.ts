import { type RefObject, useEffect, useRef, useState } from "react";

const SLOP_PX = 5;

/** A step in the hand. */
export interface StepDrag {
  readonly stepId: string;
  /** Place under the pointer; null: none. */
  readonly overId: string | null;
  /** Where the pointer is, from the chart's corner. */
  readonly x: number;
  readonly y: number;
}

interface Host {
  readonly mayDrag: boolean;
  readonly tapped: (stepId: string, placeId: string) => void;
  readonly dropped: (stepId: string, placeId: string) => void;
}

interface Press {
  readonly stepId: string;
  readonly placeId: string;
  readonly x: number;
  readonly y: number;
  readonly pointerId: number;
  /** A finger moves only what it has picked before, so that it can push the page. */
  readonly isHeld: boolean;
}

const placeUnder = (x: number, y: number): string | null =>
  document.elementFromPoint(x, y)?.closest<HTMLElement>("[data-place]")?.dataset.place ?? null;

/** Takes a step of the chart to another place by pointer; Escape puts it back. */
export function useStepDrag(
  chart: RefObject<HTMLElement | null>,
  chosenId: string | null,
  host: Host,
): StepDrag | null {
  const [drag, setDrag] = useState<StepDrag | null>(null);
  const newest = useRef({ host, chosenId });
  newest.current = { host, chosenId };
  useEffect(() => {
    const element = chart.current;
    if (element === null) return;
    let press: Press | null = null;
    let moving = false;
    const listening = new AbortController();
    const options = { signal: listening.signal };
    const end = (): void => {
      press = null;
      moving = false;
      setDrag(null);
    };
    element.addEventListener(
      "pointerdown",
      (event) => {
        const target = event.target instanceof Element ? event.target : null;
        const stepId = target?.closest<HTMLElement>("[data-step]")?.dataset.step;
        const placeId = target?.closest<HTMLElement>("[data-place]")?.dataset.place;
        if (stepId === undefined || placeId === undefined || event.button !== 0) return;
        const isHeld = event.pointerType !== "touch" || stepId === newest.current.chosenId;
        press = { stepId, placeId, x: event.clientX, y: event.clientY, pointerId: event.pointerId, isHeld };
        if (event.pointerType !== "touch") event.preventDefault();
      },
      options,
    );
    addEventListener(
      "pointermove",
      (event) => {
        if (press?.pointerId !== event.pointerId || !press.isHeld || !newest.current.host.mayDrag) return;
        if (!moving && Math.hypot(event.clientX - press.x, event.clientY - press.y) < SLOP_PX) return;
        moving = true;
        const box = element.getBoundingClientRect();
        const overId = placeUnder(event.clientX, event.clientY);
        setDrag({ stepId: press.stepId, overId, x: event.clientX - box.left, y: event.clientY - box.top });
      },
      options,
    );
    addEventListener(
      "pointerup",
      (event) => {
        if (press?.pointerId !== event.pointerId) return;
        const { stepId, placeId } = press;
        const over = moving ? placeUnder(event.clientX, event.clientY) : null;
        const wasMoving = moving;
        end();
        if (!wasMoving) newest.current.host.tapped(stepId, placeId);
        else if (over !== null && over !== placeId) newest.current.host.dropped(stepId, over);
      },
      options,
    );
    addEventListener("pointercancel", end, options);
    addEventListener("keydown", (event) => event.key === "Escape" && end(), options);
    return () => listening.abort();
  }, [chart]);
  return drag;
}
