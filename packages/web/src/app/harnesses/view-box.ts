/** How a drawing lies in its window: pixels = millimetres × scale + shift. */
export interface ViewPlace {
  readonly scale: number;
  readonly x: number;
  readonly y: number;
}

export interface Size {
  readonly width: number;
  readonly height: number;
}

/** Pixels a millimetre: from a whole board on a phone to a wire label that fills the screen. */
const SCALE = { least: 0.02, most: 40 } as const;
/** Free room round a drawing that is shown whole, pixels. */
const ROOM = 12;

/** The whole drawing in the middle of the window. */
export function fitted(paper: Size, window: Size): ViewPlace {
  const scale = Math.min(
    SCALE.most,
    Math.max(
      SCALE.least,
      Math.min((window.width - 2 * ROOM) / paper.width, (window.height - 2 * ROOM) / paper.height),
    ),
  );
  return {
    scale,
    x: (window.width - paper.width * scale) / 2,
    y: (window.height - paper.height * scale) / 2,
  };
}

/** Enlarged by a factor about a place of the window, which stays where it is. */
export function zoomed(
  view: ViewPlace,
  factor: number,
  at: { readonly x: number; readonly y: number },
): ViewPlace {
  const scale = Math.min(SCALE.most, Math.max(SCALE.least, view.scale * factor));
  const real = scale / view.scale;
  return { scale, x: at.x - (at.x - view.x) * real, y: at.y - (at.y - view.y) * real };
}

export const panned = (view: ViewPlace, dx: number, dy: number): ViewPlace => ({
  ...view,
  x: view.x + dx,
  y: view.y + dy,
});

/** Part of the drawing that must stay in the window, pixels. */
const IN_SIGHT = 60;

/** Moved back so far that some of the drawing is in sight. */
export function inSight(view: ViewPlace, paper: Size, window: Size): ViewPlace {
  const clamp = (at: number, size: number, room: number): number =>
    Math.min(room - IN_SIGHT, Math.max(IN_SIGHT - size * view.scale, at));
  return {
    scale: view.scale,
    x: clamp(view.x, paper.width, window.width),
    y: clamp(view.y, paper.height, window.height),
  };
}
