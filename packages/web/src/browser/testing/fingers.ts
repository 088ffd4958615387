import type { Page } from "playwright-core";

/** A place on the page, in its pixels. */
export interface Spot {
  readonly x: number;
  readonly y: number;
}

/** Fingers on the glass, as the browser hears them from a touch screen. */
export interface Fingers {
  /** So many fingers come down, or are elsewhere now. */
  readonly down: (...spots: readonly Spot[]) => Promise<void>;
  readonly move: (...spots: readonly Spot[]) => Promise<void>;
  readonly up: () => Promise<void>;
  /** One finger from place to place, in steps. */
  readonly drag: (from: Spot, to: Spot) => Promise<void>;
}

const STEPS = 8;

export async function fingersOn(page: Page): Promise<Fingers> {
  const glass = await page.context().newCDPSession(page);
  const send = async (
    type: "touchStart" | "touchMove" | "touchEnd",
    spots: readonly Spot[],
  ): Promise<void> => {
    const touchPoints = spots.map(({ x, y }, id) => ({ x, y, id }));
    await glass.send("Input.dispatchTouchEvent", { type, touchPoints });
  };
  const down = (...spots: readonly Spot[]): Promise<void> => send("touchStart", spots);
  const move = (...spots: readonly Spot[]): Promise<void> => send("touchMove", spots);
  const up = (): Promise<void> => send("touchEnd", []);
  const drag = async (from: Spot, to: Spot): Promise<void> => {
    await down(from);
    for (let i = 1; i <= STEPS; i++)
      await move({ x: from.x + ((to.x - from.x) * i) / STEPS, y: from.y + ((to.y - from.y) * i) / STEPS });
    await up();
  };
  return { down, move, up, drag };
}
